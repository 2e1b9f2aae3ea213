#include "core/gear/television.hpp"

#include "core/text/words.hpp"

#include <algorithm>

namespace mastwise::gear {
namespace {

constexpr std::array<std::string_view, kDecodings> kDecodingNames{
    "possible", "may_be_encrypted", "may_need_hevc", "standard_unknown", "impossible"};

// The decoder that another one includes.
std::optional<Decoder> needed_by(Decoder decoder) {
  if (decoder == Decoder::atsc3_encrypted) return Decoder::atsc3;
  if (decoder == Decoder::dvb_t2_hevc) return Decoder::dvb_t2;
  return std::nullopt;
}

Decoder decoder_of(BroadcastStandard standard) {
  switch (standard) {
    case BroadcastStandard::atsc1:
      return Decoder::atsc1;
    case BroadcastStandard::atsc3:
      return Decoder::atsc3;
    case BroadcastStandard::dvb_t:
      return Decoder::dvb_t;
    case BroadcastStandard::dvb_t2:
      return Decoder::dvb_t2;
    case BroadcastStandard::isdb_t:
      return Decoder::isdb_t;
  }
  return Decoder::atsc1;
}

}  // namespace

std::string_view to_text(Decoder decoder) {
  switch (decoder) {
    case Decoder::atsc1:
      return "ATSC 1.0";
    case Decoder::atsc3:
      return "ATSC 3.0";
    case Decoder::atsc3_encrypted:
      return "ATSC 3.0 encrypted";
    case Decoder::dvb_t:
      return "DVB-T";
    case Decoder::dvb_t2:
      return "DVB-T2";
    case Decoder::dvb_t2_hevc:
      return "DVB-T2 HEVC";
    case Decoder::isdb_t:
      return "ISDB-T";
  }
  return {};
}

void DecoderSet::add(Decoder decoder) {
  bits_ |= bit(decoder);
  if (const auto needed = needed_by(decoder)) bits_ |= bit(*needed);
}

void DecoderSet::remove(Decoder decoder) {
  for (const Decoder other : kDecoders) {
    if (other == decoder || needed_by(other) == decoder) {
      bits_ &= static_cast<std::uint8_t>(~bit(other));
    }
  }
}

std::string to_text(const DecoderSet& decoders) {
  std::string text;
  for (const Decoder decoder : kDecoders) {
    if (!decoders.has(decoder)) continue;
    if (!text.empty()) text += ", ";
    text += to_text(decoder);
  }
  return text.empty() ? "nothing" : text;
}

Result<DecoderSet> parse_decoders(std::string_view text) {
  DecoderSet decoders;
  while (true) {
    const std::size_t comma = std::min(text.find(','), text.size());
    const auto decoder = words::parse_choice(text.substr(0, comma), kDecoders, "a TV standard");
    if (!decoder) return decoder.error();
    decoders.add(*decoder);
    if (comma == text.size()) return decoders;
    text.remove_prefix(comma + 1);
  }
}

DecoderSet usual_decoders(Raster raster) {
  switch (raster) {
    case Raster::atsc:
      return {Decoder::atsc1};
    case Raster::europe:
      return {Decoder::dvb_t, Decoder::dvb_t2_hevc};
    case Raster::australia:
      return {Decoder::dvb_t};
    case Raster::japan:
    case Raster::brazil:
      return {Decoder::isdb_t};
  }
  return {};
}

std::string_view to_text(Decoding decoding) {
  const auto number = static_cast<std::size_t>(decoding);
  return number < kDecodingNames.size() ? kDecodingNames[number] : std::string_view{};
}

Decoding decoding(const std::optional<DecoderSet>& decoders, const Station& station,
                  BroadcastStandard assumed) {
  const DecoderSet has = decoders ? *decoders : usual_decoders(station.raster);
  const BroadcastStandard standard = station.standard.value_or(assumed);
  if (!has.has(decoder_of(standard))) {
    return station.standard ? Decoding::impossible : Decoding::standard_unknown;
  }
  if (standard == BroadcastStandard::atsc3 && !has.has(Decoder::atsc3_encrypted)) {
    return Decoding::may_be_encrypted;
  }
  if (standard == BroadcastStandard::dvb_t2 && !has.has(Decoder::dvb_t2_hevc)) {
    return Decoding::may_need_hevc;
  }
  return Decoding::possible;
}

}  // namespace mastwise::gear
