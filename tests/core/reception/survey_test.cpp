#include "core/reception/survey.hpp"

#include "core/geo/geodesic.hpp"
#include "core/reception/calibration.hpp"
#include "tests/core/reception/invented_country.hpp"

#include <algorithm>
#include <cmath>
#include <iostream>
#include <thread>

#include <catch2/catch.hpp>

namespace mastwise::reception {

namespace {

bool has_reason(const Prospect& prospect, ReasonKind kind) {
  return std::any_of(prospect.reasons.begin(), prospect.reasons.end(),
                     [kind](const Reason& reason) { return reason.kind() == kind; });
}

// The missing fact of the first reason.
UnknownFact unknown_of(const Prospect& prospect) {
  const auto* unknown = std::get_if<fact::Unknown>(&prospect.reasons.at(0).fact);
  REQUIRE(unknown != nullptr);
  return unknown->what;
}

// Stations of all bands scattered north of the stop.
std::vector<Station> strewn(int count) {
  std::vector<Station> stations;
  for (int i = 0; i < count; ++i) {
    const Position position = destination(
        test::stop_position(), Bearing<True>::degrees(-12.0 + i % 25), 4e3 + 2.1e3 * (i % 97));
    stations.push_back(
        test::transmitter(position, 2 + i % 35, 380.0 + 13.0 * (i % 41), 0.3 * (1 + i % 300)));
    stations.back().call_sign = "QT" + std::to_string(i);
  }
  return stations;
}

void expect_same(const Outlook& a, const Outlook& b) {
  CHECK(a.field_p1812_dbuvm == b.field_p1812_dbuvm);
  CHECK(a.field_itm_dbuvm == b.field_itm_dbuvm);
  CHECK(a.margin_db == b.margin_db);
  CHECK(a.chance_percent == b.chance_percent);
  CHECK(a.obstacles == b.obstacles);
  CHECK(a.amplifier_off == b.amplifier_off);
}

}  // namespace

// Recommendation ITU-R P.525: E = 106.92 + 10 log P(kW) - 20 log d(km) for ERP.
TEST_CASE("without obstacles the field equals free space") {
  // Over a deep valley, so that the ground stays far from the ray.
  const double far_deg = test::north_of_stop(20e3).latitude_deg();
  const auto tiles = test::country(1, [&](double latitude_deg, double) {
    const double t = (latitude_deg - 44.01) / (far_deg - 44.01);
    return t > 0.002 && t < 0.98 ? 100.0 : 1500.0;
  });
  Receiver receiver = test::roof_antenna();
  receiver.gear.height_m = 12.0;  // above the clutter, so that it costs nothing
  const auto list =
      survey(receiver, {test::transmitter(test::north_of_stop(20e3), 20, 1700.0, 10.0)}, tiles);
  const double free_dbuvm = 106.92 + 10.0 - 20.0 * std::log10(20.0);
  REQUIRE(list.at(0).outlook.field_p1812_dbuvm);
  // The calibration to average country counts here too.
  const double expected_dbuvm =
      free_dbuvm -
      above_measured_curves_db(Knowledge::profile, list[0].outlook.frequency_mhz, 20e3);
  CHECK(*list[0].outlook.field_p1812_dbuvm == Approx(expected_dbuvm).margin(0.3));
  CHECK(*list[0].outlook.field_itm_dbuvm == Approx(expected_dbuvm).margin(3.0));
  CHECK(has_reason(list[0], ReasonKind::clear_line));
}

// Trade knowledge: 140 miles is nearly hopeless at any power, 15 miles in the open is certain.
TEST_CASE("140 miles over ordinary country is a long shot at best, 15 miles are steady") {
  const auto tiles = test::country(3, test::hills());
  const std::vector<Station> far = {
      test::transmitter(test::north_of_stop(140 * test::kMile_m), 4, 900.0, 100.0),
      test::transmitter(test::north_of_stop(140 * test::kMile_m), 10, 900.0, 160.0),
      test::transmitter(test::north_of_stop(140 * test::kMile_m), 30, 900.0, 1000.0)};
  for (const gear::Gear& gear : gear::presets()) {
    if (gear.height_m > 5.0) continue;  // on a pole beside the rig, not on its roof
    INFO(gear.name);
    Receiver receiver = test::roof_antenna();
    receiver.gear = gear;
    for (const Prospect& prospect : survey(receiver, far, tiles)) {
      REQUIRE(prospect.outlook.chance_percent);
      std::cout << gear.name << ", RF " << prospect.station.rf_channel.number
                << " at 140 miles: " << *prospect.outlook.field_p1812_dbuvm << " and "
                << *prospect.outlook.field_itm_dbuvm << " dBuV/m, margin "
                << *prospect.outlook.margin_db << " dB, " << *prospect.outlook.chance_percent
                << " %\n";
      CHECK(chance_word(*prospect.outlook.chance_percent) >= ChanceWord::long_shot);
    }
    const auto near = survey(
        receiver, {test::transmitter(test::north_of_stop(15 * test::kMile_m), 30, 900.0, 1000.0)},
        tiles);
    CHECK(chance_word(*near.at(0).outlook.chance_percent) == ChanceWord::steady);
  }
}

TEST_CASE("reasons are sorted by what the station would gain without them") {
  const auto tiles = test::country(3, test::hills());
  Receiver receiver = test::roof_antenna();
  receiver.surroundings = Surroundings::houses;
  const auto list = survey(receiver, strewn(120), tiles);
  REQUIRE(list.size() == 120);
  for (std::size_t i = 0; i < list.size(); ++i) {
    const Prospect& prospect = list[i];
    CHECK_FALSE(prospect.reasons.empty());
    for (std::size_t r = 0; r < prospect.reasons.size(); ++r) {
      CHECK(prospect.reasons[r].decibel >= 0.0);
      CHECK(prospect.reasons[r].gain_percent >= 0.0);
      if (r == 0) continue;
      const Reason& before = prospect.reasons[r - 1];
      const Reason& here = prospect.reasons[r];
      CHECK(std::pair(before.gain_percent, before.decibel) >=
            std::pair(here.gain_percent, here.decibel));
    }
    if (i > 0) CHECK(*list[i - 1].outlook.chance_percent >= *prospect.outlook.chance_percent);
  }
}

TEST_CASE("a survey has the same bits for any split of its work") {
  const auto tiles = test::country(3, test::hills());
  const auto stations = strewn(90);
  const Receiver receiver = test::roof_antenna();
  Survey one(receiver, stations, tiles);
  Scratch scratch;
  one.measure(0, one.size(), scratch);
  one.weigh();
  Survey cut(receiver, stations, tiles);
  const auto every_third = [&cut](std::size_t start) {
    Scratch own;
    for (std::size_t i = start; i < cut.size(); i += 3) cut.measure(i, i + 1, own);
  };
  std::thread first(every_third, 0), second(every_third, 1);
  first.join();
  second.join();
  cut.weigh();
  CHECK(cut.outlook(2) == nullptr);
  CHECK(cut.prospects().size() == 60);
  every_third(2);
  cut.weigh();
  for (std::size_t i = 0; i < one.size(); ++i) expect_same(*one.outlook(i), *cut.outlook(i));
}

TEST_CASE("a missing fact is reported, not guessed") {
  const auto tiles = test::country(1, test::flat(200.0));
  Station station = test::transmitter(test::north_of_stop(40e3), 20, 500.0, 100.0);
  SECTION("no power") {
    station.erp_kw.reset();
    const auto list = survey(test::roof_antenna(), {station}, tiles);
    CHECK_FALSE(list.at(0).outlook.chance_percent);
    CHECK_FALSE(list[0].outlook.field_dbuvm);
    CHECK(list[0].outlook.distance_m == Approx(40e3).margin(1.0));
    CHECK(unknown_of(list[0]) == UnknownFact::power);
  }
  SECTION("no height of any kind") {
    station.antenna_amsl_m.reset();
    const auto list = survey(test::roof_antenna(), {station}, tiles);
    CHECK_FALSE(list.at(0).outlook.chance_percent);
    CHECK(unknown_of(list[0]) == UnknownFact::height);
  }
  SECTION("a height above average terrain replaces a missing height above sea level") {
    const auto known = survey(test::roof_antenna(), {station}, tiles);
    station.antenna_amsl_m.reset();
    station.haat_m = 300.0;
    const auto list = survey(test::roof_antenna(), {station}, tiles);
    CHECK(list.at(0).outlook.mode == PathMode::point_to_point);
    CHECK(*list[0].outlook.field_dbuvm == Approx(*known.at(0).outlook.field_dbuvm).margin(1e-6));
  }
  SECTION("no terrain") {
    station.haat_m = 300.0;
    const auto list = survey(test::roof_antenna(), {station}, terrain::TileSet());
    CHECK(list.at(0).outlook.mode == PathMode::area);
    CHECK_FALSE(list[0].outlook.field_p1812_dbuvm);
    CHECK_FALSE(list[0].outlook.spread_db);
    CHECK(list[0].outlook.terrain_coverage == 0.0);
    CHECK(list[0].outlook.chance_percent);
    REQUIRE(has_reason(list[0], ReasonKind::no_terrain));
    const auto told =
        std::find_if(list[0].reasons.begin(), list[0].reasons.end(),
                     [](const Reason& reason) { return reason.kind() == ReasonKind::no_terrain; });
    REQUIRE(told != list[0].reasons.end());
    CHECK(std::get<fact::NoTerrain>(told->fact).missing_m == Approx(40e3).margin(1.0));
    CHECK(std::get<fact::NoTerrain>(told->fact).distance_m == Approx(40e3).margin(1.0));
  }
  SECTION("a pattern") {
    station.directional = true;
    const auto list = survey(test::roof_antenna(), {station}, tiles);
    CHECK(has_reason(list.at(0), ReasonKind::transmitter_pattern));
  }
  SECTION("a known pattern lowers the field by exactly its decibels, without uncertainty") {
    const auto plain = survey(test::roof_antenna(), {station}, tiles);
    station.directional = true;
    // The stop is due south. By hand: 20 log 0.25 = -12.0412 dB.
    station.pattern = *parse_transmit_pattern("0 1; 90 1; 180 0.25; 270 1");
    const auto list = survey(test::roof_antenna(), {station}, tiles);
    CHECK(*plain.at(0).outlook.field_dbuvm - *list.at(0).outlook.field_dbuvm ==
          Approx(12.0412).margin(0.001));
    CHECK(*plain[0].outlook.field_p1812_dbuvm - *list[0].outlook.field_p1812_dbuvm ==
          Approx(12.0412).margin(0.001));
    CHECK(list[0].outlook.deviations.station_db == 0.0);
    const auto told = std::find_if(
        list[0].reasons.begin(), list[0].reasons.end(),
        [](const Reason& reason) { return reason.kind() == ReasonKind::transmitter_pattern; });
    REQUIRE(told != list[0].reasons.end());
    CHECK(std::get<fact::TransmitterPattern>(told->fact).known);
    CHECK(told->decibel == Approx(12.0412).margin(0.001));
    station.pattern = *parse_transmit_pattern("0 0.25; 90 1; 180 1; 270 1");
    const auto strongest = survey(test::roof_antenna(), {station}, tiles);
    CHECK(*strongest.at(0).outlook.field_dbuvm ==
          Approx(*plain[0].outlook.field_dbuvm).margin(1e-3));
    CHECK_FALSE(has_reason(strongest[0], ReasonKind::transmitter_pattern));
  }
  SECTION("the logbook's lesson is a reason, and costs only if it is worse") {
    Receiver receiver = test::roof_antenna();
    LearnedBias& uhf = receiver.learned[static_cast<std::size_t>(Band::uhf)];
    uhf = {.bias_db = -6.2, .sigma_db = 2.0, .stops = 4};
    const auto lesson = [&] {
      const auto list = survey(receiver, {station}, tiles);
      for (const Reason& reason : list.at(0).reasons) {
        if (reason.kind() == ReasonKind::logbook) return reason;
      }
      FAIL("no lesson");
      return Reason();
    };
    CHECK(lesson().decibel == 6.2);
    CHECK(lesson().fact == Fact(fact::Lesson{Band::uhf, -6.2, 4}));
    uhf.bias_db = 4.0;
    CHECK(lesson().decibel == 0.0);
    CHECK(lesson().gain_percent == 0.0);
    CHECK(lesson().fact == Fact(fact::Lesson{Band::uhf, 4.0, 4}));
    uhf = {};
    CHECK_FALSE(has_reason(survey(receiver, {station}, tiles).at(0), ReasonKind::logbook));
  }
}

}  // namespace mastwise::reception
