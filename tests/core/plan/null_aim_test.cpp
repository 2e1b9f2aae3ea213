#include "core/plan/null_aim.hpp"

#include "core/geo/geodesic.hpp"
#include "tests/core/reception/invented_country.hpp"

#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include <catch2/catch.hpp>

namespace mastwise {
namespace {

using reception::Outlook;
using reception::Receiver;
using reception::Survey;

// A beam of 60 degrees with a narrow null of 35 dB, 80 degrees to its right.
constexpr double kNull_deg = 80.0;
gear::Pattern beam_with_null() {
  return *gear::Pattern::from_table(
      "angle,relative_db\n0,0\n15,-0.7\n30,-3\n45,-6\n60,-9\n70,-14\n76,-35\n84,-35\n90,-14\n"
      "100,-9\n130,-10\n160,-11\n180,-11\n200,-11\n230,-10\n260,-9\n280,-9\n300,-9\n315,-6\n"
      "330,-3\n345,-0.7\n");
}

Survey weighed(const Receiver& receiver, std::vector<Station> stations) {
  static const auto tiles = test::country(1, test::flat(200.0));
  Survey survey(receiver, std::move(stations), tiles);
  reception::Scratch scratch;
  survey.measure(0, survey.size(), scratch);
  survey.weigh();
  return survey;
}

double phi(double deviate) {
  return 0.5 * std::erfc(-deviate / std::numbers::sqrt2);
}

// The wanted one at 30 degrees; the other, on its channel, 60 degrees to the right of it.
const Station kWanted = test::named_station("QWNT", 25e3, 30.0, 20, 30.0);
const Station kOther = test::named_station("QDST", 30e3, 90.0, 20, 20.0);

// The chance with the axis at a heading, from the two stations' own figures without each other.
// Every evening the wanted power must be above that of noise plus that of the other one, 15 dB
// higher on the same channel [OET Bulletin 69 table 5A].
double by_hand_percent(double heading_deg, const gear::Pattern& pattern, double deepest_db) {
  const Survey wanted = weighed(test::with_pattern(pattern, 0.0), {kWanted});
  const Survey other = weighed(test::with_pattern(pattern, 0.0), {kOther});
  const Outlook& w = *wanted.outlook(0);
  const Outlook& o = *other.outlook(0);
  const auto response_db = [&](double off_deg) {
    return std::max(pattern.relative_db(Turn::clockwise_deg(off_deg)), -deepest_db);
  };
  // Both margins count from the same required power, so noise is 0 dB here, and the other one's
  // power is its margin and the required carrier-to-noise ratio of 15.19 dB above that.
  const double wanted_db = *w.margin_db + response_db(30.0 - heading_deg);
  const double other_db = *o.margin_db + response_db(90.0 - heading_deg) + 15.0;
  auto field = o.deviations;
  field.noise_db = field.heading_db = field.logbook_db = 0.0;
  double mean = 0.0, weights = 0.0;
  for (int i = -500; i <= 500; ++i) {
    const double deviate = 0.01 * i, weight = std::exp(-0.5 * deviate * deviate);
    const double needed_db =
        10.0 * std::log10(1.0 + std::pow(10.0, (other_db + deviate * field.total_db()) / 10.0));
    mean += weight * phi((wanted_db - needed_db) / w.deviations.total_db());
    weights += weight;
  }
  return 100.0 * mean / weights;
}

}  // namespace

TEST_CASE("null aim: two stations on one channel, by hand") {
  const gear::Pattern pattern = beam_with_null();
  const Survey survey = weighed(test::with_pattern(pattern, 2.0), {kWanted, kOther});
  const auto curves = reception::chance_curves(survey);
  const auto found = null_aim(survey, curves, 0);
  REQUIRE(found);
  CHECK(found->interferer == 1);
  // The null is 80 degrees off the axis and the other one is at 90, so the axis goes to 10.
  CHECK((found->heading - Bearing<True>::degrees(90.0 - kNull_deg)).size_deg() < 4.0);
  CHECK(found->null.depth_db == Approx(20.0));
  const double straight = by_hand_percent(30.0, pattern, 20.0);
  const double there = by_hand_percent(found->heading.degrees(), pattern, 20.0);
  CHECK(there - straight > 20.0);
  CHECK(found->gain_percent == Approx(there - straight).margin(2.5));
  CHECK(found->chance_percent == Approx(there).margin(2.5));
  // As deep as the table has it, it would bring noticeably more than the forecast says.
  CHECK(by_hand_percent(found->heading.degrees(), pattern, 60.0) > found->chance_percent + 4.0);
}

TEST_CASE("null aim: what comes in straight but not at the null is lost") {
  const gear::Pattern pattern = beam_with_null();
  // Far to the right, just strong enough with the axis on 30 degrees.
  const Survey survey = weighed(test::with_pattern(pattern, 2.0),
                                {kWanted, kOther, test::named_station("QLSE", 40e3, 60.0, 30, 1.1),
                                 test::named_station("QBIG", 10e3, 60.0, 34, 500.0)});
  const auto curves = reception::chance_curves(survey);
  const auto found = null_aim(survey, curves, 0);
  REQUIRE(found);
  REQUIRE(curves[2]->percent_at(Bearing<True>::degrees(30.0)) >= kUsualFloor_percent);
  REQUIRE(curves[2]->percent_at(found->heading) < kUsualFloor_percent);
  CHECK(found->loses == std::vector<std::size_t>{2});
}

TEST_CASE("null aim: only with a measured pattern, and only if one can hit the null") {
  // The typical two-faced antenna has ends, but nobody measured them.
  const Survey typical =
      weighed(test::with_pattern(gear::Pattern::bidirectional(70.0, 25.0), 4.0), {kWanted, kOther});
  const auto of_typical = reception::chance_curves(typical);
  REQUIRE(of_typical[0]->avoided());
  CHECK_FALSE(null_aim(typical, of_typical, 0));
  // The null is about 20 degrees wide.
  for (const double error_deg : {2.0, 6.0}) {
    const Survey survey =
        weighed(test::with_pattern(beam_with_null(), error_deg), {kWanted, kOther});
    CHECK(null_aim(survey, reception::chance_curves(survey), 0));
  }
  const Survey wide = weighed(test::with_pattern(beam_with_null(), 15.0), {kWanted, kOther});
  CHECK_FALSE(null_aim(wide, reception::chance_curves(wide), 0));
}

TEST_CASE("null aim: nothing to turn from without an interferer, or with a weak one") {
  const Survey alone = weighed(test::with_pattern(beam_with_null(), 2.0), {kWanted});
  CHECK_FALSE(null_aim(alone, reception::chance_curves(alone), 0));
  const Survey weak = weighed(test::with_pattern(beam_with_null(), 2.0),
                              {kWanted, test::named_station("QLOW", 90e3, 90.0, 20, 0.01)});
  CHECK_FALSE(null_aim(weak, reception::chance_curves(weak), 0));
}

}  // namespace mastwise
