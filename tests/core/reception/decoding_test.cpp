#include "core/gear/modes.hpp"
#include "core/geo/geodesic.hpp"
#include "core/plan/turn_plan.hpp"
#include "core/reception/area_scan.hpp"
#include "core/reception/chance_curve.hpp"
#include "core/reception/compare.hpp"
#include "core/reception/survey.hpp"
#include "tests/core/reception/invented_country.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include <catch2/catch.hpp>

namespace mastwise::reception {

namespace {

Station strong(const std::string& call_sign, BroadcastStandard standard, int rf_channel) {
  Station station = test::transmitter(test::north_of_stop(12e3), rf_channel, 500.0, 100.0);
  station.call_sign = call_sign;
  station.network = "Net " + call_sign;
  station.standard = standard;
  return station;
}

Receiver receiver_with(std::optional<gear::DecoderSet> decoders) {
  Receiver receiver = test::roof_antenna();
  receiver.gear.decoders = decoders;
  return receiver;
}

const Prospect& prospect_of(const std::vector<Prospect>& list, const std::string& call_sign) {
  return *std::find_if(list.begin(), list.end(), [&](const Prospect& prospect) {
    return prospect.station.call_sign == call_sign;
  });
}

const fact::Decoding* decoding_of(const Prospect& prospect) {
  return std::get_if<fact::Decoding>(&prospect.reasons.at(0).fact);
}

terrain::TileSet flat_country() {
  return test::country(1, test::flat(200.0));
}

}  // namespace

TEST_CASE("what the TV cannot decode is told first and ranks below everything else") {
  const auto tiles = flat_country();
  Station unknown = strong("QUNK", BroadcastStandard::atsc1, 20);
  unknown.erp_kw.reset();
  const std::vector<Station> stations{strong("QNEW", BroadcastStandard::atsc3, 24), unknown,
                                      strong("QOLD", BroadcastStandard::atsc1, 30)};
  const auto list = survey(receiver_with({}), stations, tiles);
  REQUIRE(list.size() == 3);
  CHECK(list[0].station.call_sign == "QOLD");
  CHECK(chance_word(list[0].outlook.chance_percent.value()) == ChanceWord::steady);
  CHECK(decoding_of(list[0]) == nullptr);
  CHECK(list[1].station.call_sign == "QUNK");
  CHECK(list[2].station.call_sign == "QNEW");
  CHECK(list[2].outlook.margin_db.value() > 20.0);
  CHECK_FALSE(list[2].outlook.chance_percent);
  REQUIRE(decoding_of(list[2]) != nullptr);
  CHECK(*decoding_of(list[2]) ==
        fact::Decoding{gear::Decoding::impossible, BroadcastStandard::atsc3});
}

TEST_CASE("a station that may be encrypted is never likely, and says so first") {
  const auto tiles = flat_country();
  const std::vector<Station> stations{strong("QNEW", BroadcastStandard::atsc3, 24)};
  const gear::DecoderSet clear{gear::Decoder::atsc1, gear::Decoder::atsc3};
  const auto list = survey(receiver_with(clear), stations, tiles);
  CHECK(chance_word(list[0].outlook.chance_percent.value()) == ChanceWord::even_odds);
  REQUIRE(decoding_of(list[0]) != nullptr);
  CHECK(decoding_of(list[0])->decoding == gear::Decoding::may_be_encrypted);

  const auto decrypted =
      survey(receiver_with(gear::DecoderSet{gear::Decoder::atsc3_encrypted}), stations, tiles);
  CHECK(chance_word(decrypted[0].outlook.chance_percent.value()) == ChanceWord::steady);
  CHECK(decoding_of(decrypted[0]) == nullptr);
  CHECK(decrypted[0].outlook.margin_db == list[0].outlook.margin_db);
}

TEST_CASE("neither a turn plan nor a comparison counts what the TV cannot decode") {
  const auto tiles = flat_country();
  Survey whole(
      receiver_with({}),
      {strong("QNEW", BroadcastStandard::atsc3, 24), strong("QOLD", BroadcastStandard::atsc1, 30)},
      tiles);
  Scratch scratch;
  whole.measure(0, whole.size(), scratch);
  whole.weigh();
  const auto curves = chance_curves(whole);
  CHECK_FALSE(curves[0]);
  REQUIRE(curves[1]);
  const TurnPlan plan = turn_plan(curves, {.wishes = {{.stations = {0}}, {.stations = {1}}}});
  REQUIRE(plan.headings.size() == 1);
  REQUIRE(plan.headings[0].brings.size() == 1);
  CHECK(plan.headings[0].brings[0].station == 1);
  CHECK(plan.out_of_plan.size() == 1);

  const std::vector<Wish> wishes{{Wish::Kind::network, "Net QNEW"},
                                 {Wish::Kind::network, "Net QOLD"}};
  const std::vector<std::vector<Prospect>> places{whole.prospects()};
  const auto rows = compare_places(places, wishes);
  CHECK_FALSE(rows[0].offers[0]);
  CHECK(rows[0].offers[1]);
  CHECK(rows[0].granted == 1);
}

TEST_CASE("a scan of the ground refuses what the TV cannot decode, and caps what it may not") {
  const auto tiles = flat_country();
  const auto grid = AreaGrid::around(test::stop_position(), 1e3, 5);
  REQUIRE(grid);
  const Station station = strong("QNEW", BroadcastStandard::atsc3, 24);
  const auto refused = AreaScan::of(*grid, receiver_with({}), station, tiles);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().what == "the TV cannot decode ATSC 3.0");

  auto scan =
      AreaScan::of(*grid, receiver_with(gear::DecoderSet{gear::Decoder::atsc3}), station, tiles);
  REQUIRE(scan);
  complete(*scan);
  std::size_t known = 0;
  for (const auto& chance : chances(*scan)) {
    if (!chance) continue;
    CHECK(*chance == kMayNotDecode_percent);
    ++known;
  }
  CHECK(known > 0);
}

TEST_CASE("a station that the TV cannot decode still disturbs others") {
  const auto tiles = flat_country();
  Station other = strong("QNEW", BroadcastStandard::atsc3, 30);
  other.position = destination(test::stop_position(), Bearing<True>::degrees(10.0), 15e3);
  const Station wanted = strong("QOLD", BroadcastStandard::atsc1, 30);
  const auto alone = survey(receiver_with({}), {wanted}, tiles);
  const auto both = survey(receiver_with({}), {wanted, other}, tiles);
  CHECK(prospect_of(both, "QOLD").outlook.margin_db.value() <
        alone[0].outlook.margin_db.value() - 10.0);
}

TEST_CASE("a mode that no table names is said to be assumed, and one that needs none is not") {
  const auto tiles = flat_country();
  const auto mode_of = [](const Prospect& prospect) -> const fact::AssumedMode* {
    for (const Reason& reason : prospect.reasons) {
      if (const auto* mode = std::get_if<fact::AssumedMode>(&reason.fact)) return mode;
    }
    return nullptr;
  };
  const auto list = survey(
      receiver_with(gear::DecoderSet{gear::Decoder::atsc1, gear::Decoder::atsc3_encrypted}),
      {strong("QNEW", BroadcastStandard::atsc3, 24), strong("QOLD", BroadcastStandard::atsc1, 30)},
      tiles);
  CHECK(mode_of(prospect_of(list, "QOLD")) == nullptr);
  const auto* assumed = mode_of(prospect_of(list, "QNEW"));
  REQUIRE(assumed != nullptr);
  CHECK(assumed->mode == gear::default_mode(BroadcastStandard::atsc3).name);
  CHECK(assumed->least_db < assumed->needs_db);
  CHECK(assumed->needs_db < assumed->most_db);
}

TEST_CASE("the noise at the stop and the inverter move VHF margins, and their spread the chance") {
  const auto tiles = flat_country();
  std::vector<Station> stations{strong("QVHF", BroadcastStandard::atsc1, 4),
                                strong("QUHF", BroadcastStandard::atsc1, 30)};
  // Too weak to overload the amplifier.
  for (Station& station : stations) station.erp_kw = 0.1;
  const auto margin_db = [&](std::optional<gear::NoiseEnvironment> noise, bool inverter_on,
                             const char* call_sign) {
    Receiver receiver = receiver_with({});
    receiver.noise = noise;
    receiver.inverter_on = inverter_on;
    return prospect_of(survey(receiver, stations, tiles), call_sign).outlook.margin_db.value();
  };
  using enum gear::NoiseEnvironment;
  CHECK(margin_db({}, false, "QVHF") == margin_db(rural, false, "QVHF"));  // open ground
  CHECK(margin_db(quiet_rural, false, "QVHF") > margin_db(rural, false, "QVHF") + 3.0);
  CHECK(margin_db(city, false, "QVHF") < margin_db(rural, false, "QVHF") - 8.0);
  CHECK(margin_db(rural, true, "QVHF") < margin_db(rural, false, "QVHF") - 8.0);
  CHECK(margin_db(rural, true, "QUHF") == margin_db(rural, false, "QUHF"));

  const auto list = survey(receiver_with({}), stations, tiles);
  const Deviations& vhf = prospect_of(list, "QVHF").outlook.deviations;
  CHECK(vhf.noise_db > 3.0);
  Deviations without = vhf;
  without.noise_db = 0.0;
  CHECK(vhf.total_db() == Approx(std::hypot(without.total_db(), vhf.noise_db)));
  CHECK(prospect_of(list, "QUHF").outlook.deviations.noise_db == 0.0);
}

TEST_CASE("an amplifier without power is a reason with its decibels") {
  const auto tiles = flat_country();
  const std::vector<Station> stations{strong("QOLD", BroadcastStandard::atsc1, 30)};
  Receiver receiver = receiver_with({});
  const auto powered = survey(receiver, stations, tiles);
  receiver.gear = gear::switched_off(receiver.gear);
  const auto off = survey(receiver, stations, tiles);
  const auto costs_db = [](const Prospect& prospect) {
    for (const Reason& reason : prospect.reasons) {
      if (reason.kind() == ReasonKind::amplifier_off) return reason.decibel;
    }
    return 0.0;
  };
  CHECK(costs_db(powered[0]) == 0.0);
  CHECK(costs_db(off[0]) == 10.0);
  CHECK(*off[0].outlook.margin_db < *powered[0].outlook.margin_db - 10.0);
}

}  // namespace mastwise::reception
