#include "tests/support/reference.hpp"

#include "core/propagation/p1812/p1812.hpp"
#include "tests/core/propagation/p1812/published_path.hpp"
#include "tests/core/propagation/p1812/reference_paths.hpp"
#include "tests/core/propagation/river_profile.hpp"

#include <cmath>
#include <filesystem>
#include <map>
#include <span>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise {

namespace {

using namespace p1812;

using Log = std::map<std::string, std::vector<double>>;

Link link_of(const Log& log) {
  Link link;
  link.frequency_mhz = 1000.0 * log.at("f (GHz)").at(0);
  link.polarization =
      log.at("pol").at(0) == 1.0 ? Polarization::horizontal : Polarization::vertical;
  link.transmitter_height_m = log.at("htg (m)").at(0);
  link.receiver_height_m = log.at("hrg (m)").at(0);
  link.path_latitude_deg = log.at("phi (deg)").at(0);
  link.refractivity = {log.at("DN").at(0), log.at("N0").at(0)};
  link.transmitter_coast_km = log.at("dct (km)").at(0);
  link.receiver_coast_km = log.at("dcr (km)").at(0);
  link.location_deviation_db = log.at("sigmaL (dB)").at(0);
  return link;
}

struct Row {
  const char* name;
  double value;
  std::size_t occurrence = 0;  // of a name that the log has twice
};

// The rows between the two validated ends; the logs' Bullington and spherical-Earth rows are those
// at the beta radius.
std::vector<Row> rows_of(const Path& path, const Loss& loss) {
  return {{"d (km)", path.distance_km},
          {"dlt (km)", path.transmitter_horizon_km},
          {"dlr (km)", path.receiver_horizon_km},
          {"th_t (mrad)", path.transmitter_elevation_mrad},
          {"th_r (mrad)", path.receiver_elevation_mrad},
          {"th (mrad)", path.angular_distance_mrad},
          {"hts (m)", path.transmitter_altitude_m},
          {"hrs (m)", path.receiver_altitude_m},
          {"w", path.sea_fraction},
          {"dtm (km)", path.longest_land_km},
          {"dlm (km)", path.longest_inland_km},
          {"b0 (%)", path.beta0_percent},
          {"ae (km)", path.median_earth_radius_km},
          {"hst (m)", path.smooth_transmitter_m, 0},
          {"hsr (m)", path.smooth_receiver_m, 0},
          {"hst (m)", path.ducting_smooth_transmitter_m, 1},
          {"hsr (m)", path.ducting_smooth_receiver_m, 1},
          {"hstd (m)", path.diffraction_smooth_transmitter_m},
          {"hsrd (m)", path.diffraction_smooth_receiver_m},
          {"htc (m)", path.transmitter_altitude_m, 0},
          {"hrc (m)", path.receiver_altitude_m, 0},
          {"htc (m)", path.diffraction_transmitter_height_m, 1},
          {"hrc (m)", path.diffraction_receiver_height_m, 1},
          {"hte (m)", path.transmitter_effective_height_m},
          {"hre (m)", path.receiver_effective_height_m},
          {"hm (m)", path.terrain_roughness_m},
          {"Fi", loss.interpolation},
          {"Fj", path.angular_factor},
          {"Fk", path.near_distance_factor},
          {"Lbfs", path.free_space_db},
          {"Lb0p", loss.line_of_sight_db},
          {"Lb0b", path.beta_line_of_sight_db},
          {"Lbulla (dB)", path.beta.bullington_actual_db},
          {"Lbulls (dB)", path.beta.bullington_smooth_db},
          {"Ldsph (dB)", path.beta.spherical_earth_db},
          {"Ld50 (dB)", path.median.loss_db},
          {"Ldb (dB)", path.beta.loss_db},
          {"Ldp (dB)", loss.diffraction_loss_db},
          {"Lbd50 (dB)", path.median_diffraction_db},
          {"Lbd (dB)", loss.diffraction_db},
          {"Lminb0p (dB)", loss.lowest_line_of_sight_db},
          {"Lba (dB)", loss.ducting_db},
          {"Lminbap (dB)", loss.lowest_ducting_db},
          {"Lbda (dB)", loss.diffraction_or_ducting_db},
          {"Lbam (dB)", loss.without_scatter_db},
          {"Lbs (dB)", loss.scatter_db},
          {"Lbc (dB)", loss.median_locations_db}};
}

std::vector<std::filesystem::path> logs_in(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> logs;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) logs.push_back(entry);
  return logs;
}

// The profile of a log named <profile>_<number>_log.csv.
std::filesystem::path profile_of(const std::filesystem::path& log) {
  const std::string name = log.filename().string();
  return log.parent_path().parent_path() / (name.substr(0, name.size() - 10) + ".csv");
}

// The first points of the published path. On land: the examples that say inland for every point.
test::StoredProfile published_profile(std::size_t points, bool on_land) {
  test::StoredProfile profile;
  for (const auto& point : std::span(test::kPublishedPath).first(points)) {
    profile.distances_km.push_back(point.distance_km);
    profile.heights_m.push_back(point.height_m);
    profile.clutter_m.push_back(point.clutter_m);
    profile.zones.push_back(on_land ? Zone::inland : static_cast<Zone>(point.zone));
  }
  return profile;
}

}  // namespace

// Source: ITU-R Working Party 3K, validation examples b2iseac, b2iseac_vertical and
// b2iseac_rural_land_1km, _10km and _100km, the last of which are the first 6, 27 and 97 points of
// the same path. License: copies are allowed with an acknowledgment.
TEST_CASE("P.1812 agrees with five published paths in any clone") {
  constexpr auto kHorizontal = Polarization::horizontal;
  constexpr auto kVertical = Polarization::vertical;
  const struct {
    std::size_t points;
    bool on_land;
    Polarization polarization;
    double latitude_deg, time_percent, loss_db, field_dbuvm;
  } rows[] = {{6, true, kHorizontal, 53.18551669, 1, 87.0385433, 91.90331472},
              {6, true, kHorizontal, 53.18551669, 10, 87.30268122, 91.63917679},
              {6, true, kHorizontal, 53.18551669, 50, 87.48987104, 91.45198697},
              {27, true, kHorizontal, 53.20515067, 1, 117.6475826, 61.29427537},
              {27, true, kHorizontal, 53.20515067, 10, 119.3011611, 59.64069691},
              {27, true, kHorizontal, 53.20515067, 50, 120.4908523, 58.4510057},
              {97, true, kHorizontal, 53.39987472, 1, 115.9738033, 62.96805469},
              {97, true, kHorizontal, 53.39987472, 10, 119.2324887, 59.7093693},
              {97, true, kHorizontal, 53.39987472, 50, 122.2167031, 56.72515496},
              {211, false, kHorizontal, 53.68658428, 1, 129.0969126, 49.84494546},
              {211, false, kHorizontal, 53.68658428, 10, 138.635142, 40.30671605},
              {211, false, kHorizontal, 53.68658428, 50, 160.0734573, 18.86840073},
              {211, false, kVertical, 53.68658428, 1, 129.2224473, 49.71941069},
              {211, false, kVertical, 53.68658428, 10, 138.5360526, 40.4058054},
              {211, false, kVertical, 53.68658428, 50, 159.4818849, 19.45997309}};
  Scratch scratch;
  for (const auto& row : rows) {
    INFO(row.points << " points, " << row.time_percent << " %");
    const auto profile = published_profile(row.points, row.on_land);
    const Link link = {.frequency_mhz = 95.3,
                       .polarization = row.polarization,
                       .transmitter_height_m = 60.0,
                       .receiver_height_m = 7.0,
                       .path_latitude_deg = row.latitude_deg,
                       .refractivity = {45.0, 326.079979},
                       .location_deviation_db = 0.0};
    const auto loss = loss_of(profile.view(), link, {row.time_percent, 50.0}, scratch);
    REQUIRE(loss);
    CHECK(loss->basic_loss_db == Approx(row.loss_db).margin(1e-6).epsilon(0));
    CHECK(loss->field_dbuvm == Approx(row.field_dbuvm).margin(1e-6).epsilon(0));
  }
}

// Source: the reference implementation of Working Party 3K, run on the river's profile with the
// transmitter 139.09 m above ground and an ERP of 65.4 kW; made for this project.
TEST_CASE("P.1812 agrees with the reference implementation on one real path in any clone") {
  constexpr auto kHorizontal = Polarization::horizontal;
  constexpr auto kVertical = Polarization::vertical;
  const struct {
    double frequency_mhz;
    Percentages percentages;
    double deviation_db;
    Polarization polarization;
    double receiver_m, clutter_m, loss_db, field_dbuvm;
  } rows[] = {{527, {50, 50}, 0, kHorizontal, 3.5, 0, 118.49516828, 93.45682151},
              {527, {10, 50}, 0, kHorizontal, 3.5, 0, 116.93789164, 95.01409815},
              {527, {50, 95}, 5.5, kHorizontal, 3.5, 0, 127.54383149, 84.40815830},
              {527, {50, 50}, 0, kHorizontal, 10, 0, 116.02081493, 95.93117486},
              {527, {50, 50}, 0, kHorizontal, 3.5, 10, 130.89860085, 81.05338894},
              {527, {50, 90}, 5.5, kVertical, 10, 15, 135.12568850, 76.82630129},
              {57, {50, 50}, 0, kHorizontal, 3.5, 0, 107.03434761, 85.59892699},
              {195, {50, 50}, 0, kVertical, 3.5, 0, 111.43626562, 91.88020409},
              {605, {1, 50}, 0, kHorizontal, 3.5, 0, 116.31730601, 96.83357897}};
  Scratch scratch;
  for (const auto& row : rows) {
    INFO(row.frequency_mhz << " MHz, " << row.percentages.time_percent << " %");
    const std::vector<double> clutter_m(test::kRiverHeights_m.size(), row.clutter_m);
    const Profile profile = {.spacing_km = test::kRiverSpacing_m / 1000.0,
                             .heights_m = test::kRiverHeights_m,
                             .clutter_m = clutter_m};
    const Link link = {.frequency_mhz = row.frequency_mhz,
                       .polarization = row.polarization,
                       .transmitter_height_m = 139.09,
                       .receiver_height_m = row.receiver_m,
                       .path_latitude_deg = 0.5 * (44.352777778 + 44.435216667),
                       .location_deviation_db = row.deviation_db};
    const auto loss = loss_of(profile, link, row.percentages, scratch);
    REQUIRE(loss);
    const double power_db = 10.0 * std::log10(65.4);
    CHECK(loss->basic_loss_db == Approx(row.loss_db).margin(1e-4).epsilon(0));
    CHECK(loss->field_dbuvm + power_db == Approx(row.field_dbuvm).margin(1e-4).epsilon(0));
  }
}

// ITU-R Working Party 3K, validation examples of P.1812: every result log.
TEST_CASE("P.1812 agrees with all validation examples of Working Party 3K") {
  const auto folder = test::reference("p1812/official");
  if (!folder) return;
  const auto logs = logs_in(*folder / "results");
  REQUIRE(logs.size() == 45);
  Scratch scratch;
  for (const auto& file : logs) {
    INFO(file.filename().string());
    const auto log = test::read_official_log(file);
    const auto profile = test::read_official_profile(profile_of(file));
    const auto path = analyze_path(profile.view(), link_of(log), scratch);
    REQUIRE(path);
    const auto loss = loss_for(*path, {log.at("p (%)").at(0), log.at("pL (%)").at(0)});
    REQUIRE(loss);
    CHECK(loss->basic_loss_db == Approx(log.at("Lb (dB)").at(0)).margin(1e-6).epsilon(0));
    CHECK(loss->field_dbuvm == Approx(log.at("Ep (dBuV/m)").at(0)).margin(1e-6).epsilon(0));
    for (const Row& row : rows_of(*path, *loss)) {
      INFO(row.name);
      CHECK(row.value == Approx(log.at(row.name).at(row.occurrence)).margin(1e-6).epsilon(1e-8));
    }
  }
}

// Seven paths cut from a terrain tile, through the reference implementation of Working Party 3K:
// the columns are those of the table's first line.
TEST_CASE("P.1812 agrees with the reference implementation on real terrain") {
  const auto folder = test::reference("p1812/real_terrain");
  if (!folder) return;
  Scratch scratch;
  int rows = 0;
  for (const std::string& line : test::read_lines(*folder / "expected.csv")) {
    const auto fields = test::split(line, ',');
    if (fields.size() < 21 || fields[0] == "profile") continue;
    INFO(line);
    const auto number = [&](std::size_t column) { return std::stod(fields[column]); };
    auto profile = test::read_plain_profile(*folder / fields[0]);
    profile.clutter_m.assign(profile.heights_m.size(), number(8));
    profile.zones.assign(profile.heights_m.size(), static_cast<Zone>(std::stoi(fields[9])));
    Link link;
    link.frequency_mhz = number(1);
    link.location_deviation_db = number(4);
    link.polarization = number(5) == 1.0 ? Polarization::horizontal : Polarization::vertical;
    link.transmitter_height_m = number(6);
    link.receiver_height_m = number(7);
    link.refractivity = {number(10), number(11)};
    link.transmitter_coast_km = number(12);
    link.receiver_coast_km = number(13);
    link.path_latitude_deg = 0.5 * (number(15) + number(17));
    const auto loss = loss_of(profile.view(), link, {number(2), number(3)}, scratch);
    REQUIRE(loss);
    const double power_db = 10.0 * std::log10(number(14));
    CHECK(loss->basic_loss_db == Approx(number(19)).margin(1e-4).epsilon(0));
    CHECK(loss->field_dbuvm + power_db == Approx(number(20)).margin(1e-4).epsilon(0));
    ++rows;
  }
  CHECK(rows == 63);
}

}  // namespace mastwise
