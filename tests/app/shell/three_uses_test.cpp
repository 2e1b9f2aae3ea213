#include "core/catalog/catalog.hpp"
#include "core/import/import_csv.hpp"
#include "platform/files.hpp"
#include "tests/support/receiver_log.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/stage.hpp"

#include <cmath>

#include <GeographicLib/Geodesic.hpp>
#include <GeographicLib/MagneticModel.hpp>
#include <catch2/catch.hpp>

// Three uses from the first frame to the result, through finger events, with the number of taps.
using namespace mastwise;
using test::Stage;

namespace {

constexpr double kBearingMarginDeg = 1e-4;  // the mean of some positions within a meter or two
constexpr int kMorning = 36'000;            // seconds of the day

struct Expected {
  double bearing_true_deg, bearing_magnetic_deg, distance_m;
};

double folded(double degrees) {
  const double rest = std::fmod(degrees, 360.0);
  return rest < 0.0 ? rest + 360.0 : rest;
}

// The heading by GeographicLib alone, without Mastwise's core.
Expected expected(double latitude_deg, double longitude_deg, const Position& to, double year) {
  Expected result{};
  double azimuth_deg = 0.0, azimuth_there_deg = 0.0;
  GeographicLib::Geodesic::WGS84().Inverse(latitude_deg, longitude_deg, to.latitude_deg(),
                                           to.longitude_deg(), result.distance_m, azimuth_deg,
                                           azimuth_there_deg);
  const GeographicLib::MagneticModel model("wmm2025", platform::assets_folder() + "/magnetic");
  double east = 0.0, north = 0.0, up = 0.0;
  model(year, latitude_deg, longitude_deg, 0.0, east, north, up);
  double horizontal = 0.0, total = 0.0, declination_deg = 0.0, inclination_deg = 0.0;
  GeographicLib::MagneticModel::FieldComponents(east, north, up, horizontal, total, declination_deg,
                                                inclination_deg);
  result.bearing_true_deg = folded(azimuth_deg);
  result.bearing_magnetic_deg = folded(azimuth_deg - declination_deg);
  return result;
}

double year_of(std::chrono::sys_days day) {
  const std::chrono::year_month_day date{day};
  const std::chrono::sys_days begin{date.year() / 1 / 1};
  return static_cast<int>(date.year()) +
         static_cast<double>((day - begin).count()) / (date.year().is_leap() ? 366.0 : 365.0);
}

std::chrono::sys_days receivers_day() {
  return service::build_date() + std::chrono::days(2);
}

void check_aim(const Stage& stage, const Expected& wanted) {
  REQUIRE(stage.model().findings.card);
  const AimCard& card = *stage.model().findings.card;
  CHECK(card.bearing_magnetic.degrees() ==
        Approx(wanted.bearing_magnetic_deg).margin(kBearingMarginDeg));
  CHECK(card.bearing_true.degrees() == Approx(wanted.bearing_true_deg).margin(kBearingMarginDeg));
  INFO(stage.all_text());
  CHECK(stage.shows(fmt::format("{}°", std::lround(wanted.bearing_magnetic_deg) % 360)));
  CHECK(stage.shows_within("magnetic"));
  CHECK(stage.shows_within(fmt::format("{}° true", std::lround(wanted.bearing_true_deg) % 360)));
}

// A receiver on a parked rig: each second one epoch within two meters of the place.
class ParkedReceiver {
 public:
  ParkedReceiver(Stage& stage, const Position& place) : stage_(stage), place_(place) {}

  void play(int seconds) {
    constexpr double kStepDeg = 4e-6;  // 0.4 m
    for (int i = 0; i < seconds; ++i, ++played_) {
      const double north = (played_ % 3 - 1) * kStepDeg, east = (played_ % 5 - 2) * kStepDeg;
      const auto position =
          Position::at_deg(place_.latitude_deg() + north, place_.longitude_deg() + east);
      latitude_sum_ += position->latitude_deg();
      longitude_sum_ += position->longitude_deg();
      stage_.receive(test::epoch(kMorning + played_, *position));
      stage_.wait(milliseconds(1000));
    }
  }
  double latitude_deg() const { return latitude_sum_ / played_; }
  double longitude_deg() const { return longitude_sum_ / played_; }

 private:
  Stage& stage_;
  Position place_;
  int played_ = 0;
  double latitude_sum_ = 0.0, longitude_sum_ = 0.0;
};

std::string row_of(const Station& station) {
  return "station " + station.call_sign + " " + station.id;
}

const Station& listed(const Stage& stage, const std::string& call_sign) {
  REQUIRE(stage.model().stations);
  for (const StationRow& row : stage.model().stations->rows) {
    if (row.station.call_sign == call_sign) return row.station;
  }
  FAIL("no " << call_sign << " in the list");
  return stage.model().stations->rows.front().station;
}

// A Mastwise station table with stations around a place, as a user's catalog.
void fill_catalog(const std::string& path, double latitude_deg, double longitude_deg) {
  std::string csv = "call_sign,raster,rf_channel,latitude_deg,longitude_deg,haat_m\n";
  struct Around {
    const char* call_sign;
    int rf_channel;
    double azimuth_deg, distance_m;
  };
  for (const Around& one : {Around{"QAAA", 21, 62.0, 41'000.0}, Around{"QBBB", 30, 205.5, 18'000.0},
                            Around{"QCCC", 36, 341.0, 77'000.0}}) {
    double latitude = 0.0, longitude = 0.0;
    GeographicLib::Geodesic::WGS84().Direct(latitude_deg, longitude_deg, one.azimuth_deg,
                                            one.distance_m, latitude, longitude);
    csv += fmt::format("{},ATSC,{},{:.7f},{:.7f},300\n", one.call_sign, one.rf_channel, latitude,
                       longitude);
  }
  const auto table = read_station_csv(csv, {.name = "invented stations"});
  REQUIRE(table);
  REQUIRE(table->rejected.empty());
  auto catalog = Catalog::open(path);
  REQUIRE(catalog);
  REQUIRE(catalog->replace_source(*table));
}

}  // namespace

TEST_CASE("a station tapped on the dash tablet while the GPS log plays: 3 taps in practice") {
  Stage stage;
  const auto place = Position::at_deg(42.503, -118.497);
  ParkedReceiver receiver(stage, *place);
  receiver.play(3);
  stage.tap("use receiver");
  receiver.play(2);
  stage.tap("place Stations");
  receiver.play(2);
  const Station station = listed(stage, "QCFB");
  CHECK(stage.shows_within("PRACTICE"));
  stage.tap(row_of(station));
  receiver.play(2);

  CHECK(stage.model().place == Place::Aim);
  CHECK(stage.model().stop.target == station);
  CHECK(std::chrono::floor<std::chrono::days>(stage.model().findings.date) == receivers_day());
  check_aim(stage, expected(receiver.latitude_deg(), receiver.longitude_deg(), station.position,
                            year_of(receivers_day())));
  CHECK(stage.shows_within("PRACTICE"));
  CHECK(stage.taps() == 3);
}

TEST_CASE("a station tapped on the dash tablet while a real receiver's log plays: 2 taps") {
  const auto log = test::reference("nmea/bu353s4.log");
  if (!log) return;
  test::TemporaryFolder folder;
  // 37 deg 47.0873' S, 175 deg 18.8938' E: the log's first line.
  const double latitude_deg = -(37.0 + 47.0873 / 60.0), longitude_deg = 175.0 + 18.8938 / 60.0;
  fill_catalog(folder.file("catalog"), latitude_deg, longitude_deg);
  Stage stage(test::kTablet, folder.path());
  REQUIRE_FALSE(stage.model().stop.practice);

  const auto lines = test::read_lines(*log);
  std::size_t next = 0;
  std::map<std::string, std::pair<double, double>> positions;  // by epoch, read by the test itself
  const auto degrees = [](const std::string& text, std::size_t digits) {
    return std::stod(text.substr(0, digits)) + std::stod(text.substr(digits)) / 60.0;
  };
  const auto play = [&](std::size_t count) {
    for (const std::size_t end = next + count; next < std::min(end, lines.size()); ++next) {
      const auto fields = test::split(lines[next], ',');
      const bool begins_second = fields[0] == "$GPGGA";
      if (begins_second) {
        stage.wait(milliseconds(1000));
        positions[fields[1]] = {-degrees(fields[2], 2), degrees(fields[4], 3)};
      }
      stage.receive(lines[next] + "\r\n");
    }
    stage.settle();
  };
  play(30);
  stage.tap("place Stations");
  play(15);
  const Station station = listed(stage, "QBBB");
  stage.tap(row_of(station));
  play(lines.size());

  double latitude_sum = 0.0, longitude_sum = 0.0;
  for (const auto& [time, position] : positions) {
    latitude_sum += position.first;
    longitude_sum += position.second;
  }
  const auto count = static_cast<double>(positions.size());
  // The log's date is 31 December 2014, before the build date: one era of 1024 weeks later.
  const std::chrono::sys_days day =
      std::chrono::sys_days(std::chrono::year(2014) / 12 / 31) + std::chrono::days(1024 * 7);
  CHECK(std::chrono::floor<std::chrono::days>(stage.model().findings.date) == day);
  check_aim(stage,
            expected(latitude_sum / count, longitude_sum / count, station.position, year_of(day)));
  CHECK(stage.shows_within("The magnetic model ended"));
  CHECK_FALSE(stage.shows_within("PRACTICE"));
  CHECK(stage.taps() == 2);
}

TEST_CASE("the roof: the heading sensor's log turns the dial to the target: 4 taps") {
  Stage stage;
  stage.tap("place Aim");
  CHECK(stage.targets().find("dial up sensor") == nullptr);
  stage.receive(test::sentence("HEHDT,123.40,T"));
  stage.round();
  stage.tap("dial up sensor");

  stage.tap("raise");
  CHECK(stage.model().safety.asking == Asking::Raise);
  CHECK(stage.model().safety.antenna == safety::Antenna::Down);
  CHECK(stage.shows_within("10 ft"));
  stage.confirm();
  CHECK(stage.model().safety.antenna == safety::Antenna::Raised);
  CHECK(stage.taps() == 4);

  const double target_deg = stage.model().findings.card->bearing_true.degrees();
  double left_deg = 100.0;
  for (int step = 0; step <= 50; ++step) {
    const double facing_deg = folded(target_deg - 100.0 + 2.0 * step);
    stage.receive(test::sentence(fmt::format("HEHDT,{:.2f},T", facing_deg)));
    stage.round();
    if (step > 0) CHECK(stage.moving());  // the dial follows smoothly
    stage.wait(milliseconds(200));
    REQUIRE(stage.model().findings.turn);
    const double now_left_deg = stage.model().findings.turn->clockwise_deg();
    CHECK(now_left_deg == Approx(100.0 - 2.0 * step).margin(0.006));
    CHECK(now_left_deg <= left_deg);
    left_deg = now_left_deg;
    INFO(stage.all_text());
    if (step < 50) {
      CHECK(stage.shows_within("Turn right"));
      CHECK(stage.shows(fmt::format("{}°", 100 - 2 * step)));
    }
  }
  CHECK(stage.shows_within("On target"));
  CHECK_FALSE(stage.moving());

  // Beyond it the target is to the left.
  stage.receive(test::sentence(fmt::format("HEHDT,{:.2f},T", folded(target_deg + 12.0))));
  stage.settle();
  CHECK(stage.shows_within("Turn left"));
  CHECK(stage.shows("12°"));

  // A silent sensor shows no direction.
  stage.wait(milliseconds(3000));
  CHECK_FALSE(stage.model().findings.turn);
  CHECK_FALSE(stage.shows_within("Turn left"));
}

TEST_CASE("a magnetic sensor is corrected by the declination here") {
  Stage stage;
  stage.tap("place Aim");
  const double magnetic_deg = stage.model().findings.card->bearing_magnetic.degrees();
  // The sensor's setting, 3 degrees west, is from another place and must not be used.
  stage.receive(test::sentence(fmt::format("HCHDG,{:.1f},0.0,E,3.0,W", folded(magnetic_deg - 40))));
  stage.settle();
  REQUIRE(stage.model().findings.turn);
  CHECK(stage.model().findings.turn->clockwise_deg() == Approx(40.0).margin(0.051));
  CHECK(stage.shows("40°"));
  stage.receive(test::sentence(fmt::format("HCHDG,{:.1f},0.0,E,3.0,W", magnetic_deg)));
  stage.settle();
  CHECK(stage.shows_within("On target"));
}

TEST_CASE("the heading of a real sensor's log reaches the dial") {
  struct Log {
    const char* name;
    double last_heading_deg;  // of the log's last heading sentence with a value, read by eye
  };
  for (const Log& log : {Log{"nmea/saab-r4.log", 4.1}, Log{"nmea/hemi.log", 274.11}}) {
    const auto path = test::reference(log.name);
    if (!path) return;
    Stage stage;
    stage.tap("place Aim");
    for (const std::string& line : test::read_lines(*path)) stage.receive(line + "\r\n");
    stage.settle();
    INFO(log.name);
    REQUIRE(stage.model().findings.facing);
    CHECK(stage.model().findings.facing->degrees() == log.last_heading_deg);
    CHECK(stage.shows_within("now "));
  }
}

TEST_CASE("the raise prompt appears once for each raise") {
  Stage stage;
  stage.tap("place Aim");
  for (int raising = 0; raising < 3; ++raising) {
    stage.tap("raise");
    CHECK(stage.model().safety.asking == Asking::Raise);
    CHECK(stage.model().safety.antenna == safety::Antenna::Down);
    stage.tap("refuse");
    CHECK(stage.model().safety.antenna == safety::Antenna::Down);
    stage.tap("raise");
    CHECK(stage.shows_within("before you raise the antenna"));
    stage.confirm();
    CHECK(stage.model().safety.antenna == safety::Antenna::Raised);
    CHECK(stage.model().safety.asking == Asking::Nothing);
    CHECK(stage.targets().find("raise") == nullptr);
    stage.tap("lower");
    CHECK(stage.shows_within("Before you drive off"));
    stage.tap("refuse");
    CHECK(stage.model().safety.antenna == safety::Antenna::Raised);
    stage.tap("lower");
    stage.confirm();
    CHECK(stage.model().safety.antenna == safety::Antenna::Down);
  }
}

TEST_CASE("the GPS falls silent and coordinates are typed by keypad: 24 taps with a slip") {
  Stage stage;
  const auto parked = Position::at_deg(42.5, -118.5);
  ParkedReceiver receiver(stage, *parked);
  receiver.play(5);
  stage.tap("use receiver");
  receiver.play(2);
  const Position before = *stage.model().findings.position;
  CHECK_FALSE(stage.model().findings.position_stale);

  // 3 s after the last position the screen shows it and keeps the place.
  stage.wait(milliseconds(1900));
  CHECK_FALSE(stage.model().findings.position_stale);
  stage.wait(milliseconds(300));
  CHECK(stage.model().findings.position_stale);
  CHECK(stage.model().findings.position == before);
  INFO(stage.all_text());
  CHECK(stage.shows_within("GPS silent"));
  stage.tap("place Aim");
  CHECK(stage.shows_within("The receiver is silent"));
  CHECK(stage.model().findings.card);

  stage.tap("place Here");
  stage.tap("type position");
  stage.tap_keys("42.51,-118.4.9");
  stage.tap("key Use it");
  REQUIRE(stage.model().keypad);
  REQUIRE(stage.model().keypad->error);
  // The second decimal point of the longitude is the error.
  CHECK(stage.model().keypad->error->character == 12);
  CHECK(stage.model().keypad->text == "42.51,-118.4.9");
  CHECK(stage.model().findings.position == before);
  CHECK(stage.shows("42.51,-118.4.9"));

  stage.tap("key Erase");
  CHECK_FALSE(stage.model().keypad->error);
  stage.tap("key Erase");
  stage.tap_keys("9");
  CHECK(stage.shows_within("42°30.6000′N 118°29.4000′W"));  // repeated before use
  stage.tap("key Use it");
  CHECK_FALSE(stage.model().keypad);
  CHECK(stage.model().findings.position == *Position::at_deg(42.51, -118.49));
  CHECK_FALSE(stage.model().findings.position_stale);
  stage.tap("place Aim");
  check_aim(stage, expected(42.51, -118.49, stage.model().stop.target->position,
                            year_of(receivers_day())));
  CHECK_FALSE(stage.shows_within("The receiver is silent"));
  CHECK(stage.taps() == 24);

  // Undo reverts it.
  stage.tap("take back");
  CHECK(stage.model().stop.source == PositionSource::Receiver);
}
