#include "core/geo/magnetic_field.hpp"

#include "tests/support/folders.hpp"
#include "tests/support/reference.hpp"

#include <cmath>
#include <filesystem>
#include <future>
#include <sstream>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;
using std::chrono::days;
using std::chrono::hours;
using std::chrono::sys_days;
using std::chrono::year;
using Zone = MagneticField::Zone;

namespace {

const std::string kFolder = test::build_folder() + "/assets/magnetic";

MagneticModel load_model() {
  auto model = MagneticModel::load(kFolder);
  INFO((model ? std::string() : model.error().message()));
  REQUIRE(model);
  return std::move(model).value();
}

Position place_at(double latitude_deg, double longitude_deg) {
  return Position::at_deg(latitude_deg, longitude_deg).value();
}

UtcTime utc(int in_year, unsigned month, unsigned day) {
  return sys_days{year{in_year} / static_cast<int>(month) / static_cast<int>(day)};
}

// The time of a decimal year, by the rule of decimal_year written backwards.
UtcTime time_of(double decimal) {
  const int whole = static_cast<int>(std::floor(decimal));
  const UtcTime begins = utc(whole, 1, 1);
  const auto length = static_cast<double>((utc(whole + 1, 1, 1) - begins).count());
  return begins + milliseconds{std::llround((decimal - whole) * length)};
}

std::vector<std::vector<double>> read_rows(const std::filesystem::path& path) {
  std::vector<std::vector<double>> rows;
  for (const std::string& line : test::read_lines(path)) {
    if (line.empty() || line.front() == '#') continue;
    std::istringstream text(line);
    std::vector<double> row;
    for (std::string field; text >> field;) row.push_back(std::stod(field));
    rows.push_back(row);
  }
  return rows;
}

}  // namespace

// Source: NOAA's WMM2025 test values, 100 rows: year, height km, lat, lon, D, I, H, X, Y,
// Z, F, and the change of D in a year.
TEST_CASE("the field agrees with NOAA's 100 test values") {
  const auto path = test::reference("wmm/WMM2025_FINAL_TEST_VALUES_HIGHPREC.txt");
  if (!path) return;
  const MagneticModel model = load_model();
  const auto rows = read_rows(*path);
  REQUIRE(rows.size() == 100);
  for (const auto& row : rows) {
    INFO(row[0] << " " << row[1] << " km " << row[2] << " " << row[3]);
    const MagneticField field =
        model.at(place_at(row[2], row[3]), time_of(row[0]), row[1] * 1000.0);
    CHECK(field.declination.east_deg() == Approx(row[4]).margin(0.01));
    CHECK(field.inclination_deg == Approx(row[5]).margin(0.01));
    CHECK(field.horizontal_nt == Approx(row[6]).margin(0.01));
    CHECK(field.total_nt == Approx(row[10]).margin(0.01));
    CHECK(field.declination_deg_per_year == Approx(row[11]).margin(0.0001));
    CHECK_FALSE(field.beyond_model_end);
  }
}

// Source: NOAA's WMM2025 report, its table of 12 test values (US government, public domain).
TEST_CASE("the field agrees with the report's 12 test values") {
  const struct {
    double year, height_km, latitude_deg, longitude_deg;
    double horizontal_nt, total_nt, inclination_deg, declination_deg;
  } rows[] = {{2025.0, 0, 80, 0, 6523.2, 55178.5, 83.21, 1.28},
              {2025.0, 0, 0, 120, 39677.9, 41064.3, -14.93, -0.16},
              {2025.0, 0, -80, 240, 16898.1, 54698.2, -72.00, 68.78},
              {2025.0, 100, 80, 0, 6216.7, 52964.9, 83.26, 0.85},
              {2025.0, 100, 0, 120, 37688.7, 39032.1, -15.08, -0.15},
              {2025.0, 100, -80, 240, 15917.1, 52035.0, -72.19, 68.21},
              {2027.5, 0, 80, 0, 6507.5, 55253.9, 83.24, 2.59},
              {2027.5, 0, 0, 120, 39702.0, 41036.9, -14.65, -0.24},
              {2027.5, 0, -80, 240, 16908.3, 54474.2, -71.92, 68.49},
              {2027.5, 100, 80, 0, 6201.1, 53034.3, 83.29, 2.16},
              {2027.5, 100, 0, 120, 37711.8, 39007.4, -14.81, -0.23},
              {2027.5, 100, -80, 240, 15927.0, 51825.7, -72.10, 67.93}};
  const MagneticModel model = load_model();
  for (const auto& row : rows) {
    INFO(row.year << " " << row.height_km << " km " << row.latitude_deg);
    const MagneticField field = model.at(place_at(row.latitude_deg, row.longitude_deg),
                                         time_of(row.year), row.height_km * 1000.0);
    CHECK(field.horizontal_nt == Approx(row.horizontal_nt).margin(0.06).epsilon(0));
    CHECK(field.total_nt == Approx(row.total_nt).margin(0.06).epsilon(0));
    CHECK(field.inclination_deg == Approx(row.inclination_deg).margin(0.006).epsilon(0));
    CHECK(field.declination.east_deg() == Approx(row.declination_deg).margin(0.006).epsilon(0));
  }
}

// Source: facts of the trade, from the WMM2025 error model.
TEST_CASE("the declination's uncertainty grows as the horizontal field falls") {
  CHECK(declination_sigma_deg(20000.0) == Approx(0.38).margin(0.005));
  CHECK(declination_sigma_deg(10000.0) == Approx(0.60).margin(0.005));
  CHECK(std::isinf(declination_sigma_deg(0.0)));
  const MagneticModel model = load_model();
  const MagneticField field = model.at(place_at(44.435217, -71.675993), time_of(2026.5));
  CHECK(field.declination_sigma_deg == declination_sigma_deg(field.horizontal_nt));
}

// Source: World Magnetic Model: caution zone under 6,000 nT, blackout zone under 2,000 nT.
TEST_CASE("zones begin below 6000 and 2000 nT") {
  CHECK(magnetic_zone(6000.0) == Zone::Normal);
  CHECK(magnetic_zone(5999.9) == Zone::Caution);
  CHECK(magnetic_zone(2000.0) == Zone::Caution);
  CHECK(magnetic_zone(1999.9) == Zone::Blackout);
  CHECK(magnetic_zone(0.0) == Zone::Blackout);
}

// Source: the WMM2025 report puts the dip poles of 2025.0 at 85.762 N 139.298 E and 63.851 S
// 135.078 E (from memory); 89 N 121 W has H of 1,504 nT and 80 N 96 W 2,164 nT in NOAA's test
// values.
TEST_CASE("the zones are around the dip poles") {
  const MagneticModel model = load_model();
  const UtcTime date = utc(2025, 1, 1);
  CHECK(model.at(place_at(85.762, 139.298), date).zone == Zone::Blackout);
  CHECK(model.at(place_at(85.762, 139.298), date).horizontal_nt < 10.0);
  CHECK(model.at(place_at(-63.851, 135.078), date).zone == Zone::Blackout);
  CHECK(model.at(place_at(-63.851, 135.078), date).horizontal_nt < 10.0);
  CHECK(model.at(place_at(89, -121), date, 28000.0).zone == Zone::Blackout);
  CHECK(model.at(place_at(80, -96), date, 48000.0).zone == Zone::Caution);
  CHECK(model.at(place_at(44.435217, -71.675993), date).zone == Zone::Normal);
}

TEST_CASE("a decimal year counts milliseconds of years of 365 and 366 days") {
  CHECK(decimal_year(utc(2025, 1, 1)) == 2025.0);
  CHECK(decimal_year(utc(2025, 7, 2) + hours{12}) == 2025.5);
  CHECK(decimal_year(utc(2028, 7, 2)) == 2028.5);  // a leap year's middle
  CHECK(decimal_year(utc(2028, 3, 1)) == 2028.0 + 60.0 / 366.0);
  CHECK(decimal_year(utc(2026, 3, 1)) == 2026.0 + 59.0 / 365.0);
  CHECK(decimal_year(utc(2030, 1, 1) - milliseconds{1}) < 2030.0);
  CHECK(decimal_year(utc(1969, 12, 31)) == 1969.0 + 364.0 / 365.0);
  CHECK(decimal_year(utc(2000, 12, 31)) == 2000.0 + 365.0 / 366.0);
}

TEST_CASE("a date beyond the model is flagged, to the millisecond") {
  const MagneticModel model = load_model();
  const Position stop = place_at(44.435217, -71.675993);
  CHECK_FALSE(model.at(stop, utc(2030, 1, 1) - milliseconds{1}).beyond_model_end);
  CHECK(model.at(stop, utc(2030, 1, 1)).beyond_model_end);
  CHECK_FALSE(model.at(stop, utc(2024, 11, 13)).beyond_model_end);
  CHECK(model.at(stop, utc(2024, 11, 13) - milliseconds{1}).beyond_model_end);
}

// Source: the reference data's README: 14.14 degrees west at 2026.5.
TEST_CASE("the declination at the recorded stop matches the reference") {
  const MagneticModel model = load_model();
  const MagneticField field = model.at(place_at(44.435217, -71.675993), time_of(2026.5));
  CHECK(field.declination.east_deg() == Approx(-14.14).margin(0.005));
}

TEST_CASE("a folder without the model is an error that names the folder") {
  const auto none = MagneticModel::load("no-such-folder");
  REQUIRE_FALSE(none);
  CHECK(none.error().message().find("no-such-folder") != std::string::npos);
  CHECK_FALSE(none.error().remedy.empty());
}

TEST_CASE("a model cut short is an error") {
  namespace fs = std::filesystem;
  const fs::path folder = fs::temp_directory_path() / "mastwise_cut_model";
  fs::create_directories(folder);
  for (const char* file : {"wmm2025.wmm", "wmm2025.wmm.cof"}) {
    fs::copy_file(fs::path(kFolder) / file, folder / file, fs::copy_options::overwrite_existing);
  }
  CHECK(MagneticModel::load(folder.string()));
  fs::resize_file(folder / "wmm2025.wmm.cof", 2000);
  CHECK_FALSE(MagneticModel::load(folder.string()));
  fs::remove_all(folder);
}

TEST_CASE("many threads can use one model at once") {
  const MagneticModel model = load_model();
  const UtcTime date = utc(2027, 3, 4);
  const auto sum_deg = [&model, date] {
    double sum = 0.0;
    for (int i = 0; i < 500; ++i) {
      sum += model.at(place_at(i * 0.3 - 75.0, i * 0.7 - 170.0), date).declination.east_deg();
    }
    return sum;
  };
  const double alone_deg = sum_deg();
  std::vector<std::future<double>> sums;
  for (int i = 0; i < 4; ++i) sums.push_back(std::async(std::launch::async, sum_deg));
  for (auto& sum : sums) CHECK(sum.get() == alone_deg);
}

TEST_CASE("the model moves and gives the same field after") {
  STATIC_REQUIRE(std::is_move_constructible_v<MagneticModel>);
  STATIC_REQUIRE(std::is_move_assignable_v<MagneticModel>);
  STATIC_REQUIRE_FALSE(std::is_copy_constructible_v<MagneticModel>);
  MagneticModel first = load_model();
  const Position stop = place_at(10, 20);
  const double before_deg = first.at(stop, utc(2026, 1, 1)).declination.east_deg();
  const MagneticModel second = std::move(first);
  CHECK(second.at(stop, utc(2026, 1, 1)).declination.east_deg() == before_deg);
}
