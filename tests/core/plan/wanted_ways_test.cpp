#include "core/plan/wanted_ways.hpp"

#include "tests/support/dice.hpp"

#include <algorithm>
#include <array>
#include <set>

#include <catch2/catch.hpp>

namespace mastwise {
namespace {

struct Made {
  const char* network;
  double bearing_deg;
  std::optional<double> percent;
};

struct Country {
  std::vector<Station> stations = {};
  std::vector<SeenStation> seen = {};

  void add(const Made& made) {
    stations.push_back({.network = made.network, .position = *Position::at_deg(44.0, -100.0)});
    seen.push_back({made.percent, Bearing<True>::degrees(made.bearing_deg)});
  }
  std::vector<std::size_t> keep(const WantedByName& wanted = {}) const {
    return stations_to_keep_clear(stations, seen, wanted);
  }
};

Country country(std::initializer_list<Made> all) {
  Country made;
  for (const Made& one : all) made.add(one);
  return made;
}

using Indexes = std::vector<std::size_t>;

}  // namespace

TEST_CASE("ways to keep clear: the fewest directions among equally likely stations") {
  // North and South are both steady at 40; alone, 100 and 200 would be better.
  const Country two = country({{"North", 100.0, 99.0},
                               {"South", 200.0, 99.0},
                               {"North", 40.0, 91.0},
                               {"South", 43.0, 92.0}});
  CHECK(two.keep() == Indexes{2, 3});
  // A station that is only likely does not stand in for a steady one.
  const Country worse =
      country({{"North", 100.0, 99.0}, {"South", 40.0, 92.0}, {"North", 40.0, 85.0}});
  CHECK(worse.keep() == Indexes{0, 1});
  // One direction either way: the better chances.
  const Country same = country({{"North", 100.0, 91.0}, {"North", 300.0, 95.0}});
  CHECK(same.keep() == Indexes{1});
}

TEST_CASE("ways to keep clear: likely networks, and stations without a network by themselves") {
  const Country made = country({{"North", 10.0, 69.4},
                                {"South", 20.0, 69.6},
                                {"", 200.0, 80.0},
                                {"", 200.0, 30.0},
                                {"West", 90.0, std::nullopt}});
  CHECK(made.keep() == Indexes{1, 2});
  CHECK(country({}).keep().empty());
  CHECK(country({{"North", 10.0, 5.0}}).keep().empty());
}

TEST_CASE("ways to keep clear: what is wanted counts, likely or not") {
  const Country made = country({{"North", 10.0, 80.0},
                                {"North", 90.0, 95.0},
                                {"South", 200.0, 5.0},
                                {"West", 300.0, std::nullopt}});
  CHECK(made.keep({.stations = {3}}) == Indexes{3});
  // The wanted station carries the network already.
  CHECK(made.keep({.stations = {0}, .networks = {"NORTH"}}) == Indexes{0});
  CHECK(made.keep({.networks = {"north", "South", "West", "Nowhere"}}) == Indexes{1, 2});
}

// The oracle tries every choice of one station for each network.
TEST_CASE("ways to keep clear: random stations need no more directions than any other choice") {
  test::Dice dice(12);
  static constexpr std::array kNetworks{"A", "B", "C", "D"};
  for (int round = 0; round < 200; ++round) {
    Country made;
    std::array<Indexes, 4> carriers;
    for (std::size_t i = 0; i < 10; ++i) {
      const std::size_t network = dice.below(4);
      // Directions far apart: it is plain which of them are one.
      made.add(
          {kNetworks[network], 30.0 * static_cast<double>(dice.below(6)) + dice.uniform(), 95.0});
      carriers[network].push_back(i);
    }
    const auto directions = [&](const Indexes& stations) {
      std::set<int> all;
      for (const std::size_t one : stations) {
        all.insert(static_cast<int>(made.seen[one].bearing.degrees() / 30.0));
      }
      return all.size();
    };
    std::vector<Indexes> choices{{}};
    for (const Indexes& network : carriers) {
      if (network.empty()) continue;
      std::vector<Indexes> longer;
      for (const Indexes& choice : choices) {
        for (const std::size_t one : network) {
          longer.push_back(choice);
          longer.back().push_back(one);
        }
      }
      choices = std::move(longer);
    }
    std::size_t fewest = 99;
    for (const Indexes& choice : choices) fewest = std::min(fewest, directions(choice));
    const Indexes kept = made.keep();
    CHECK(directions(kept) == fewest);
    for (const Indexes& network : carriers) {
      const auto in_kept = [&](std::size_t one) {
        return std::find(kept.begin(), kept.end(), one) != kept.end();
      };
      CHECK(std::count_if(network.begin(), network.end(), in_kept) == (network.empty() ? 0 : 1));
    }
  }
}

}  // namespace mastwise
