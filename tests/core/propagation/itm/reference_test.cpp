// NTIA's published test vectors for the Irregular Terrain Model (shared/reference/itm, US public
// domain), and seven real paths through NTIA's implementation (shared/reference/itm/real_terrain).
#include "tests/support/reference.hpp"

#include "core/propagation/itm/itm.hpp"

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

TEST_CASE("Area mode gives NTIA's test vectors to the printed digits", "[itm]") {
  const auto table = test::reference("itm/area.csv");
  if (!table) return;
  const auto rows = rows_without_head(*table);
  REQUIRE(rows.size() == 5);

  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Fields& row = rows[i];
    const itm::Link link = {.frequency_mhz = number(row, 10),
                            .transmitter_height_m = number(row, 0),
                            .receiver_height_m = number(row, 1),
                            .polarization = polarization(whole(row, 11)),
                            .relative_permittivity = number(row, 7),
                            .conductivity_s_per_m = number(row, 8),
                            .climate = static_cast<itm::Climate>(whole(row, 12)),
                            .sea_level_refractivity = number(row, 9)};
    const itm::AreaTerrain terrain = {.delta_h_m = number(row, 2),
                                      .transmitter_siting = static_cast<itm::Siting>(whole(row, 5)),
                                      .receiver_siting = static_cast<itm::Siting>(whole(row, 6))};
    const auto path = itm::area(link, terrain, 1000 * number(row, 4));
    INFO("row " << i + 1);
    CHECK(loss_db(path, whole(row, 3), {number(row, 13), number(row, 14), number(row, 15)}) ==
          Approx(number(row, 16)).margin(0.0501).epsilon(0));
  }
}

TEST_CASE("Real paths lose what NTIA's implementation gives, and warn of the same", "[itm]") {
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
