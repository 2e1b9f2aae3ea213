#include "core/gear/television.hpp"

#include "core/gear/gear.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::gear;

namespace {

Station sending(Raster raster, std::optional<BroadcastStandard> standard) {
  return {.raster = raster, .standard = standard, .position = *Position::at_deg(44.0, -100.5)};
}

Decoding decoded(const std::optional<DecoderSet>& decoders, Raster raster,
                 std::optional<BroadcastStandard> standard,
                 BroadcastStandard assumed = BroadcastStandard::atsc1) {
  return decoding(decoders, sending(raster, standard), assumed);
}

}  // namespace

TEST_CASE("a decoder comes with the one it needs, and goes with it") {
  DecoderSet set{Decoder::atsc3_encrypted};
  CHECK(set.has(Decoder::atsc3));
  CHECK_FALSE(set.has(Decoder::atsc1));
  set.remove(Decoder::atsc3);
  CHECK(set.empty());
  set = {Decoder::dvb_t2_hevc, Decoder::dvb_t};
  set.remove(Decoder::dvb_t2_hevc);
  CHECK(set == DecoderSet{Decoder::dvb_t, Decoder::dvb_t2});
}

TEST_CASE("a list of decoders is read as it is written") {
  for (const Decoder decoder : kDecoders) {
    const DecoderSet set{decoder};
    CHECK(*parse_decoders(to_text(set)) == set);
  }
  const DecoderSet all({Decoder::atsc1, Decoder::atsc3_encrypted, Decoder::dvb_t,
                        Decoder::dvb_t2_hevc, Decoder::isdb_t});
  CHECK(to_text(all) ==
        "ATSC 1.0, ATSC 3.0, ATSC 3.0 encrypted, DVB-T, DVB-T2, DVB-T2 HEVC, ISDB-T");
  CHECK(*parse_decoders(to_text(all)) == all);
  CHECK(*parse_decoders("dvb-t,isdb-t") == DecoderSet{Decoder::dvb_t, Decoder::isdb_t});
  CHECK_FALSE(parse_decoders("DVB-T,"));
  CHECK_FALSE(parse_decoders("PAL"));
  CHECK(to_text(DecoderSet{}) == "nothing");
}

// Common practice, no source: most TVs in the United States have no ATSC 3.0 tuner.
TEST_CASE("an unknown TV decodes what is usual with the channel plan") {
  using enum BroadcastStandard;
  CHECK(decoded({}, Raster::atsc, atsc1) == Decoding::possible);
  CHECK(decoded({}, Raster::atsc, {}) == Decoding::possible);
  CHECK(decoded({}, Raster::atsc, atsc3) == Decoding::impossible);
  CHECK(decoded({}, Raster::europe, dvb_t) == Decoding::possible);
  CHECK(decoded({}, Raster::europe, dvb_t2) == Decoding::possible);
  CHECK(decoded({}, Raster::australia, dvb_t2) == Decoding::impossible);
  CHECK(decoded({}, Raster::japan, isdb_t) == Decoding::possible);
  CHECK(decoded({}, Raster::brazil, isdb_t) == Decoding::possible);
}

TEST_CASE("encryption and HEVC, which no table names, are unknown and not assumed away") {
  using enum BroadcastStandard;
  const DecoderSet clear{Decoder::atsc1, Decoder::atsc3, Decoder::dvb_t2};
  CHECK(decoded(clear, Raster::atsc, atsc3) == Decoding::may_be_encrypted);
  CHECK(decoded(clear, Raster::europe, dvb_t2) == Decoding::may_need_hevc);
  const DecoderSet full{Decoder::atsc3_encrypted, Decoder::dvb_t2_hevc};
  CHECK(decoded(full, Raster::atsc, atsc3) == Decoding::possible);
  CHECK(decoded(full, Raster::europe, dvb_t2) == Decoding::possible);
  CHECK(decoded(full, Raster::atsc, atsc1) == Decoding::impossible);
}

TEST_CASE("a station of unknown standard may still be one that the TV decodes") {
  using enum BroadcastStandard;
  const DecoderSet second{Decoder::dvb_t2};
  CHECK(decoded(second, Raster::europe, {}, dvb_t) == Decoding::standard_unknown);
  CHECK(decoded(second, Raster::europe, dvb_t, dvb_t) == Decoding::impossible);
}
