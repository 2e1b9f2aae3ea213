#include "core/plan/scan_help.hpp"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

// Invented stations.
ScanCandidate candidate(const char* call_sign, int channel, std::optional<double> chance_percent,
                        const std::vector<std::string>& virtual_channels, double distance_m = 50e3,
                        double bearing_deg = 0.0) {
  Station station{.position = Position::at_deg(45.0, -110.0).value()};
  station.call_sign = call_sign;
  station.rf_channel = {channel, '\0'};
  for (const std::string& each : virtual_channels) {
    station.programs.push_back({.virtual_channel = each});
  }
  return {std::move(station), chance_percent, Bearing<True>::degrees(bearing_deg), distance_m};
}

const std::vector<ScanCandidate> kFour = {
    candidate("QAAA", 9, 60.0, {"9.1", "9.2"}),
    candidate("QBBB", 33, 95.0, {"6.1", "6.2", "6.10"}, 40e3, 200.0),
    candidate("QCCC", 14, std::nullopt, {"6.1", "6.2", "6.10"}, 160e3, 310.0),
    candidate("QDDD", 33, 20.0, {"44.1"}),
};

ScanState state(std::vector<ScanTick> ticks) {
  return advise(kFour, ticks).state;
}

}  // namespace

// 47 CFR 73.603: channel 9 is 186-192 MHz, 14 is 470-476, 33 is 584-590.
TEST_CASE("channels are listed by falling chance, each once", "[ways]") {
  const ScanPlan plan = plan_scan(kFour);
  REQUIRE(plan.channels.size() == 3);
  CHECK(plan.channels[0].rf_channel.number == 33);
  CHECK(plan.channels[0].center_mhz == 587.0);
  CHECK(plan.channels[0].chance_percent == 95.0);
  REQUIRE(plan.channels[0].expected.size() == 2);
  CHECK(plan.channels[0].expected[0].call_sign == "QBBB");
  CHECK(plan.channels[0].expected[0].virtual_channels ==
        std::vector<std::string>{"6.1", "6.2", "6.10"});
  CHECK(plan.channels[0].expected[1].candidate == 3);
  CHECK(plan.channels[1].rf_channel.number == 9);
  CHECK(plan.channels[2].rf_channel.number == 14);
  CHECK_FALSE(plan.channels[2].chance_percent);
  CHECK(plan_scan({}).channels.empty());
}

TEST_CASE("equal chances are ordered by frequency", "[ways]") {
  const std::vector<ScanCandidate> equal = {candidate("QAAA", 30, 80.0, {}),
                                            candidate("QBBB", 7, 80.0, {})};
  const ScanPlan plan = plan_scan(equal);
  REQUIRE(plan.channels.size() == 2);
  CHECK(plan.channels[0].rf_channel.number == 7);
}

// Common practice, no source: a receiver that scans from low to high may store a far twin first.
TEST_CASE("the same virtual channel from two transmitters is flagged", "[ways]") {
  const ScanPlan plan = plan_scan(kFour);
  REQUIRE(plan.twins.size() == 3);
  CHECK(plan.twins[0].virtual_channel == "6.1");
  CHECK(plan.twins[1].virtual_channel == "6.2");
  CHECK(plan.twins[2].virtual_channel == "6.10");
  const Twins& twins = plan.twins[0];
  REQUIRE(twins.by_scan.size() == 2);
  CHECK(twins.by_scan[0].call_sign == "QCCC");
  CHECK(twins.by_scan[0].rf_channel.number == 14);
  CHECK(twins.by_scan[0].distance_m == 160e3);
  CHECK(twins.by_scan[0].bearing.degrees() == 310.0);
  CHECK(twins.best == 1);
  CHECK(twins.another_comes_first());

  const std::vector<ScanCandidate> near_first = {candidate("QAAA", 8, 90.0, {"6.1"}),
                                                 candidate("QBBB", 20, 30.0, {"6.1"})};
  CHECK_FALSE(plan_scan(near_first).twins.at(0).another_comes_first());
}

TEST_CASE("the ticks say what to do next", "[ways]") {
  using enum ScanTick;
  CHECK(state({}) == ScanState::not_finished);
  CHECK(state({found, found, not_found}) == ScanState::not_finished);
  CHECK(state({found, found, found, found}) == ScanState::all_found);
  CHECK(state({not_found, not_found, not_found, not_found}) == ScanState::nothing_found);
  CHECK(state({found, found, not_found, not_found}) == ScanState::weak_missing);
  CHECK(state({found, not_found, not_found, not_found}) == ScanState::strong_missing);
  // A found station of unknown chance does not affect the others.
  CHECK(state({not_found, found, found, not_found}) == ScanState::weak_missing);
  CHECK(advise({}, {}).state == ScanState::not_finished);

  const std::vector<ScanTick> ticks = {not_found, found, not_found, not_found};
  CHECK(advise(kFour, ticks).missing == std::vector<std::size_t>{0, 3, 2});
  const std::vector<ScanTick> none(4, not_found);
  CHECK(advise(kFour, none).state == ScanState::nothing_found);
}

// Common practice, no source: a full scan takes 3 to 15 minutes and often wipes the list, an "add"
// scan keeps it.
TEST_CASE("the advice fits the kind of scan to the situation", "[ways]") {
  CHECK(which_scan({}) == ScanChoice::full);
  CHECK(which_scan({.takes_channels_by_hand = true}) == ScanChoice::full);
  CHECK(which_scan({.made_at_this_stop = true}) == ScanChoice::add_heading);
  CHECK(which_scan({.made_at_this_stop = true, .made_on_this_heading = true}) ==
        ScanChoice::add_after_peak);
  CHECK(which_scan({.made_at_this_stop = true, .takes_channels_by_hand = true}) ==
        ScanChoice::by_hand);
}
