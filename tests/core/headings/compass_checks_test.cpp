#include "core/headings/compass_checks.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

Bearing<Magnetic> magnetic(double degrees) {
  return Bearing<Magnetic>::degrees(degrees);
}
Bearing<True> north_up(double degrees) {
  return Bearing<True>::degrees(degrees);
}

}  // namespace

// Common practice, no source: reciprocal bearings agree to 180 degrees within 2.
TEST_CASE("reciprocal bearings show iron at one of two spots", "[ways]") {
  CHECK(check_reciprocal(magnetic(40.0), magnetic(222.0)).agree);
  CHECK(check_reciprocal(magnetic(181.0), magnetic(359.5)).agree);

  // The spots are 40 and 220 apart by an undisturbed needle. A deviation of 7 degrees east at the
  // first turns its card: it reads 33.
  const ReciprocalCheck first = check_reciprocal(magnetic(33.0), magnetic(220.0));
  CHECK_FALSE(first.agree);
  REQUIRE(first.deviation_if_at_first);
  CHECK(first.deviation_if_at_first->clockwise_deg() == Approx(7.0));
  CHECK(first.disagreement.size_deg() == Approx(7.0));
  // The same at the second: it reads 213.
  const ReciprocalCheck second = check_reciprocal(magnetic(40.0), magnetic(213.0));
  REQUIRE(second.deviation_if_at_second);
  CHECK(second.deviation_if_at_second->clockwise_deg() == Approx(7.0));
}

// The conditional variance of the first of two independent normal deviations of 10 degrees, given
// their difference within a reading of 3: 100 - 10,000 / 218.
TEST_CASE("reciprocal bearings that agree prove no more than that the spots are alike", "[ways]") {
  CHECK(deviation_after_reciprocal_deg(10.0, 3.0) == Approx(std::sqrt(100.0 - 1e4 / 218.0)));
  // With perfect readings half of the variance stays: both may be pulled alike.
  CHECK(deviation_after_reciprocal_deg(10.0, 1e-6) == Approx(10.0 / std::sqrt(2.0)));
  // They tell nothing of a deviation far below what can be read.
  CHECK(deviation_after_reciprocal_deg(0.5, 3.0) == Approx(0.5).epsilon(0.01));
}

TEST_CASE("a check grows old with hours and with distance", "[ways]") {
  CHECK(check_age_sigma_deg(0.0, 0.0) == 0.0);
  CHECK(check_age_sigma_deg(4.0, 0.0) == Approx(1.0));
  CHECK(check_age_sigma_deg(0.0, 200.0) == Approx(2.0));
  CHECK(check_age_sigma_deg(12.0, 100.0) == Approx(std::hypot(3.0, 1.0)));
}

TEST_CASE("two estimates together are better than each", "[ways]") {
  CHECK(joint_sigma_deg(3.0, 4.0) == Approx(2.4));
  CHECK(joint_sigma_deg(1.0, 1.0) == Approx(std::sqrt(0.5)));
}

// Field-manual tradition, common practice, no source.
TEST_CASE("a compass keeps its distances from iron", "[ways]") {
  const auto list = keep_away_distances();
  REQUIRE(list.size() == 3);
  CHECK(list[0].from == NeedlePull::vehicle);
  CHECK(list[1].from == NeedlePull::wire_fence);
  CHECK(list[2].from == NeedlePull::power_line);
  CHECK(list[0].least_m == 5.0);
  CHECK(list[0].better_m == 18.0);
  CHECK(list[1].least_m == 10.0);
  CHECK(list[2].least_m == 55.0);
  CHECK(std::is_sorted(list.begin(), list.end(),
                       [](auto& a, auto& b) { return a.least_m < b.least_m; }));
  for (const KeepAway& each : list) CHECK(each.source.find("no source") != std::string_view::npos);
}

// 3 (+) 4 = 5 degrees.
TEST_CASE("two methods are judged by the error of their difference", "[ways]") {
  const auto verdict = [](double apart_deg) {
    const auto agreement = compare_headings(north_up(358.0), 3.0, north_up(358.0 + apart_deg), 4.0);
    REQUIRE(agreement);
    CHECK(agreement->sigma_deg == Approx(5.0));
    CHECK(agreement->difference.clockwise_deg() == Approx(apart_deg));
    return agreement->verdict;
  };
  CHECK(verdict(4.9) == Verdict::agree);
  CHECK(verdict(-5.1) == Verdict::agree_poorly);
  CHECK(verdict(9.9) == Verdict::agree_poorly);
  CHECK(verdict(-10.1) == Verdict::in_doubt);
  CHECK(verdict(14.9) == Verdict::in_doubt);
  CHECK(verdict(15.1) == Verdict::one_is_wrong);
  CHECK_FALSE(compare_headings(north_up(0.0), 0.0, north_up(1.0), 0.0));
  CHECK_FALSE(compare_headings(north_up(0.0), -1.0, north_up(1.0), 2.0));
}

// Worked by hand as published with the rule magnetic = true - D: D 10 east, true 90 is magnetic 80;
// D 10 west gives 100; a wrong sign of D 15 is 30 degrees off.
TEST_CASE("the classic mistakes with north have their published errors", "[ways]") {
  const NorthMistakes east = north_mistakes(north_up(90.0), Declination::east_deg(10.0));
  CHECK(east.map_north_as_magnetic.needle.degrees() == Approx(90.0));
  CHECK(east.map_north_as_magnetic.aims_at.degrees() == Approx(100.0));
  CHECK(east.map_north_as_magnetic.off.clockwise_deg() == Approx(10.0));
  CHECK(east.map_north_as_magnetic.kind == NorthMistakeKind::map_north_as_magnetic);
  CHECK(east.map_north_as_magnetic.heading.degrees() == Approx(90.0));
  CHECK(east.map_north_as_magnetic.magnetic.degrees() == Approx(80.0));
  // A compass with D set shows true: 80 on it is true 80.
  CHECK(east.declination_twice.aims_at.degrees() == Approx(80.0));
  CHECK(east.declination_twice.needle.degrees() == Approx(70.0));

  const NorthMistakes west = north_mistakes(north_up(90.0), Declination::east_deg(-10.0));
  CHECK(west.map_north_as_magnetic.off.clockwise_deg() == Approx(-10.0));
  CHECK(west.map_north_as_magnetic.magnetic.degrees() == Approx(100.0));

  const NorthMistakes strong = north_mistakes(north_up(37.0), Declination::east_deg(15.0));
  CHECK(strong.wrong_sign.off.size_deg() == Approx(30.0));
  CHECK(strong.wrong_sign.needle.degrees() == Approx(52.0));
  CHECK(strong.wrong_sign.aims_at.degrees() == Approx(67.0));
}
