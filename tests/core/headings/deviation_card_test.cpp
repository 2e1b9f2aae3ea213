#include "core/headings/deviation_card.hpp"

#include "tests/support/dice.hpp"
#include "tests/support/rig_iron.hpp"

#include <array>
#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;
using test::Dice;
using test::RigIron;

namespace {

constexpr double kCardField_nt = 20000.0, kCardDown_nt = 48000.0;
const UtcTime kCardDay = std::chrono::sys_days{std::chrono::year{2027} / 6 / 15};

DrivenStretch stretch(double read_deg, double deviation_deg, double sigma_deg = 1.0) {
  return {.read = Bearing<Magnetic>::degrees(read_deg),
          .deviation_deg = deviation_deg,
          .sigma_deg = sigma_deg,
          .horizontal_nt = kCardField_nt,
          .at = kCardDay};
}

// Stretches of driving in these magnetic directions, with noise.
std::vector<DrivenStretch> drive(const RigIron& iron, const std::vector<double>& courses_deg,
                                 double noise_deg, Dice& dice) {
  std::vector<DrivenStretch> driven;
  for (const double course_deg : courses_deg) {
    const double read_deg =
        iron.reads_deg(course_deg, kCardField_nt, kCardDown_nt) + noise_deg * dice.normal();
    driven.push_back(stretch(read_deg, fold_half_circle_deg(course_deg - read_deg)));
  }
  return driven;
}

std::vector<double> all_round(int count, double from_deg = 0.0) {
  std::vector<double> courses;
  for (int i = 0; i < count; ++i) courses.push_back(from_deg + 360.0 / count * i);
  return courses;
}

}  // namespace

// NGA, Handbook of Magnetic Compass Adjustment (2004, formerly Pub. 226), section 501: the
// deviations of figure 501 on eight headings. Its approximate coefficients are means of some of
// them: A of all eight, B of east and west, C of north and south, D of the four quadrants, E of the
// cardinal ones. The fit uses all eight for each, so B and C differ by hundredths.
TEST_CASE("the coefficients are those of the handbook's worked example", "[aim]") {
  constexpr std::array kDeviations_deg{10.5, 20.0, 11.5, -1.2, -5.5, -8.0, -12.5, -6.8};
  std::vector<DrivenStretch> swung;
  for (std::size_t i = 0; i < kDeviations_deg.size(); ++i) {
    swung.push_back(stretch(45.0 * static_cast<double>(i), kDeviations_deg[i]));
  }
  const auto card = fit_deviation(swung);
  REQUIRE(card);
  CHECK(card->terms_deg[0] == Approx(1.0).margin(1e-9));
  CHECK(card->terms_deg[1] == Approx(12.0).margin(0.1));
  CHECK(card->terms_deg[2] == Approx(8.0).margin(0.1));
  CHECK(card->terms_deg[3] == Approx(5.0).margin(1e-9));
  CHECK(card->terms_deg[4] == Approx(1.5).margin(1e-9));
  CHECK(card->eighths_seen() == 8);
  for (std::size_t i = 0; i < kDeviations_deg.size(); ++i) {
    const auto read = Bearing<Magnetic>::degrees(45.0 * static_cast<double>(i));
    CHECK(card->deviation(read).clockwise_deg() == Approx(kDeviations_deg[i]).margin(0.5));
  }
}

// Foreign to the formula: the sensor's reading follows from the field of the rig's iron.
TEST_CASE("the stated error of a card is the error that it has", "[aim]") {
  Dice dice(7);
  int within_one = 0, within_two = 0, all = 0;
  double worst_deg = 0.0;
  for (int rig = 0; rig < 200; ++rig) {
    const RigIron iron = RigIron::any(dice);
    std::vector<double> courses;
    for (int i = 0; i < 24; ++i) courses.push_back(dice.between(0.0, 360.0));
    const auto card = fit_deviation(drive(iron, courses, 1.0, dice));
    REQUIRE(card);
    if (state_of(card, kCardField_nt, kCardDay) != CardState::holds) continue;
    for (int course_deg = 0; course_deg < 360; course_deg += 45) {
      const double read_deg = iron.reads_deg(course_deg, kCardField_nt, kCardDown_nt);
      const auto read = Bearing<Magnetic>::degrees(read_deg);
      const double off_deg =
          fold_half_circle_deg(read_deg + card->deviation(read).clockwise_deg() - course_deg);
      const double sigma_deg = deviation_sigma_deg(*card, read, kCardField_nt, kCardDay);
      ++all;
      within_one += std::fabs(off_deg) <= sigma_deg ? 1 : 0;
      within_two += std::fabs(off_deg) <= 2.0 * sigma_deg ? 1 : 0;
      worst_deg = std::max(worst_deg, std::fabs(off_deg));
    }
  }
  const double one = 100.0 * within_one / all, two = 100.0 * within_two / all;
  INFO(all << " headings: " << one << " % within one sigma, " << two << " % within two; worst "
           << worst_deg);
  REQUIRE(all > 1000);
  // 68.3 and 95.4 % of normal errors; the covariance never shrinks, so it may cover more.
  CHECK(one > 66.0);
  CHECK(one < 82.0);
  CHECK(two > 94.0);
  CHECK(two < 99.5);
}

TEST_CASE("a card corrects nothing until the sensor has seen enough of the circle", "[aim]") {
  Dice dice(3);
  const RigIron iron = RigIron::any(dice);
  const auto north = Bearing<Magnetic>::degrees(0.0);
  CHECK(state_of(std::nullopt, kCardField_nt, kCardDay) == CardState::learning);
  // A highway, there and back.
  const auto highway =
      fit_deviation(drive(iron, {40, 41, 42, 43, 39, 38, 220, 221, 222, 223, 219, 218}, 0.5, dice));
  CHECK(state_of(highway, kCardField_nt, kCardDay) == CardState::learning);
  CHECK_FALSE(deviation_at(highway, north, kCardField_nt, kCardDay));
  // Half of the circle, many times.
  std::vector<double> half;
  for (int i = 0; i < 40; ++i) half.push_back(4.5 * i);
  CHECK(state_of(fit_deviation(drive(iron, half, 0.5, dice)), kCardField_nt, kCardDay) ==
        CardState::learning);
  const auto card = fit_deviation(drive(iron, all_round(16), 0.5, dice));
  CHECK(state_of(card, kCardField_nt, kCardDay) == CardState::holds);
  REQUIRE(deviation_at(card, north, kCardField_nt, kCardDay));
  CHECK(deviation_at(card, north, kCardField_nt, kCardDay)->sigma_deg < 1.0);
}

TEST_CASE("a card stops holding where the earth's field differs and when it is old", "[aim]") {
  Dice dice(11);
  const RigIron iron{.along_nt = 3000.0, .across_nt = -2000.0};
  const auto card = fit_deviation(drive(iron, all_round(24), 0.5, dice));
  REQUIRE(state_of(card, kCardField_nt, kCardDay) == CardState::holds);
  const auto read = Bearing<Magnetic>::degrees(70.0);
  CHECK(deviation_sigma_deg(*card, read, 18000.0, kCardDay) >
        deviation_sigma_deg(*card, read, kCardField_nt, kCardDay));
  CHECK(state_of(card, 18000.0, kCardDay) == CardState::holds);
  CHECK(state_of(card, 12000.0, kCardDay) == CardState::too_far);
  CHECK(state_of(card, kCardField_nt, kCardDay + std::chrono::days(180)) == CardState::holds);
  CHECK(state_of(card, kCardField_nt, kCardDay + std::chrono::days(500)) == CardState::too_old);
  // What the rig's own magnetism turns the needle by where the field is weaker, by its physics, is
  // within two sigmas of what the card says there.
  for (int course_deg = 0; course_deg < 360; course_deg += 30) {
    const double read_deg = iron.reads_deg(course_deg, 17000.0, kCardDown_nt);
    const auto here = Bearing<Magnetic>::degrees(read_deg);
    const double off_deg =
        fold_half_circle_deg(read_deg + card->deviation(here).clockwise_deg() - course_deg);
    CHECK(std::fabs(off_deg) < 2.0 * deviation_sigma_deg(*card, here, 17000.0, kCardDay));
  }
}

TEST_CASE("iron that moved throws the old stretches away", "[aim]") {
  Dice dice(5);
  const RigIron before{.along_nt = 2500.0};
  const RigIron after{.along_nt = -2500.0, .across_nt = 3000.0};
  std::vector<DrivenStretch> kept;
  for (int lap = 0; lap < 3; ++lap) {
    for (const DrivenStretch& one : drive(before, all_round(12, 7.0 * lap), 0.7, dice)) {
      CHECK_FALSE(add_stretch(kept, one));
    }
  }
  CHECK(kept.size() == 36);
  int noticed = 0;
  for (const DrivenStretch& one : drive(after, all_round(16), 0.7, dice)) {
    if (!add_stretch(kept, one)) continue;
    ++noticed;
    CHECK(kept.size() == kChangedStretches);
    CHECK(state_of(fit_deviation(kept), kCardField_nt, kCardDay) == CardState::learning);
  }
  CHECK(noticed == 1);
  const auto card = fit_deviation(kept);
  REQUIRE(state_of(card, kCardField_nt, kCardDay) == CardState::holds);
  const double read_deg = after.reads_deg(100.0, kCardField_nt, kCardDown_nt);
  const auto read = Bearing<Magnetic>::degrees(read_deg);
  CHECK((read + card->deviation(read)).degrees() == Approx(100.0).margin(2.0));
}

TEST_CASE("one stretch beside steel does not bend the card", "[aim]") {
  Dice dice(9);
  const RigIron iron{.along_nt = 1500.0, .across_nt = 1000.0};
  auto driven = drive(iron, all_round(24), 0.5, dice);
  const auto clean = fit_deviation(driven);
  driven[5].deviation_deg += 25.0;
  const auto card = fit_deviation(driven);
  REQUIRE(clean);
  REQUIRE(card);
  CHECK(card->left_out == 1);
  for (std::size_t i = 0; i < DeviationCard::kTerms; ++i) {
    CHECK(card->terms_deg[i] == Approx(clean->terms_deg[i]).margin(0.4));
  }
}

TEST_CASE("a sensor mounted backward has its half turn in the card", "[aim]") {
  Dice dice(2);
  const RigIron iron{.along_nt = 1500.0, .mounted_deg = 178.0};
  const auto card = fit_deviation(drive(iron, all_round(24), 0.5, dice));
  REQUIRE(state_of(card, kCardField_nt, kCardDay) == CardState::holds);
  const double read_deg = iron.reads_deg(100.0, kCardField_nt, kCardDown_nt);
  const auto read = Bearing<Magnetic>::degrees(read_deg);
  CHECK((read + card->deviation(read)).degrees() == Approx(100.0).margin(1.0));
}

TEST_CASE("many stretches of one road do not crowd out the rest of the circle", "[aim]") {
  std::vector<DrivenStretch> kept;
  add_stretch(kept, stretch(200.0, 3.0));
  for (int i = 0; i < 100; ++i) add_stretch(kept, stretch(40.0, 0.01 * i));
  REQUIRE(kept.size() == 1 + kStretchesPerSector);
  CHECK(kept.front().read.degrees() == Approx(200.0));
  CHECK(kept.back().deviation_deg == Approx(0.99));
}
