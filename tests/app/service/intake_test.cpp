#include "app/service/intake_work.hpp"
#include "app/service/startup.hpp"
#include "core/geo/geodesic.hpp"
#include "tests/support/temporary_folder.hpp"

#include <cmath>
#include <filesystem>
#include <fstream>
#include <numbers>

#include <catch2/catch.hpp>
#include <fmt/format.h>

using namespace mastwise;

namespace {

constexpr double kRadian = std::numbers::pi / 180.0;
// PRACTICE: invented.
const std::string kHeader = "call_sign,raster,rf_channel,latitude_deg,longitude_deg\n";

class Desk {
 public:
  std::string table(const std::string& name, const std::string& text) const {
    std::filesystem::create_directories((folder_ / name).parent_path());
    std::ofstream(folder_ / name, std::ios::binary) << text;
    return folder_.file(name);
  }
  std::string file(const std::string& name) const { return folder_.file(name); }
  IntakeWorker::Answerer answerer() const {
    return intake_answerer({.catalog_path = folder_.file("catalog"),
                            .mapping_folder = folder_.file("mappings"),
                            .places = [] { return std::vector<IntakeEntry>(); },
                            .borders = service::load_borders,
                            .towns = service::load_places});
  }

 private:
  test::TemporaryFolder folder_;
};

// Asks, and stops at the n-th check.
IntakeAnswer ask(const IntakeWorker::Answerer& answerer, const IntakeQuestion& question,
                 int stop_at = 1'000'000'000) {
  int looks = 0;
  return answerer(
      question, {.publish = [](IntakeAnswer) {}, .superseded = [&] { return ++looks >= stop_at; }});
}

IntakeQuestion look_at(const std::string& path) {
  return {.step = IntakeStep::Table, .path = path};
}

IntakeQuestion take_own(const std::string& path, std::size_t taking) {
  return {.step = IntakeStep::TakingIn,
          .path = path,
          .reading = TableReading{.source = {"own", ""}},
          .taking = taking};
}

std::size_t stations_of(const Desk& desk) {
  auto catalog = Catalog::open(desk.file("catalog"));
  REQUIRE(catalog);
  const auto count = catalog->count();
  REQUIRE(count);
  return *count;
}

}  // namespace

TEST_CASE("a stopped import leaves the whole old table or the whole new one") {
  const Desk desk;
  const auto answerer = desk.answerer();
  const std::string few = desk.table("few.csv", kHeader + "QOLD,ATSC,9,44,-100\n");
  std::string rows = kHeader;
  for (int i = 0; i < 2000; ++i) rows += fmt::format("Q{:04},ATSC,9,44,{}\n", i, -100.0 - 0.01 * i);
  const std::string many = desk.table("many.csv", rows);
  std::size_t taking = 0;
  REQUIRE(ask(answerer, take_own(few, ++taking)).report);
  int stopped = 0;
  for (int at = 1; at < 50; ++at) {
    INFO("stopped at look " << at);
    const IntakeAnswer answer = ask(answerer, take_own(many, ++taking), at);
    if (answer.report) {
      CHECK(answer.trouble.empty());
      CHECK(stations_of(desk) == 2000);
      break;
    }
    ++stopped;
    CHECK(answer.trouble.find("stopped") != std::string::npos);
    CHECK(stations_of(desk) == 1);
  }
  CHECK(stopped > 3);
  CHECK(stations_of(desk) == 2000);
}

TEST_CASE("an import raises the generation once, and a late stop still gets its report") {
  const Desk desk;
  const auto answerer = desk.answerer();
  const std::string path = desk.table("few.csv", kHeader + "QOLD,ATSC,9,44,-100\n");
  CHECK(ask(answerer, look_at(path)).generation == 0);
  const IntakeAnswer taken = ask(answerer, take_own(path, 1));
  CHECK(taken.generation == 1);
  REQUIRE(taken.report);
  CHECK(taken.report->first_stations);
  CHECK(taken.stations == std::vector<SourceSummary>{{{"own", ""}, 1}});
  CHECK(ask(answerer, take_own(path, 1)).generation == 1);
  IntakeQuestion back = look_at(path);
  back.taking = 1;
  CHECK(ask(answerer, back).report == taken.report);
  back.taking = 2;
  CHECK_FALSE(ask(answerer, back).report);
}

TEST_CASE("the check map has true bearings and distances from its middle") {
  const Desk desk;
  const std::string path = desk.table(
      "far.csv", kHeader + "QAAA,ATSC,9,40,-100\nQAAB,ATSC,9,45,-90\nQAAC,ATSC,9,60,-120\n");
  const IntakeAnswer answer = ask(desk.answerer(), look_at(path));
  REQUIRE(answer.look);
  REQUIRE(answer.look->map);
  const CheckMap& map = *answer.look->map;
  CHECK(map.lines.size() > 10);
  for (const CheckedStation& station : answer.look->sample) {
    REQUIRE(station.at);
    const PathBetween way = path_between(map.middle, station.position);
    const double distance_m = std::hypot(station.at->east_m, station.at->north_m);
    CHECK(distance_m == Approx(way.distance_m).epsilon(1e-6));
    CHECK(distance_m < map.radius_m);
    const double bearing_deg = std::atan2(station.at->east_m, station.at->north_m) / kRadian;
    CHECK(std::fabs(std::remainder(bearing_deg - way.bearing.degrees(), 360.0)) < 1e-3);
  }
}

TEST_CASE("a table that cannot be guessed asks for its missing columns") {
  const Desk desk;
  const std::string path = desk.table("strange.csv", "a,b,c,d\nQAAA,9,44,-100\nQAAB,11,45,-101\n");
  const auto answerer = desk.answerer();
  IntakeQuestion question = look_at(path);
  const IntakeAnswer answer = ask(answerer, question);
  REQUIRE(answer.look);
  CHECK(answer.look->trouble != "");
  CHECK(answer.look->known_by.find("cannot be guessed") != std::string::npos);
  REQUIRE(answer.look->columns.size() == 4);
  TableReading reading = answer.look->reading;
  CHECK(reading.kind == TableReading::Kind::Mapped);
  const std::vector<std::string> columns{"a", "b", "c", "d"};
  for (const auto& [part, column] : std::vector<std::pair<std::string, std::string>>{
           {"call_sign", "a"}, {"rf_channel", "b"}, {"latitude", "c"}, {"longitude", "d"}}) {
    correct(reading.mapping, part, column, columns);
  }
  question.reading = reading;
  const IntakeAnswer corrected = ask(answerer, question);
  CHECK(corrected.look->trouble.empty());
  REQUIRE(corrected.look->sample.size() == 2);
  CHECK(corrected.look->sample[1].position.longitude_deg() == Approx(-101.0));
}

TEST_CASE("several tables without a built-in mapping are refused with a remedy") {
  const Desk desk;
  desk.table("set/a.dat", "x|^|\n");
  desk.table("set/b.dat", "x|^|\n");
  const IntakeAnswer answer = ask(desk.answerer(), look_at(desk.file("set")));
  REQUIRE(answer.look);
  CHECK(answer.look->reading.kind == TableReading::Kind::Joined);
  CHECK(answer.look->trouble.find("mapping") != std::string::npos);
}

TEST_CASE("columns known by the header stay if most of a column is unreadable") {
  const Desk desk;
  const std::string path = desk.table("half.csv",
                                      "Callsign,Channel,Latitude,Longitude\n"
                                      "QAAA,23,44.5,-100\nQAAB,24,north,-100\nQAAC,25,?,-101\n");
  const IntakeAnswer answer = ask(desk.answerer(), look_at(path));
  REQUIRE(answer.look);
  CHECK(answer.look->known_by.find("latitude") != std::string::npos);
  CHECK(answer.look->trouble.empty());
  CHECK(answer.look->sample.size() == 1);
  CHECK(answer.look->rejected == 2);
  CHECK(answer.look->first_rejected.front().line == 3);
}

TEST_CASE("a table with swapped columns shows both readings on maps") {
  const Desk desk;
  const std::string path = desk.table(
      "swapped.csv", kHeader + "QAAA,ATSC,9,-80,40.5\nQAAB,ATSC,9,-81,41\nQAAC,ATSC,9,-79.5,40\n");
  const IntakeAnswer answer = ask(desk.answerer(), look_at(path));
  REQUIRE(answer.look);
  REQUIRE(answer.look->suspicion);
  CHECK(answer.look->suspicion->other == CoordinateReading::swapped);
  REQUIRE(answer.look->sample_other.size() == 3);
  CHECK(answer.look->sample_other[0].position.longitude_deg() == Approx(-80.0));
  CHECK(answer.look->map);
  CHECK(answer.look->map_other);
  const std::string right = desk.table("right.csv", kHeader +
                                                        "QAAA,ATSC,9,40.5,-80\n"
                                                        "QAAB,ATSC,9,41,-81\n"
                                                        "QAAC,ATSC,9,40,-79.5\n");
  CHECK_FALSE(ask(desk.answerer(), look_at(right)).look->suspicion);
}

TEST_CASE("a table of programs is known by common headers, and its columns are shown") {
  const Desk desk;
  const std::string path = desk.table("programs.csv", "callsign,virtual\nQAAB,6.1\n");
  const IntakeAnswer answer = ask(desk.answerer(), look_at(path));
  REQUIRE(answer.look);
  CHECK(answer.look->reading.kind == TableReading::Kind::Programs);
  CHECK(answer.look->reading.programs.virtual_channel == "virtual");
  REQUIRE(answer.look->programs.size() == 1);
  const std::string empty = desk.table("empty.csv", "");
  CHECK(ask(desk.answerer(), look_at(empty)).look->trouble.find("empty") != std::string::npos);
}
