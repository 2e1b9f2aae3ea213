#include "core/geo/geodesic.hpp"
#include "core/headings/heading_error.hpp"
#include "core/plan/slack.hpp"
#include "core/reception/survey.hpp"
#include "tests/core/reception/invented_country.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise {

namespace {

using reception::Receiver;
using reception::Survey;

// A strong, a fair and a weak station, and one that interferes with the fair one from the side.
std::vector<Station> stations() {
  struct Made {
    std::string call_sign;
    double distance_m, bearing_deg;
    int channel;
    double erp_kw;
  };
  std::vector<Station> all;
  for (const Made& made :
       {Made{"QBIG", 30e3, 20.0, 30, 500.0}, Made{"QMID", 55e3, 40.0, 24, 40.0},
        Made{"QWEK", 55e3, 330.0, 20, 6.0}, Made{"QOTH", 45e3, 310.0, 24, 10.0}}) {
    all.push_back(
        test::transmitter(destination(test::stop_position(),
                                      Bearing<True>::degrees(made.bearing_deg), made.distance_m),
                          made.channel, 500.0, made.erp_kw));
    all.back().call_sign = made.call_sign;
  }
  return all;
}

Survey surveyed(const gear::Pattern& pattern, double heading_error_deg,
                const terrain::TileSource& tiles) {
  Receiver receiver = test::roof_antenna();
  receiver.gear.amplifier.reset();
  receiver.gear.antenna.uhf = {6.0, pattern};
  receiver.heading_error_deg = heading_error_deg;
  Survey survey(receiver, stations(), tiles);
  reception::Scratch scratch;
  survey.measure(0, survey.size(), scratch);
  survey.weigh();
  return survey;
}

// The errors of all ways to point at a station 55 km away, smallest first.
std::vector<double> errors_deg() {
  HeadingContext context;
  context.distance_m = 55e3;
  context.stop_error_m = 30.0;
  context.transmitter_error_m = 100.0;
  context.declination_sigma_deg = 0.4;
  context.deviation_sigma_deg = 2.0;
  context.rig_heading_sigma_deg = 5.0;
  context.handle_zero_sigma_deg = 3.0;
  context.handle_play_deg = 5.0;
  context.clock_error_min = 1.0;
  context.star_turn_deg_per_min = 0.25;
  context.star_altitude_deg = 45.0;
  std::vector<double> errors{0.0};
  for (int method = 0; method <= static_cast<int>(PointingMethod::magnetic_heading_sensor);
       ++method) {
    const auto budget = heading_budget(static_cast<PointingMethod>(method), context);
    if (budget) errors.push_back(budget->total_deg);
  }
  std::sort(errors.begin(), errors.end());
  return errors;
}

}  // namespace

TEST_CASE("tolerance: a less exact way to point never gets a wider one") {
  const auto tiles = test::country(1, test::flat(200.0));
  const auto uneven = gear::Pattern::from_table(
      "angle, db\n0, 0\n25, -3\n50, -14\n75, -7\n100, -16\n125, -9\n150, -20\n180, -8\n"
      "210, -20\n235, -9\n260, -16\n285, -7\n310, -14\n335, -3\n");
  REQUIRE(uneven);
  const std::vector<double> errors = errors_deg();
  REQUIRE(errors.size() >= 10);
  int compared = 0, finite = 0;
  for (const gear::Pattern& pattern :
       {gear::Pattern::directional(30.0, 20.0), gear::Pattern::directional(60.0, 12.0),
        gear::Pattern::bidirectional(70.0, 15.0), *uneven, gear::Pattern::omnidirectional()}) {
    std::vector<std::vector<std::optional<Slack>>> before;  // by station, by floor
    for (const double error_deg : errors) {
      const Survey survey = surveyed(pattern, error_deg, tiles);
      const auto curves = reception::chance_curves(survey);
      std::vector<std::vector<std::optional<Slack>>> now;
      for (const auto& curve : curves) {
        REQUIRE(curve);
        auto& of_station = now.emplace_back();
        for (const double floor_percent : {30.0, 40.0, 70.0, 90.0}) {
          of_station.push_back(slack(*curve, curve->toward(), floor_percent));
        }
      }
      for (std::size_t i = 0; i < before.size(); ++i) {
        for (std::size_t floor = 0; floor < before[i].size(); ++floor) {
          if (!now[i][floor]) continue;
          INFO("station " << i << ", floor " << floor << ", error " << error_deg);
          REQUIRE(before[i][floor]);
          CHECK(now[i][floor]->left_deg <= before[i][floor]->left_deg + 1e-9);
          CHECK(now[i][floor]->right_deg <= before[i][floor]->right_deg + 1e-9);
          ++compared;
          finite += now[i][floor]->all_round() ? 0 : 1;
        }
      }
      before = std::move(now);
    }
  }
  CHECK(compared > 500);
  CHECK(finite > 200);
}

}  // namespace mastwise
