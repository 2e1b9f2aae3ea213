#include "core/sweep/sweep.hpp"

#include "core/sweep/sweep_data.hpp"
#include "core/sweep/sweep_lanes.hpp"
#include "core/sweep/sweep_table.hpp"
#include "tests/support/sweeps.hpp"

#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise;
using aim::Reading;
using aim::Scale;
using aim::SweepFitter;

namespace {

Bearing<Dial> dial_at(double degrees) {
  return Bearing<Dial>::degrees(degrees);
}

const gear::Pattern& sixty() {
  static const gear::Pattern pattern = gear::Pattern::directional(60.0, 13.0);
  return pattern;
}

SweepFitter fitter(const gear::Pattern& pattern) {
  auto made = SweepFitter::for_pattern(pattern);
  REQUIRE(made);
  return *made;
}

aim::SweepFit fitted(const gear::Pattern& pattern, const std::vector<Reading>& readings,
                     const aim::SweepOptions& options) {
  const auto fit = fitter(pattern).fit(readings, options);
  if (!fit) FAIL(fit.error().message());
  return *fit;
}

// Readings of a noiseless meter with -40 dB at the peak.
std::vector<Reading> exact(const gear::Pattern& pattern, double peak_deg,
                           const std::vector<double>& headings_deg) {
  std::vector<Reading> readings;
  for (const double heading : headings_deg) {
    const Turn off = dial_at(heading) - dial_at(peak_deg);
    readings.push_back({.heading = dial_at(heading), .value = -40.0 + pattern.relative_db(off)});
  }
  return readings;
}

constexpr aim::SweepOptions kDecibels{.scale = Scale::decibel};

}  // namespace

// By hand: the response of a beam is even about its axis, so that readings which mirror each other
// about a heading can only put the peak there.
TEST_CASE("mirrored readings put the peak in their middle", "[sweep]") {
  for (const double middle : {0.0, 1.0, 77.25, 180.0, 359.5}) {
    const std::vector<Reading> three{{.heading = dial_at(middle - 30.0), .value = -43.0},
                                     {.heading = dial_at(middle), .value = -40.0},
                                     {.heading = dial_at(middle + 30.0), .value = -43.0}};
    const auto fit = fitted(sixty(), three, kDecibels);
    CHECK((fit.peak - dial_at(middle)).size_deg() < 0.1);
    CHECK_FALSE(fit.second_lobe);
    const std::vector<Reading> two{three.front(), three.back()};
    CHECK((fitted(sixty(), two, kDecibels).peak - dial_at(middle)).size_deg() < 0.3);
    CHECK(fitted(sixty(), two, kDecibels).sigma_deg > fit.sigma_deg);
  }
}

TEST_CASE("noiseless readings give the peak anywhere between them", "[sweep]") {
  for (const double peak : {10.0, 100.4, 255.7, 355.0}) {
    const std::vector<double> headings{peak - 47.0, peak - 32.0, peak - 17.0, peak - 2.0,
                                       peak + 13.0, peak + 28.0, peak + 43.0};
    const auto readings = exact(sixty(), peak, headings);
    const auto fit = fitted(sixty(), readings, {.scale = Scale::decibel, .noise = 0.2});
    CHECK((fit.peak - dial_at(peak)).size_deg() < 0.3);
    CHECK(fit.error95_deg < 2.0);
    CHECK(fit.enough);
    CHECK(fit.more_headings == 0);
    // The frame does not matter: turned by a third of the circle and a bit, so is the peak.
    auto turned = readings;
    for (Reading& reading : turned) reading.heading = reading.heading + Turn::clockwise_deg(121.3);
    const auto again = fitted(sixty(), turned, {.scale = Scale::decibel, .noise = 0.2});
    CHECK((again.peak - fit.peak).clockwise_deg() == Approx(121.3).margin(0.1));
  }
}

TEST_CASE("a reading at the end of the scale means that much or more", "[sweep]") {
  // Half the beam drives the meter to its end. As readings of 100 they would look like a flat top;
  // as "100 or more" the flanks decide, and even flanks give the middle.
  std::vector<Reading> readings;
  for (const double off : {-50.0, -40.0, -20.0, -10.0, 0.0, 10.0, 20.0, 40.0, 50.0}) {
    const double value = 115.0 + 4.0 * sixty().relative_db(Turn::clockwise_deg(off));
    readings.push_back({.heading = dial_at(200.0 + off), .value = std::min(value, 100.0)});
  }
  const auto even = fitted(sixty(), readings, {});
  CHECK((even.peak - dial_at(200.0)).size_deg() < 0.5);
  CHECK(even.error95_deg < 12.0);
  // Without the left flank the peak is somewhere under the flat top, and the error grows.
  const std::vector<Reading> right(readings.begin() + 3, readings.end());
  const auto lopsided = fitted(sixty(), right, {});
  CHECK(lopsided.error95_deg > 1.3 * even.error95_deg);
  CHECK((lopsided.peak - dial_at(200.0)).size_deg() <= lopsided.error95_deg);
}

TEST_CASE("no lock to one side is knowledge", "[sweep]") {
  const std::vector<Reading> locked{{.heading = dial_at(90.0), .value = 55.0},
                                    {.heading = dial_at(105.0), .value = 58.0}};
  std::vector<Reading> with_nothing = locked;
  for (const double heading : {45.0, 60.0, 135.0, 150.0}) {
    with_nothing.push_back({.heading = dial_at(heading), .value = std::nullopt});
  }
  const auto without = fitted(sixty(), locked, {});
  const auto with = fitted(sixty(), with_nothing, {});
  CHECK(with.sigma_deg < 0.7 * without.sigma_deg);
  CHECK((with.peak - dial_at(97.5)).size_deg() < 4.0);
}

TEST_CASE("a reading without waiting has less weight", "[sweep]") {
  auto readings = exact(sixty(), 40.0, {0.0, 15.0, 30.0, 45.0, 60.0, 75.0});
  *readings[5].value += 6.0;
  const auto waited = fitted(sixty(), readings, kDecibels);
  readings[5].waiting = milliseconds(1000);
  const auto hurried = fitted(sixty(), readings, kDecibels);
  CHECK((hurried.peak - dial_at(40.0)).size_deg() < (waited.peak - dial_at(40.0)).size_deg());
}

TEST_CASE("a strong reflection is reported with heading and level", "[sweep]") {
  // Power sum by hand: the station at 100, its reflection 7 dB below at 170.
  const auto narrow = gear::Pattern::directional(30.0, 17.0);
  std::vector<Reading> readings;
  for (double heading = 50.0; heading <= 210.0; heading += 10.0) {
    const auto power = [&](double off) {
      return std::pow(10.0, narrow.relative_db(Turn::clockwise_deg(off)) / 10.0);
    };
    const double sum = power(heading - 100.0) + std::pow(10.0, -0.7) * power(heading - 170.0);
    readings.push_back({.heading = dial_at(heading), .value = -50.0 + 10.0 * std::log10(sum)});
  }
  const auto fit = fitted(narrow, readings, {.scale = Scale::decibel, .noise = 1.0});
  CHECK((fit.peak - dial_at(100.0)).size_deg() < 1.0);
  REQUIRE(fit.second_lobe);
  CHECK((fit.second_lobe->heading - dial_at(170.0)).size_deg() < 6.0);
  CHECK(fit.second_lobe->relative_db == Approx(-7.0).margin(1.5));
  CHECK(fit.second_lobe->probability > 0.9);
}

TEST_CASE("an antenna of two faces has two peaks", "[sweep]") {
  const auto faces = gear::Pattern::bidirectional(80.0, 17.0);
  const auto fit =
      fitted(faces, exact(faces, 20.0, {-40.0, -20.0, 0.0, 20.0, 40.0, 60.0, 80.0}), kDecibels);
  CHECK((fit.peak - dial_at(20.0)).size_deg() < 1.0);  // the face that the sweep was about
  REQUIRE(fit.other_face);
  CHECK((*fit.other_face - dial_at(200.0)).size_deg() < 1.0);
  const auto one_face =
      fitted(sixty(), exact(sixty(), 20.0, {-40.0, -20.0, 0.0, 20.0, 40.0, 60.0}), kDecibels);
  CHECK_FALSE(one_face.other_face);
}

TEST_CASE("coarse bars give a larger error", "[sweep]") {
  std::vector<Reading> bars, quality;
  for (const double off : {-45.0, -30.0, -15.0, 0.0, 15.0, 30.0, 45.0}) {
    const double db = sixty().relative_db(Turn::clockwise_deg(off));
    bars.push_back({.heading = dial_at(300.0 + off), .value = std::round(4.0 + 0.2 * db)});
    quality.push_back({.heading = dial_at(300.0 + off), .value = 80.0 + 4.0 * db});
  }
  const auto coarse = fitted(sixty(), bars, {.scale = Scale::bars_of_5});
  CHECK((coarse.peak - dial_at(300.0)).size_deg() < 1.0);
  CHECK(coarse.error95_deg > fitted(sixty(), quality, {}).error95_deg);
}

TEST_CASE("a sweep without a result is refused with a remedy", "[sweep]") {
  const auto round = SweepFitter::for_pattern(gear::Pattern::omnidirectional());
  REQUIRE_FALSE(round);
  CHECK(round.error().what.find("alike") != std::string::npos);
  const auto fit = fitter(sixty());
  const Reading good{.heading = dial_at(10.0), .value = 50.0};
  const Reading other{.heading = dial_at(30.0), .value = 60.0};
  const auto refused = [&](const std::vector<Reading>& readings, aim::SweepOptions options = {}) {
    const auto result = fit.fit(readings, options);
    REQUIRE_FALSE(result);
    CHECK_FALSE(result.error().remedy.empty());
    CHECK_FALSE(fit.next_heading(readings, options));
    return result.error().message();
  };
  CHECK(refused({}).find("no heading has a reading") != std::string::npos);
  CHECK(refused({{.heading = dial_at(1.0), .value = {}}}).find("no heading has a reading") !=
        std::string::npos);
  CHECK(refused({good, good}).find("one heading") != std::string::npos);
  CHECK(refused({good, {.heading = dial_at(20.0), .value = 101.0}}).find("reading 2") == 0);
  CHECK(refused({good, {.heading = dial_at(20.0), .value = std::nan("")}}).find("reading 2") == 0);
  // 2026-11-25, found by the fuzzer: decibels beyond all measure left no number anywhere.
  CHECK(refused({good, {.heading = dial_at(20.0), .value = 1e11}}, kDecibels).find("reading 2") ==
        0);
  CHECK(refused({good, other}, {.noise = 0.0}).find("noise of a meter") != std::string::npos);
}

TEST_CASE("the next heading is the most informative one", "[sweep]") {
  // Only the left flank was read: another reading there helps less than one past the peak.
  const auto fit = fitter(sixty());
  const auto flank = exact(sixty(), 100.0, {45.0, 60.0, 75.0});
  const auto next = fit.next_heading(flank, kDecibels);
  REQUIRE(next);
  CHECK((*next - dial_at(75.0)).clockwise_deg() > 15.0);
  for (const Reading& reading : flank) CHECK((reading.heading - *next).size_deg() >= 4.0);

  // On average, following it leaves less doubt than repeating a reading.
  test::Chance chance(7);
  double followed = 0.0, repeated = 0.0;
  for (int sweep = 0; sweep < 60; ++sweep) {
    const double peak = chance.uniform(0.0, 360.0);
    const auto show = [&](double heading) {
      const Turn off = dial_at(heading) - dial_at(peak);
      return Reading{.heading = dial_at(heading),
                     .value = -40.0 + sixty().relative_db(off) + 1.5 * chance.normal()};
    };
    const std::vector<Reading> begun{show(peak - 55.0), show(peak - 40.0), show(peak - 25.0)};
    const auto best = fit.next_heading(begun, kDecibels);
    REQUIRE(best);
    const auto doubt = [&](double heading) {
      auto readings = begun;
      readings.push_back(show(heading));
      return fitted(sixty(), readings, kDecibels).sigma_deg;
    };
    followed += doubt(best->degrees());
    repeated += doubt(peak - 40.0);
  }
  INFO(followed / 60.0 << " against " << repeated / 60.0);
  CHECK(followed < 0.85 * repeated);
}

TEST_CASE("too few readings are reported", "[sweep]") {
  const auto fit = fitted(sixty(), exact(sixty(), 100.0, {60.0, 75.0}), kDecibels);
  CHECK_FALSE(fit.enough);
  CHECK(fit.more_headings >= 1);
  CHECK(fit.more_headings <= 6);
}

TEST_CASE("the vector functions equal the library's", "[sweep]") {
  for (float value = 1e-6F; value < 1e7F; value *= 1.37F) {
    CHECK(aim::lane_log(value) == Approx(std::log(value)).margin(2e-6).epsilon(1e-6));
    CHECK(aim::lane_inverse_root(value) == Approx(1.0F / std::sqrt(value)).epsilon(1e-5));
  }
  for (float x = -39.0F; x < 20.0F; x += 0.37F) {
    CHECK(aim::lane_exp(x) == Approx(std::exp(x)).epsilon(2e-5));
  }
  // Abramowitz and Stegun, table 26.1: P(0) 0.5, P(1) 0.841344746, P(-3) 0.001349898.
  const auto& normal = aim::LogNormal::table();
  CHECK(normal.at(0.0F).logarithm == Approx(std::log(0.5)).margin(1e-5));
  CHECK(normal.at(1.01F - 0.01F).logarithm == Approx(std::log(0.841344746)).margin(1e-4));
  CHECK(normal.at(-3.0F).logarithm == Approx(std::log(0.001349898)).margin(1e-4));
}

TEST_CASE("a sweep's table may have gaps", "[sweep]") {
  const auto read = aim::read_sweep(
      "\xEF\xBB\xBF# PRACTICE\nReading,Heading_deg,waiting_s\r\n"
      "55,10,4\r\n-,25.5,\r\nnothing,40,2\r\n,355\r\n");
  REQUIRE(read);
  REQUIRE(read->size() == 4);
  CHECK((*read)[0] == Reading{dial_at(10.0), 55.0, milliseconds(4000)});
  CHECK((*read)[1] == Reading{dial_at(25.5), std::nullopt, std::nullopt});
  CHECK((*read)[2] == Reading{dial_at(40.0), std::nullopt, milliseconds(2000)});
  CHECK((*read)[3] == Reading{dial_at(355.0), std::nullopt, std::nullopt});
  const auto comma = aim::read_sweep("heading_deg;reading\n10,5;-61,5\n");
  REQUIRE(comma);
  CHECK(comma->front() == Reading{dial_at(10.5), -61.5, std::nullopt});
}

TEST_CASE("a sweep's table is refused with line and remedy", "[sweep]") {
  const auto refusal = [](const std::string& text) {
    const auto read = aim::read_sweep(text);
    REQUIRE_FALSE(read);
    CHECK_FALSE(read.error().remedy.empty());
    return read.error().message();
  };
  CHECK(refusal("").find("no readings") != std::string::npos);
  CHECK(refusal("10,50\n20,60\n").find("line 1: the column \"heading_deg\" is missing") == 0);
  CHECK(refusal("heading_deg,quality\n").find("line 1: the column \"reading\"") == 0);
  CHECK(refusal("heading_deg,reading,reading\n")
            .find("line 1: the column \"reading\" appears twice") == 0);
  CHECK(refusal("heading_deg,reading\n10,50\n361,60\n").find("line 3: \"361\"") == 0);
  CHECK(refusal("heading_deg,reading\n10,5x\n").find("line 2: \"5x\"") == 0);
  CHECK(refusal("heading_deg,reading,waiting_s\n10,5,-1\n").find("line 2: \"-1\"") == 0);
  std::string many = "heading_deg,reading\n";
  for (int i = 0; i <= 360; ++i) many += "10,50\n";
  CHECK(refusal(many).find("line 362") == 0);
}
