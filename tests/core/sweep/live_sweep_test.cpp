#include "core/sweep/live_sweep.hpp"

#include "tests/support/turned_antenna.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise;
using aim::LiveAdvice;
using aim::LiveSweep;
using test::TurnedAntenna;

namespace {

constexpr double kPeakDeg = 142.0;
constexpr aim::SweepOptions kInDecibels{.scale = aim::Scale::decibel};

const gear::Pattern& beam() {
  static const gear::Pattern pattern = gear::Pattern::directional(60.0, 13.0);
  return pattern;
}

double level(double heading_deg, double) {
  return 30.0 + beam().relative_db(Turn::clockwise_deg(heading_deg - kPeakDeg));
}

LiveSweep live(double smoothing_s = 1.0, double delay_s = 0.0) {
  const auto ms = [](double s) { return milliseconds(static_cast<milliseconds::rep>(1000.0 * s)); };
  return LiveSweep({.scale = aim::Scale::decibel,
                    .beamwidth_deg = 60.0,
                    .timing = {.smoothing = ms(smoothing_s), .delay = ms(delay_s)}});
}

std::optional<aim::SweepFit> fit_of(const LiveSweep& sweep) {
  static const auto fitter = aim::SweepFitter::for_pattern(beam());
  const auto fit = fitter->fit(sweep.readings(), kInDecibels);
  return fit ? std::optional(*fit) : std::nullopt;
}

double off_peak_deg(const LiveSweep& sweep) {
  const auto fit = fit_of(sweep);
  REQUIRE(fit);
  return (fit->peak - Bearing<Dial>::degrees(kPeakDeg)).clockwise_deg();
}

}  // namespace

TEST_CASE("a slow turn with a slow meter finds the peak where it is", "[live]") {
  for (const double rate_dps : {2.0, 3.5, -3.5}) {
    LiveSweep sweep = live(1.2, 0.4);
    const double way = std::copysign(75.0, rate_dps);
    TurnedAntenna antenna(level, {.smoothing_s = 1.2, .delay_s = 0.4, .noise = 0.3},
                          kPeakDeg - way);
    antenna.turn(sweep, rate_dps, 150.0 / std::fabs(rate_dps));
    INFO(rate_dps << " degrees a second");
    CHECK(std::fabs(off_peak_deg(sweep)) < 1.0);
    // Without the correction it would be off by the lag's turn.
    LiveSweep unaware = live(0.25, 0.0);
    TurnedAntenna again(level, {.smoothing_s = 1.2, .delay_s = 0.4, .noise = 0.3}, kPeakDeg - way);
    again.turn(unaware, rate_dps, 150.0 / std::fabs(rate_dps));
    const double expected = rate_dps * (1.6 - 0.25);
    CHECK(off_peak_deg(unaware) == Approx(expected).margin(1.2));
  }
}

TEST_CASE("each value goes to the heading that the antenna had then", "[live]") {
  // On a straight flank of 0.2 dB a degree, a first-order lag is an exact shift.
  const auto flank = [](double heading_deg, double) { return 0.2 * (heading_deg - 100.0); };
  LiveSweep sweep = live(2.0, 0.5);
  TurnedAntenna antenna(flank, {.smoothing_s = 2.0, .delay_s = 0.5}, 100.0);
  antenna.turn(sweep, 2.0, 40.0);
  const auto readings = sweep.readings();
  REQUIRE(readings.size() >= 6);
  for (std::size_t i = 2; i < readings.size(); ++i) {  // the lag has settled
    CHECK(*readings[i].value == Approx(0.2 * (readings[i].heading.degrees() - 100.0)).margin(0.15));
  }
}

TEST_CASE("too fast for the meter is said, and what was read then is left out", "[live]") {
  LiveSweep sweep = live(1.0);
  CHECK(sweep.fastest_dps() == Approx(4.8));  // 0.08 of 60 degrees in 1 s
  TurnedAntenna antenna(level, {}, 60.0);
  antenna.turn(sweep, 3.0, 12.0);
  CHECK(sweep.hint(fit_of(sweep), antenna.now()).advice != LiveAdvice::too_fast);
  const std::size_t before = sweep.count();
  CHECK(before >= 4);
  antenna.turn(sweep, 15.0, 4.0);
  CHECK(sweep.hint(fit_of(sweep), antenna.now()).advice == LiveAdvice::too_fast);
  antenna.turn(sweep, 3.0, 3.0);
  for (const aim::Reading& reading : sweep.readings()) {
    const double at = reading.heading.degrees();
    CHECK((at < 102.0 || at > 150.0));
  }
  // A narrow beam or a slow meter allows less.
  CHECK(LiveSweep({.beamwidth_deg = 30.0}).fastest_dps() == Approx(2.4));
  CHECK(live(2.0).fastest_dps() == Approx(2.4));
}

TEST_CASE("a peak that was passed too fast is led back to", "[live]") {
  LiveSweep sweep = live();
  TurnedAntenna antenna(level, {.noise = 0.2}, kPeakDeg - 80.0);
  antenna.turn(sweep, 3.0, 21.0);  // to 17 degrees before the peak
  antenna.turn(sweep, 17.0, 2.0);  // over it
  antenna.turn(sweep, 3.0, 14.0);  // to 59 degrees behind
  const auto hint = sweep.hint(fit_of(sweep), antenna.now());
  REQUIRE(hint.advice == LiveAdvice::back);
  CHECK(antenna.heading_deg() + hint.turn.clockwise_deg() == Approx(kPeakDeg).margin(6.0));
  antenna.turn(sweep, -4.0, 21.0);
  CHECK(sweep.hint(fit_of(sweep), antenna.now()).advice == LiveAdvice::peak);
}

TEST_CASE("a peak without its other flank is not called found", "[live]") {
  LiveSweep sweep = live();
  TurnedAntenna antenna(level, {.noise = 0.2}, kPeakDeg - 80.0);
  antenna.turn(sweep, 3.0, 30.0);  // 10 degrees past the peak
  const auto hint = sweep.hint(fit_of(sweep), antenna.now());
  REQUIRE(hint.advice == LiveAdvice::go_on);
  CHECK(hint.turn.clockwise_deg() == Approx(20.0).margin(6.0));
  antenna.turn(sweep, 3.0, 12.0);
  const auto found = sweep.hint(fit_of(sweep), antenna.now());
  REQUIRE(found.advice == LiveAdvice::peak);
  CHECK(found.turn.clockwise_deg() == Approx(-46.0).margin(3.0));
}

TEST_CASE("a gust of wind costs no accuracy", "[live]") {
  // Nine decibels less for 2.2 s on the flank.
  const auto gusty = [](double heading_deg, double at_s) {
    return level(heading_deg, at_s) - (at_s > 14.0 && at_s < 16.2 ? 9.0 : 0.0);
  };
  LiveSweep sweep = live(0.5), calm = live(0.5);
  const TurnedAntenna::Habits habits{.smoothing_s = 0.5, .noise = 0.2};
  TurnedAntenna antenna(gusty, habits, kPeakDeg - 75.0), other(level, habits, kPeakDeg - 75.0);
  antenna.turn(sweep, 3.0, 50.0);
  other.turn(calm, 3.0, 50.0);
  CHECK(sweep.gusts() >= 1);
  CHECK(calm.gusts() == 0);
  CHECK(std::fabs(off_peak_deg(sweep)) < 1.5);
  CHECK(std::fabs(off_peak_deg(calm)) < 1.0);
  // A spike of a single value never reaches a reading.
  int count = 0;
  const auto spiky = [&count](double heading_deg, double at_s) {
    return level(heading_deg, at_s) + (++count % 400 == 0 ? 60.0 : 0.0);
  };
  LiveSweep spikes = live(0.0);
  TurnedAntenna third(spiky, {.smoothing_s = 0.0}, kPeakDeg - 75.0);
  third.turn(spikes, 3.0, 50.0);
  CHECK(std::fabs(off_peak_deg(spikes)) < 1.0);
}

TEST_CASE("an antenna at rest makes one reading, however long it rests", "[live]") {
  LiveSweep sweep = live();
  TurnedAntenna antenna(level, {.noise = 0.5}, kPeakDeg);
  antenna.turn(sweep, 0.0, 60.0);
  CHECK(sweep.count() == 1);
  CHECK(*sweep.readings().at(0).value == Approx(30.0).margin(0.5));
  antenna.turn(sweep, 4.0, 5.0);
  antenna.turn(sweep, 0.0, 10.0);
  CHECK(sweep.count() >= 2);
}

TEST_CASE("turning both ways takes out an unknown lag, and one way says it", "[live]") {
  // The meter says 1 s and has 1.5 s.
  const TurnedAntenna::Habits habits{.smoothing_s = 1.0, .delay_s = 0.5, .noise = 0.1};
  LiveSweep one_way = live(), both = live();
  TurnedAntenna first(level, habits, kPeakDeg - 70.0), second(level, habits, kPeakDeg - 70.0);
  first.turn(one_way, 4.0, 35.0);
  second.turn(both, 4.0, 35.0);
  second.turn(both, -4.0, 35.0);
  CHECK(off_peak_deg(one_way) == Approx(2.0).margin(0.7));
  CHECK(one_way.lag_sigma_deg() == Approx(2.0).margin(0.3));
  CHECK(std::fabs(off_peak_deg(both)) < 0.7);
  CHECK(both.lag_sigma_deg() < 0.4);
}

TEST_CASE("values without a heading near in time are not used", "[live]") {
  LiveSweep sweep = live();
  Monotonic now{};
  for (int i = 0; i < 40; ++i) {
    now += milliseconds(250);
    sweep.read(now, 20.0);
    if (i % 20 == 0) sweep.turn(now, Bearing<Dial>::degrees(10.0 + i));  // every 5 s
  }
  CHECK(sweep.count() == 0);
  CHECK(sweep.hint(std::nullopt, now).advice == LiveAdvice::begin);
}

TEST_CASE("no lock becomes a reading of nothing, and readings by hand come first", "[live]") {
  const aim::Reading typed{.heading = Bearing<Dial>::degrees(20.0), .value = 12.0};
  LiveSweep sweep({.scale = aim::Scale::decibel, .beamwidth_deg = 60.0}, {typed});
  Monotonic now{};
  for (int i = 0; i < 80; ++i) {
    now += milliseconds(250);
    sweep.turn(now, Bearing<Dial>::degrees(358.0 + 0.5 * i));  // over north
    sweep.read(now, std::nullopt);
  }
  const auto readings = sweep.readings();
  REQUIRE(readings.size() >= 3);
  CHECK(readings.front() == typed);
  for (std::size_t i = 1; i < readings.size(); ++i) CHECK_FALSE(readings[i].value);
}
