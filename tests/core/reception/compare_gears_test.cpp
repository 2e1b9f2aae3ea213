#include "core/reception/compare_gears.hpp"

#include "core/reception/survey.hpp"
#include "core/stations/networks.hpp"
#include "tests/core/reception/invented_country.hpp"
#include "tests/support/dice.hpp"

#include <array>
#include <map>
#include <set>

#include <catch2/catch.hpp>

namespace mastwise::reception {
namespace {

Station carrying(const char* call_sign, const char* network,
                 std::initializer_list<const char*> programs = {}) {
  Station station{
      .call_sign = call_sign, .network = network, .position = *Position::at_deg(44.0, -100.0)};
  for (const char* program : programs) station.programs.push_back({.network = program});
  return station;
}

// Figures of one gear at the rig: its survey's chances.
GearChances chances_with(const gear::Gear& gear, const std::vector<Station>& stations,
                         const terrain::TileSource& tiles) {
  Receiver receiver = test::roof_antenna();
  receiver.gear = gear;
  Survey survey(receiver, stations, tiles);
  Scratch scratch;
  survey.measure(0, survey.size(), scratch);
  survey.weigh();
  GearChances chances;
  for (std::size_t i = 0; i < survey.size(); ++i) {
    chances.push_back(survey.outlook(i)->chance_percent);
  }
  return chances;
}

std::vector<Station> random_stations(test::Dice& dice, std::size_t count) {
  static constexpr std::array kNetworks{"North", "South", "East", "West", "Hill", ""};
  std::vector<Station> stations;
  for (std::size_t i = 0; i < count; ++i) {
    // Every channel once: without interference more gain can only help.
    Station station =
        test::transmitter(test::north_of_stop(dice.between(15e3, 110e3)), static_cast<int>(14 + i),
                          dice.between(400.0, 700.0), dice.between(0.02, 3.0));
    station.network = kNetworks[dice.below(kNetworks.size())];
    station.id = std::to_string(i);
    stations.push_back(std::move(station));
  }
  return stations;
}

std::set<std::string> named(const std::vector<Watchable>& all, std::size_t gear) {
  std::set<std::string> names;
  for (const Watchable& one : all) {
    if (one.with(gear)) names.insert(one.network);
  }
  return names;
}

}  // namespace

TEST_CASE("the networks of a station are those of its programs, each once") {
  CHECK(networks_of(carrying("QONE", "North", {"north", "South", "", "SOUTH"})) ==
        std::vector<std::string>{"North", "South"});
  CHECK(networks_of(carrying("QTWO", "", {"South"})) == std::vector<std::string>{"South"});
  CHECK(networks_of(carrying("QTRE", "")).empty());
}

// By hand: dome, crank-up.
TEST_CASE("gears are compared by networks, and stations without any count by themselves") {
  const std::vector<Station> stations{carrying("QONE", "North"), carrying("QTWO", "north"),
                                      carrying("QTRE", "South", {"East"}), carrying("QFOR", ""),
                                      carrying("QFIV", "West")};
  const std::vector<GearChances> chances{{69.4, 75.0, 20.0, 80.0, std::nullopt},
                                         {91.0, 90.0, 69.5, 95.0, 30.0}};
  const GearComparison comparison = compare_gears(stations, chances);
  REQUIRE(comparison.networks.size() == 3);
  // What both bring first; 69.5 is shown as 70, which is likely, and 69.4 as 69, which is not.
  CHECK(comparison.networks[0].network == "North");
  CHECK(comparison.networks[0].by_gear[0] == Watchable::Best{1, 75.0});
  CHECK(comparison.networks[0].by_gear[1] == Watchable::Best{0, 91.0});
  CHECK(comparison.networks[1].network == "East");
  CHECK(comparison.networks[2].network == "South");
  CHECK_FALSE(comparison.networks[2].with(0));
  CHECK(comparison.networks[2].with(1));
  REQUIRE(comparison.unlikely.size() == 1);
  CHECK(comparison.unlikely[0].network == "West");
  CHECK_FALSE(comparison.unlikely[0].by_gear[0]);
  REQUIRE(comparison.unnamed.size() == 1);
  CHECK(comparison.gears[0] == GearReach{.networks = 1, .unnamed = 1});
  CHECK(comparison.gears[1] == GearReach{.networks = 3, .unnamed = 1, .only = {0, 2}});
  CHECK(enough(comparison) == 1U);
  // Of two alike the first.
  CHECK(enough(compare_gears(stations, std::vector<GearChances>{chances[1], chances[1]})) == 0U);
}

TEST_CASE("no gear is enough if each brings what the other does not, or none brings anything") {
  const std::vector<Station> stations{carrying("QONE", "North"), carrying("QTWO", "South")};
  const std::vector<GearChances> crossed{{80.0, 10.0}, {10.0, 80.0}};
  CHECK_FALSE(enough(compare_gears(stations, crossed)));
  const std::vector<GearChances> nothing{{5.0, 10.0}, {10.0, std::nullopt}};
  CHECK_FALSE(enough(compare_gears(stations, nothing)));
  CHECK(compare_gears(stations, nothing).unlikely.size() == 2);
  CHECK(compare_gears({}, std::vector<GearChances>{{}, {}}).gears.size() == 2);
}

// The oracle counts with sets, a network at a time.
TEST_CASE("random chances: counts agree with sets of networks") {
  test::Dice dice(4);
  static constexpr std::array kNetworks{"A", "a", "B", "C", "D", ""};
  for (int round = 0; round < 300; ++round) {
    std::vector<Station> stations;
    for (std::size_t count = dice.below(12); count > 0; --count) {
      stations.push_back(carrying("Q", kNetworks[dice.below(6)], {kNetworks[dice.below(6)]}));
    }
    std::vector<GearChances> chances(1 + dice.below(4));
    for (GearChances& each : chances) {
      for (std::size_t i = 0; i < stations.size(); ++i) {
        each.push_back(dice.below(6) == 0 ? std::nullopt : std::optional(dice.between(0.0, 100.0)));
      }
    }
    const GearComparison comparison = compare_gears(stations, chances);
    std::set<std::string> all;
    std::vector<std::set<std::string>> brought(chances.size());
    std::map<std::size_t, std::size_t> unnamed;
    std::set<std::size_t> all_unnamed;
    for (std::size_t gear = 0; gear < chances.size(); ++gear) {
      for (std::size_t i = 0; i < stations.size(); ++i) {
        if (chances[gear][i].value_or(0.0) < 69.5) continue;
        const std::string first = stations[i].network, second = stations[i].programs[0].network;
        for (std::string name : {first, second}) {
          if (name == "a") name = "A";
          if (!name.empty()) brought[gear].insert(name);
          if (!name.empty()) all.insert(name);
        }
        if (!first.empty() || !second.empty()) continue;
        ++unnamed[gear];
        all_unnamed.insert(i);
      }
    }
    CHECK(comparison.networks.size() == all.size());
    CHECK(comparison.unnamed.size() == all_unnamed.size());
    for (std::size_t gear = 0; gear < chances.size(); ++gear) {
      CHECK(comparison.gears[gear].networks == brought[gear].size());
      CHECK(comparison.gears[gear].unnamed == unnamed[gear]);
      for (const std::size_t station : comparison.gears[gear].only) {
        for (std::size_t other = 0; other < chances.size(); ++other) {
          CHECK(is_likely(chances[other][station]) == (other == gear));
        }
      }
    }
  }
}

TEST_CASE("a gear with more gain, the same pattern and height never loses a network") {
  const auto tiles = test::country(2, test::hills());
  test::Dice dice(6);
  std::size_t gained = 0;
  for (int round = 0; round < 12; ++round) {
    const std::vector<Station> stations = random_stations(dice, 9);
    gear::Gear weak = *gear::preset("Long Yagi on a pole without amplifier");
    gear::Gear strong = weak;
    for (auto band : {&gear::Antenna::low_vhf, &gear::Antenna::high_vhf, &gear::Antenna::uhf}) {
      (weak.antenna.*band).gain_dbd -= 8.0;
      (strong.antenna.*band).gain_dbd += dice.between(0.0, 8.0) - 8.0;
    }
    const std::vector<GearChances> chances{chances_with(weak, stations, tiles),
                                           chances_with(strong, stations, tiles)};
    const GearComparison comparison = compare_gears(stations, chances);
    const auto before = named(comparison.networks, 0), after = named(comparison.networks, 1);
    for (const std::string& network : before) {
      INFO(network);
      CHECK(after.contains(network));
    }
    CHECK(comparison.gears[0].only.empty());
    CHECK(comparison.gears[0].unnamed <= comparison.gears[1].unnamed);
    gained += after.size() - before.size();
  }
  // Otherwise the check would hold for nothing.
  CHECK(gained > 0);
}

}  // namespace mastwise::reception
