#include "core/propagation/itm/itm.hpp"
#include "core/propagation/p1812/p1812.hpp"
#include "tests/core/reception/published_curves.hpp"
#include "tests/support/reference.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iostream>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>
#include <fmt/format.h>

// Differences of both models from the regulator's curves of field strength, 47 CFR 73.699: 1 kW
// ERP, receiving antenna 30 ft above ground, terrain whose heights vary by 50 m.
namespace mastwise::reception {

namespace {

constexpr double kProfileStep_m = 100.0;
constexpr double kMean_m = 300.0;

struct Curve {
  std::string band;
  std::string file_end;
  double frequency_mhz;  // of the planning factors [FCC Sixth Report and Order App. A]
  std::array<double, 3> test::PublishedFields::*fields_dbuvm;
};

const std::vector<Curve> kCurves = {{"low VHF", "LV", 69.0, &test::PublishedFields::low_vhf},
                                    {"high VHF", "HV", 194.0, &test::PublishedFields::high_vhf},
                                    {"UHF", "U", 615.0, &test::PublishedFields::uhf}};

std::span<const test::PublishedFields> published(double time_percent) {
  return time_percent == 50.0 ? test::kF5050 : test::kF5010;
}

// Heights from the transmitter on. Rolling: hills of several lengths, their lowest and highest
// tenth 50 m apart, shifted from path to path.
std::vector<double> ground(double distance_m, bool rolling, int shift) {
  std::vector<double> heights_m;
  const auto intervals = static_cast<int>(std::lround(distance_m / kProfileStep_m));
  for (int i = 0; i <= intervals; ++i) {
    const double x_km = i * kProfileStep_m / 1000.0 + 7.3 * shift;
    const double hills_m = 17.0 * std::sin(x_km / 2.1) + 13.0 * std::sin(x_km / 0.83 + 1.0) +
                           9.0 * std::sin(x_km / 0.37 + 2.0);
    heights_m.push_back(kMean_m + (rolling ? hills_m : 0.0));
  }
  return heights_m;
}

struct ModelFields {
  double p1812_dbuvm = 0.0;
  double itm_dbuvm = 0.0;
};

ModelFields fields(const std::vector<double>& heights_m, double haat_m, double frequency_mhz,
                   double time_percent) {
  const double transmitter_m = kMean_m + haat_m - heights_m.front();
  p1812::Scratch scratch;
  const auto p1812 = p1812::loss_of({.spacing_km = kProfileStep_m / 1000.0, .heights_m = heights_m},
                                    {.frequency_mhz = frequency_mhz,
                                     .transmitter_height_m = transmitter_m,
                                     .receiver_height_m = test::kCurveReceiver_m,
                                     .path_latitude_deg = 40.0},
                                    {.time_percent = time_percent}, scratch);
  const auto path = itm::point_to_point({.frequency_mhz = frequency_mhz,
                                         .transmitter_height_m = transmitter_m,
                                         .receiver_height_m = test::kCurveReceiver_m},
                                        {kProfileStep_m, heights_m});
  REQUIRE(p1812);
  REQUIRE(path);
  const auto itm = itm::predict(*path, {}, {.time = time_percent});
  REQUIRE(itm);
  return {p1812->field_dbuvm, 199.36 + 20.0 * std::log10(frequency_mhz / 1000.0) - itm->loss_db};
}

struct Compared {
  test::Differences p1812, itm, both;
};

Compared compare(const Curve& band, bool rolling, double time_percent, double from_miles,
                 double to_miles) {
  Compared compared;
  for (const test::PublishedFields& row : published(time_percent)) {
    if (row.miles < from_miles || row.miles > to_miles) continue;
    for (std::size_t height = 0; height < test::kCurveHaat_m.size(); ++height) {
      ModelFields mean;
      const int paths = rolling ? 9 : 1;
      for (int shift = 0; shift < paths; ++shift) {
        const ModelFields one =
            fields(ground(1609.344 * row.miles, rolling, shift), test::kCurveHaat_m[height],
                   band.frequency_mhz, time_percent);
        mean.p1812_dbuvm += one.p1812_dbuvm / paths;
        mean.itm_dbuvm += one.itm_dbuvm / paths;
      }
      const double curve_dbuvm = (row.*band.fields_dbuvm)[height];
      compared.p1812.add(mean.p1812_dbuvm - curve_dbuvm);
      compared.itm.add(mean.itm_dbuvm - curve_dbuvm);
      compared.both.add((mean.p1812_dbuvm + mean.itm_dbuvm) / 2.0 - curve_dbuvm);
    }
  }
  return compared;
}

// Mean differences of P.1812 and of the terrain model, dB.
struct Told {
  double p1812;
  double itm;
};

// Measured results; three ranges of 10 to 40, 50 to 80 and 90 to 150 miles over smooth, then over
// average ground. Reasons:
// - The curves are measurements in rolling country with houses and woods. Over smooth ground both
//   models ignore those and are above the curves: little at low VHF, which bends around them, and
//   18 dB in UHF. Over hills as rough as the curves' they are still 8 to 11 dB above within 40
//   miles in UHF, because these hills have no trees or houses.
// - From 50 to 80 miles over hills the models differ: the terrain model diffracts over two rounded
//   horizons and is up to 6 dB below, P.1812 uses one edge and is above. Their mean is within 4 dB,
//   so the survey uses it.
// - Beyond 90 miles scatter carries the field. Both are within 3 dB over hills, except P.1812 at
//   low VHF, whose long waves still creep around the earth.
constexpr std::array<Told, 18> kTold50{{
    // low VHF
    {3.9, 3.6},
    {5.7, 1.9},
    {10.5, 0.3},
    {3.1, 4.5},
    {4.0, -2.1},
    {6.4, 0.0},
    // high VHF
    {7.7, 8.2},
    {6.4, 4.6},
    {5.7, 2.0},
    {3.5, 3.6},
    {3.2, -5.8},
    {1.5, -0.8},
    // UHF
    {18.2, 18.7},
    {16.0, 15.3},
    {6.7, 6.4},
    {10.6, 7.7},
    {9.6, -2.6},
    {2.3, 1.2},
}};
constexpr std::array<Told, 18> kTold10{{
    // low VHF
    {4.6, 3.0},
    {4.4, 0.5},
    {8.3, 0.5},
    {3.7, 3.7},
    {2.6, -3.9},
    {4.6, 0.2},
    // high VHF
    {8.6, 8.3},
    {6.8, 5.3},
    {4.6, 3.7},
    {4.4, 3.6},
    {3.3, -5.5},
    {1.0, 1.0},
    // UHF
    {18.6, 18.4},
    {16.9, 13.6},
    {9.2, 5.3},
    {11.0, 7.5},
    {8.1, -4.3},
    {0.5, 0.1},
}};
constexpr double kTolerance_db = 0.7;

std::string in_words(const test::Differences& d) {
  return fmt::format("{:6.1f} ({:5.1f} to {:5.1f})", d.mean_db(), d.least_db, d.most_db);
}

}  // namespace

TEST_CASE("the models stay within their measured distance of the regulator's curves") {
  std::cout << "dB over the regulator's curves, mean (least to most): P.1812, ITM, their mean\n";
  for (const double time_percent : {50.0, 10.0}) {
    auto told = time_percent == 50.0 ? kTold50.begin() : kTold10.begin();
    for (const Curve& band : kCurves) {
      for (const bool rolling : {false, true}) {
        for (const auto& [from, to] : {std::pair{10.0, 40.0}, {50.0, 80.0}, {90.0, 150.0}}) {
          const Compared found = compare(band, rolling, time_percent, from, to);
          const std::string line =
              fmt::format("  F(50,{:.0f}) {:8} {:7} {:3.0f} to {:3.0f} mi  {}  {}  {}",
                          time_percent, band.band, rolling ? "average" : "smooth", from, to,
                          in_words(found.p1812), in_words(found.itm), in_words(found.both));
          std::cout << line << "\n";
          INFO(line);
          CHECK(found.p1812.mean_db() == Approx(told->p1812).margin(kTolerance_db));
          CHECK(found.itm.mean_db() == Approx(told->itm).margin(kTolerance_db));
          if (rolling && from > 10.0) CHECK(std::fabs(found.both.mean_db()) < 4.0);
          ++told;
        }
      }
    }
  }
}

// The regulator's whole files: a first line of column names, then distance in km and the fields.
TEST_CASE("the short table of the regulator's curves matches the whole files") {
  for (const double time_percent : {50.0, 10.0}) {
    for (const Curve& band : kCurves) {
      const auto file = test::reference(
          fmt::format("planning/fcc_F5{}{}.csv", time_percent == 50.0 ? "5" : "1", band.file_end));
      if (!file) return;
      const auto lines = test::read_lines(*file);
      const auto head = test::split(lines.at(0), ',');
      std::size_t rows = 0;
      for (const test::PublishedFields& row : published(time_percent)) {
        for (const std::string& line : lines) {
          const auto cells = test::split(line, ',');
          if (line == lines[0] || std::fabs(std::stod(cells[0]) - 1.609344 * row.miles) > 0.01) {
            continue;
          }
          ++rows;
          INFO(band.band << ' ' << line);
          for (std::size_t height = 0; height < test::kCurveHaat_m.size(); ++height) {
            const auto column = std::find(head.begin(), head.end(),
                                          fmt::format("haat_{:g}m", test::kCurveHaat_m[height]));
            REQUIRE(column != head.end());
            CHECK(std::stod(cells.at(static_cast<std::size_t>(column - head.begin()))) ==
                  (row.*band.fields_dbuvm)[height]);
          }
        }
      }
      CHECK(rows == published(time_percent).size());
    }
  }
}

}  // namespace mastwise::reception
