// NTIA's published test vectors for the Irregular Terrain Model (shared/reference/itm, US public
// domain), and seven real paths through NTIA's implementation (shared/reference/itm/real_terrain).
#include "tests/support/reference.hpp"

#include "core/propagation/itm/itm.hpp"
#include "tests/core/propagation/itm/published_profiles.hpp"
#include "tests/core/propagation/river_profile.hpp"

#include <span>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

namespace {

using namespace mastwise;
using test::split;

using Fields = std::vector<std::string>;

std::vector<Fields> rows_without_head(const std::filesystem::path& path) {
  std::vector<Fields> rows;
  for (const std::string& line : test::read_lines(path)) rows.push_back(split(line, ','));
  rows.erase(rows.begin());
  return rows;
}

double number(const Fields& row, std::size_t column) {
  return std::stod(row.at(column));
}
int whole(const Fields& row, std::size_t column) {
  return std::stoi(row.at(column));
}

itm::Polarization polarization(int number) {
  return number == 0 ? itm::Polarization::horizontal : itm::Polarization::vertical;
}

double loss_db(const Result<itm::Path>& path, int mode, const itm::Percentages& percentages) {
  if (!path) FAIL(path.error().message());
  const auto variability = itm::variability_from_code(mode);
  REQUIRE(variability);
  const auto prediction = itm::predict(*path, *variability, percentages);
  if (!prediction) FAIL(prediction.error().message());
  return prediction->loss_db;
}

}  // namespace

TEST_CASE("Point-to-point mode gives NTIA's test vectors to the printed digits", "[itm]") {
  const auto table = test::reference("itm/p2p.csv");
  const auto profiles = test::reference("itm/pfls.csv");
  if (!table || !profiles) return;
  const auto rows = rows_without_head(*table);
  const auto lines = test::read_lines(*profiles);
  REQUIRE(rows.size() == 5);
  REQUIRE(lines.size() == rows.size());

  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Fields& row = rows[i];
    const Fields profile = split(lines[i], ',');
    const auto intervals = static_cast<std::size_t>(whole(profile, 0));
    std::vector<double> heights_m;
    for (std::size_t j = 0; j <= intervals; ++j) heights_m.push_back(number(profile, 2 + j));
    const itm::Link link = {.frequency_mhz = number(row, 5),
                            .transmitter_height_m = number(row, 0),
                            .receiver_height_m = number(row, 1),
                            .polarization = polarization(whole(row, 6)),
                            .relative_permittivity = number(row, 2),
                            .conductivity_s_per_m = number(row, 3),
                            .climate = static_cast<itm::Climate>(whole(row, 7)),
                            .sea_level_refractivity = number(row, 4)};
    const auto path = itm::point_to_point(link, {number(profile, 1), heights_m});
    INFO("row " << i + 1);
    CHECK(loss_db(path, whole(row, 11), {number(row, 8), number(row, 9), number(row, 10)}) ==
          Approx(number(row, 12)).margin(0.00501).epsilon(0));
  }
}

// Source: area.csv of NTIA's test vectors, every row.
TEST_CASE("Area mode gives NTIA's test vectors to the printed digits", "[itm]") {
  constexpr auto kHorizontal = itm::Polarization::horizontal;
  constexpr auto kVertical = itm::Polarization::vertical;
  const struct {
    double transmitter_m, receiver_m, delta_h_m;
    int variability;
    double distance_km;
    int transmitter_siting, receiver_siting;
    double frequency_mhz;
    itm::Polarization polarization;
    int climate;
    itm::Percentages percentages;
    double loss_db;
  } rows[] = {{10, 1, 0, 0, 16, 0, 0, 230, kHorizontal, 5, {87, 50, 50}, 152.5},
              {3, 1.5, 10, 1, 10, 1, 0, 450, kHorizontal, 5, {40, 28, 25}, 133.0},
              {15, 3, 5, 2, 100, 2, 1, 980, kVertical, 4, {92, 53, 97}, 224.1},
              {3, 5, 20, 3, 75, 0, 1, 3100, kVertical, 2, {50, 80, 43}, 205.1},
              {1.5, 10, 45, 0, 25, 1, 2, 8900, kVertical, 1, {70, 99, 26}, 156.0}};
  for (const auto& row : rows) {
    const itm::Link link = {.frequency_mhz = row.frequency_mhz,
                            .transmitter_height_m = row.transmitter_m,
                            .receiver_height_m = row.receiver_m,
                            .polarization = row.polarization,
                            .relative_permittivity = 15,
                            .conductivity_s_per_m = 0.008,
                            .climate = static_cast<itm::Climate>(row.climate),
                            .sea_level_refractivity = 301};
    const itm::AreaTerrain terrain = {
        .delta_h_m = row.delta_h_m,
        .transmitter_siting = static_cast<itm::Siting>(row.transmitter_siting),
        .receiver_siting = static_cast<itm::Siting>(row.receiver_siting)};
    const auto path = itm::area(link, terrain, 1000 * row.distance_km);
    INFO(row.frequency_mhz << " MHz over " << row.distance_km << " km");
    CHECK(loss_db(path, row.variability, row.percentages) ==
          Approx(row.loss_db).margin(0.0501).epsilon(0));
  }
}

// Source: p2p.csv of NTIA's test vectors, rows 2 and 5, whose profiles are the shortest.
TEST_CASE("Two of NTIA's point-to-point vectors are right in any clone", "[itm]") {
  const struct {
    double transmitter_m, receiver_m, frequency_mhz;
    itm::Climate climate;
    itm::Percentages percentages;
    double loss_db, spacing_m;
    std::span<const double> heights_m;
  } rows[] = {{3,
               1.5,
               480,
               static_cast<itm::Climate>(5),
               {22, 22, 22},
               157.10,
               test::kVector2Spacing_m,
               test::kVector2Heights_m},
              {1.5,
               10,
               8800,
               itm::Climate::equatorial,
               {23, 95, 20},
               218.91,
               test::kVector5Spacing_m,
               test::kVector5Heights_m}};
  constexpr int kMobileAtKnownPlace = 12;
  for (const auto& row : rows) {
    const itm::Link link = {.frequency_mhz = row.frequency_mhz,
                            .transmitter_height_m = row.transmitter_m,
                            .receiver_height_m = row.receiver_m,
                            .polarization = itm::Polarization::vertical,
                            .relative_permittivity = 15,
                            .conductivity_s_per_m = 0.008,
                            .climate = row.climate,
                            .sea_level_refractivity = 301};
    const auto path = itm::point_to_point(link, {row.spacing_m, row.heights_m});
    INFO(row.frequency_mhz << " MHz");
    CHECK(loss_db(path, kMobileAtKnownPlace, row.percentages) ==
          Approx(row.loss_db).margin(0.00501).epsilon(0));
  }
}

// Source: NTIA's implementation, run on the river's profile at 527 MHz, horizontal, with the
// transmitter 139.09 m above ground; made for this project.
TEST_CASE("A real path has the loss of NTIA's implementation in any clone", "[itm]") {
  const struct {
    double receiver_m;
    itm::Percentages percentages;
    double loss_db;
  } rows[] = {{3.5, {50, 50, 50}, 124.505956}, {3.5, {90, 50, 50}, 124.617793},
              {3.5, {10, 50, 50}, 124.320768}, {3.5, {90, 90, 50}, 137.296166},
              {10, {50, 50, 50}, 110.100397},  {10, {90, 50, 50}, 110.202237},
              {10, {10, 50, 50}, 109.931782},  {10, {90, 90, 50}, 122.882330}};
  for (const auto& row : rows) {
    const itm::Link link = {.frequency_mhz = 527,
                            .transmitter_height_m = 139.09,
                            .receiver_height_m = row.receiver_m,
                            .polarization = itm::Polarization::horizontal,
                            .relative_permittivity = 15,
                            .conductivity_s_per_m = 0.005,
                            .climate = itm::Climate::continental_temperate,
                            .sea_level_refractivity = 301};
    const auto path = itm::point_to_point(link, {test::kRiverSpacing_m, test::kRiverHeights_m});
    INFO("receiver at " << row.receiver_m << " m, time " << row.percentages.time);
    constexpr int kBroadcast = 3;
    CHECK(loss_db(path, kBroadcast, row.percentages) ==
          Approx(row.loss_db).margin(0.001).epsilon(0));
    CHECK(path->warnings == 0);
  }
}

TEST_CASE("Real paths have the loss and warnings of NTIA's implementation", "[itm]") {
  const auto table = test::reference("itm/real_terrain/expected.csv");
  if (!table) return;
  const auto rows = rows_without_head(*table);
  REQUIRE(rows.size() == 56);

  for (const Fields& row : rows) {
    const auto file = test::reference("p1812/real_terrain/" + row.at(0));
    if (!file) return;
    std::vector<double> heights_m;
    for (const Fields& point : rows_without_head(*file)) heights_m.push_back(number(point, 1));
    REQUIRE(heights_m.size() == static_cast<std::size_t>(whole(row, 4)) + 1);
    const itm::Link link = {.frequency_mhz = number(row, 3),
                            .transmitter_height_m = number(row, 1),
                            .receiver_height_m = number(row, 2),
                            .polarization = polarization(whole(row, 8)),
                            .relative_permittivity = number(row, 9),
                            .conductivity_s_per_m = number(row, 10),
                            .climate = static_cast<itm::Climate>(whole(row, 6)),
                            .sea_level_refractivity = number(row, 7)};
    const auto path = itm::point_to_point(link, {number(row, 5), heights_m});
    // Nine tenths of one path's horizon distance falls on a point of the profile; to which side
    // rounding throws it there moves the reflecting line by a point and the loss by 0.024 dB.
    const bool on_a_point = row.at(0) == "WLED-TV_franconia.profile.csv";
    INFO(row.at(0) << " with the receiver at " << row.at(2) << " m, time " << row.at(12));
    CHECK(loss_db(path, whole(row, 11), {number(row, 12), number(row, 13), number(row, 14)}) ==
          Approx(number(row, 15)).margin(on_a_point ? 0.03 : 0.001).epsilon(0));
    // The only warning among these paths is of a receiver's horizon that is close by; the table
    // writes it 1024.
    CHECK(itm::has(path->warnings, itm::Warning::receiver_horizon_near) == (row.at(16) == "1024"));
    CHECK((path->warnings == 0) == (row.at(16) == "0"));
  }
}
