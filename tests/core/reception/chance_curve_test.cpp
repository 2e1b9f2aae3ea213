#include "core/reception/chance_curve.hpp"

#include "core/geo/geodesic.hpp"
#include "core/plan/slack.hpp"
#include "core/plan/turn_plan.hpp"
#include "core/reception/survey.hpp"
#include "tests/core/reception/invented_country.hpp"

#include <cmath>
#include <functional>
#include <numbers>
#include <string>
#include <utility>

#include <catch2/catch.hpp>

namespace mastwise::reception {

namespace {

constexpr double kRadian_deg = 180.0 / std::numbers::pi;

Survey weighed(const Receiver& receiver, std::vector<Station> stations,
               const terrain::TileSource& tiles) {
  Survey survey(receiver, std::move(stations), tiles);
  Scratch scratch;
  survey.measure(0, survey.size(), scratch);
  survey.weigh();
  return survey;
}

double phi_percent(double deviate) {
  return 50.0 * std::erfc(-deviate / std::numbers::sqrt2);
}

// The chance's mean over the error, by the trapezium rule in steps of a hundredth of a deviation.
double mean_percent(double sigma_deg, const std::function<double(double)>& percent_off_axis) {
  double sum = 0.0, weights = 0.0;
  for (int i = -600; i <= 600; ++i) {
    const double deviate = 0.01 * i;
    const double weight = std::exp(-0.5 * deviate * deviate);
    sum += weight * percent_off_axis(deviate * sigma_deg);
    weights += weight;
  }
  return sum / weights;
}

const Station& weak() {
  static const Station station = test::named_station("QWEK", 55e3, 30.0, 20, 1.0);
  return station;
}

}  // namespace

TEST_CASE("chance curve: without a heading error it equals the survey's chance on the axis") {
  const auto tiles = test::country(1, test::flat(200.0));
  const Survey survey = weighed(test::with_pattern(gear::Pattern::directional(60.0, 15.0), 0.0),
                                {weak(), test::named_station("QDST", 60e3, 10.0, 20, 30.0)}, tiles);
  for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
    const Outlook& outlook = *survey.outlook(i);
    const auto curve = ChanceCurves(survey).curve(i);
    REQUIRE(curve);
    // The whole degrees beside the bearing enclose it within a hundredth of a point.
    CHECK(curve->percent_at(outlook.bearing) == Approx(*outlook.chance_percent).margin(0.02));
    CHECK(curve->toward() == outlook.bearing);
  }
}

// Worked from the normal distribution: the chance off the axis is Phi((margin + response) /
// deviation), averaged over the error.
TEST_CASE("chance curve: it is the mean of Phi over the heading error") {
  const auto tiles = test::country(1, test::flat(200.0));
  const gear::Pattern pattern = gear::Pattern::directional(60.0, 15.0);
  const Survey exact = weighed(test::with_pattern(pattern, 0.0), {weak()}, tiles);
  const double margin_db = *exact.outlook(0)->margin_db;
  const double deviation_db = exact.outlook(0)->deviations.total_db();
  for (const double sigma_deg : {1.0, 6.0, 25.0}) {
    const Survey survey = weighed(test::with_pattern(pattern, sigma_deg), {weak()}, tiles);
    const auto curve = ChanceCurves(survey).curve(0);
    REQUIRE(curve);
    const double toward_deg = curve->toward().degrees();
    for (int heading_deg = 0; heading_deg < 360; heading_deg += 15) {
      const double by_hand = mean_percent(sigma_deg, [&](double error_deg) {
        const Turn off = Turn::clockwise_deg(toward_deg - heading_deg - error_deg);
        return phi_percent((margin_db + pattern.relative_db(off)) / deviation_db);
      });
      CHECK(curve->percent()[static_cast<std::size_t>(heading_deg)] ==
            Approx(by_hand).margin(0.03));
    }
    // The survey treats the error as a mean loss and a normal spread: nearly the same on the axis
    // for an error much smaller than the beam.
    if (sigma_deg <= 6.0) {
      CHECK(curve->percent_at(curve->toward()) ==
            Approx(*survey.outlook(0)->chance_percent).margin(0.3));
    }
  }
}

// Common practice, no source: 12 (theta / HPBW)^2 dB. Within the half-power beam the pattern power
// cos^n is within a tenth of a decibel of it.
TEST_CASE("chance curve: the loss beside the axis follows common practice") {
  for (const double width_deg : {32.0, 60.0, 80.0}) {
    const gear::Pattern pattern = gear::Pattern::directional(width_deg, 20.0);
    for (double off_deg = 0.0; off_deg <= width_deg / 2.0; off_deg += 2.0) {
      const double ratio = off_deg / width_deg;
      CHECK(-pattern.relative_db(Turn::clockwise_deg(off_deg)) ==
            Approx(12.0 * ratio * ratio).margin(0.1));
    }
  }
}

// Phi(0.5244) = 0.7000 [any table of the normal distribution]: the floor of 70 percent is met where
// the response has fallen by margin - 0.5244 deviations, and cos^n has fallen by L dB at
// acos(10^(-L / 10 n)).
TEST_CASE("tolerance: one station, by hand from Phi and the pattern") {
  const auto tiles = test::country(1, test::flat(200.0));
  const Survey survey =
      weighed(test::with_pattern(gear::Pattern::directional(60.0, 25.0), 0.0), {weak()}, tiles);
  const Outlook& outlook = *survey.outlook(0);
  const double loss_db = *outlook.margin_db - 0.5244 * outlook.deviations.total_db();
  REQUIRE(loss_db > 0.5);
  REQUIRE(loss_db < 15.0);
  const double n = std::log10(0.5) / std::log10(std::cos(30.0 / kRadian_deg));
  const double by_hand_deg = std::acos(std::pow(10.0, -loss_db / (10.0 * n))) * kRadian_deg;
  const auto curve = ChanceCurves(survey).curve(0);
  REQUIRE(curve);
  const auto found = slack(*curve, outlook.bearing, 70.0);
  REQUIRE(found);
  CHECK(found->left_deg == Approx(by_hand_deg).margin(0.02));
  CHECK(found->right_deg == Approx(by_hand_deg).margin(0.02));
  CHECK((best_heading(*curve) - outlook.bearing).size_deg() < 0.5);
}

TEST_CASE("chance curve: an omnidirectional antenna is level, and unknown stations have none") {
  const auto tiles = test::country(1, test::flat(200.0));
  Station unknown = test::named_station("QUNK", 20e3, 0.0, 25, 10.0);
  unknown.erp_kw.reset();
  const Survey survey =
      weighed(test::with_pattern(gear::Pattern::omnidirectional(), 6.0), {weak(), unknown}, tiles);
  const auto curves = chance_curves(survey);
  REQUIRE(curves.size() == 2);
  REQUIRE(curves[0]);
  for (const double percent : curves[0]->percent()) {
    CHECK(percent == Approx(*survey.outlook(0)->chance_percent));
  }
  CHECK_FALSE(curves[1]);
}

TEST_CASE("chance curve: the amplifier is off at headings that overload it") {
  const auto tiles = test::country(1, test::flat(200.0));
  Receiver receiver = test::with_pattern(gear::Pattern::directional(60.0, 25.0), 0.0);
  receiver.gear.amplifier =
      gear::Amplifier{.gain_db = 16, .noise_figure_db = 3, .overload_dbm = -20};
  receiver.gear.cable.length_m = 40.0;
  const std::vector<Station> stations{weak(), test::named_station("QBIG", 2e3, 60.0, 30, 1000.0)};
  const auto amplified = chance_curves(weighed(receiver, stations, tiles));
  const auto alone = chance_curves(weighed(receiver, {weak()}, tiles));
  Receiver by_tower = receiver;
  by_tower.towers.cell = gear::TowerRange::beside;
  const auto beside = chance_curves(weighed(by_tower, {weak()}, tiles));
  receiver.gear = gear::switched_off(receiver.gear);
  const auto without = chance_curves(weighed(receiver, {weak()}, tiles));
  // Straight at the strong one, and with it behind.
  CHECK(amplified[0]->percent()[60] == Approx(without[0]->percent()[60]));
  CHECK(amplified[0]->percent()[60] < alone[0]->percent()[60] - 1.0);
  CHECK(amplified[0]->percent()[250] == Approx(alone[0]->percent()[250]));
  // A tower nearby, nobody knows where.
  for (const std::size_t heading : {0U, 60U, 250U}) {
    CHECK(beside[0]->percent()[heading] == Approx(without[0]->percent()[heading]));
  }
}

TEST_CASE("chance curve: a null on an interferer gains more than it costs") {
  const auto tiles = test::country(1, test::flat(200.0));
  // Two beams with deep ends; the other on the same channel 60 degrees to the right.
  const Receiver receiver = test::with_pattern(gear::Pattern::bidirectional(70.0, 25.0), 4.0);
  const Station wanted = test::named_station("QWNT", 25e3, 30.0, 20, 30.0);
  const Station other = test::named_station("QDST", 30e3, 90.0, 20, 10.0);
  const auto curves = chance_curves(weighed(receiver, {wanted, other}, tiles));
  REQUIRE(curves[0]);
  const Bearing<True> best = best_heading(*curves[0]);
  // Turned left, which brings the interferer to the null, 90 degrees off.
  CHECK((best - curves[0]->toward()).clockwise_deg() < -10.0);
  CHECK((best - curves[0]->toward()).clockwise_deg() > -40.0);
  const double gain = curves[0]->percent_at(best) - curves[0]->percent_at(curves[0]->toward());
  CHECK(gain > 10.0);
  CHECK(curves[0]->avoided() == std::size_t{1});
  const TurnPlan plan = turn_plan(curves, {.wishes = {{.stations = {0}}}, .floor_percent = 10.0});
  REQUIRE(plan.headings.size() == 1);
  REQUIRE(plan.headings[0].off_axis_for.size() == 1);
  CHECK(plan.headings[0].off_axis_for[0].station == 0);
  CHECK(plan.headings[0].off_axis_for[0].interferer == 1);
  CHECK(plan.headings[0].off_axis_for[0].gain_percent == Approx(gain).margin(1.0));
  // Without it the antenna is aimed straight.
  const auto undisturbed = chance_curves(weighed(receiver, {wanted}, tiles));
  CHECK_FALSE(undisturbed[0]->avoided());
  CHECK((best_heading(*undisturbed[0]) - undisturbed[0]->toward()).size_deg() < 0.6);
}

}  // namespace mastwise::reception
