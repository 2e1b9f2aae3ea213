#include "platform/device_link.hpp"
#include "platform/meter_source.hpp"
#include "tests/support/link_news.hpp"
#include "tests/support/nmea_text.hpp"
#include "tests/support/pty.hpp"
#include "tests/support/stage.hpp"

#include <cmath>
#include <string>

#include <catch2/catch.hpp>
#include <fmt/core.h>

// A sweep that reads itself, from two real pseudo-terminals to the screen: a heading sensor on one
// line, a meter on the other. The test says when each piece arrived, so that it needs no minute.
using namespace mastwise;
using namespace std::chrono_literals;
using test::Stage;

namespace {

constexpr platform::LinkTiming kWalkHurry{5ms, 20ms, 5ms};

class Wire {
 public:
  enum class Kind { sensor, meter };
  explicit Wire(Kind kind)
      : link_(kind == Kind::meter
                  ? platform::serial_meter_source(pty_.path(), {4800}, 20s)
                  : platform::serial_source(pty_.path(), {.speeds = {4800}, .listen_for = 20s}),
              box_.deliver(), kWalkHurry) {}

  // What comes out at the other end.
  std::string through(const std::string& bytes) {
    REQUIRE(pty_.send(bytes));
    REQUIRE(box_.wait_for_bytes(passed_ + bytes.size()));
    const std::string out = box_.bytes().substr(passed_, bytes.size());
    passed_ += bytes.size();
    return out;
  }

 private:
  test::Pty pty_;
  test::NewsBox box_;
  std::size_t passed_ = 0;
  platform::DeviceLink link_;
};

// A person on the roof who turns the antenna. The sensor is mounted `askew_deg` to the right.
class Roof {
 public:
  Roof(Stage& stage, bool magnetic, double askew_deg)
      : stage_(stage), magnetic_(magnetic), askew_deg_(askew_deg) {
    const Findings& found = stage.model().findings;
    station_deg_ = found.card->bearing_true.degrees();
    declination_deg_ = found.field->declination.east_deg();
    antenna_deg_ = station_deg_ - 75.0;
    shown_db_ = settled_db();
  }

  void turn(double rate_dps, double seconds) {
    for (double passed = 0.0; passed < seconds; passed += 0.25) {
      stage_.late_round(250ms);
      antenna_deg_ += 0.25 * rate_dps;
      shown_db_ += (1.0 - std::exp(-0.25)) * (settled_db() - shown_db_);
      const double shown_deg = antenna_deg_ + askew_deg_ - (magnetic_ ? declination_deg_ : 0.0);
      const std::string degrees = fmt::format("{:.1f}", fold_circle_deg(shown_deg));
      const std::string sentence =
          magnetic_ ? "HCHDM," + degrees + ",M" : "HEHDT," + degrees + ",T";
      stage_.set(act::ReceiverBytes{stage_.now(), sensor_.through(test::sentence(sentence))});
      stage_.set(act::MeterBytes{stage_.now(),
                                 meter_.through(fmt::format("SNR {:.1f} dB\r\n", shown_db_))});
    }
    stage_.late_round(20ms);
  }

  double antenna_deg() const { return antenna_deg_; }
  double station_deg() const { return station_deg_; }

 private:
  double settled_db() const {
    const Sweep& sweep = *stage_.model().peak.sweep;
    const auto pattern = gear_of(stage_.model().settings.gear).antenna.in(sweep.band).pattern;
    return 24.0 + pattern.relative_db(Turn::clockwise_deg(antenna_deg_ - station_deg_));
  }

  Stage& stage_;
  bool magnetic_;
  double askew_deg_;
  double station_deg_ = 0.0, declination_deg_ = 0.0, antenna_deg_ = 0.0, shown_db_ = 0.0;
  Wire sensor_{Wire::Kind::sensor}, meter_{Wire::Kind::meter};
};

void begin_by_sensor(Stage& stage) {
  stage.tap("place Peak");
  stage.tap("turn by sensor");
  stage.tap("begin sweep");
}

}  // namespace

TEST_CASE("while the antenna turns, the curve grows by itself and the peak is found") {
  for (const bool magnetic : {false, true}) {
    INFO((magnetic ? "HDM" : "HDT"));
    Stage stage;
    begin_by_sensor(stage);
    CHECK(stage.targets().find("read") != nullptr);  // until both speak
    constexpr double kAskew_deg = 7.0;
    Roof roof(stage, magnetic, kAskew_deg);
    roof.turn(0.0, 1.0);
    CHECK(stage.shows("Turn slowly"));
    CHECK(stage.targets().find("read") == nullptr);
    const double fastest = stage.model().peak.sweep->live->fastest_dps();
    const double slowly = 0.6 * fastest;

    roof.turn(slowly, 50.0 / slowly);
    const std::size_t early = stage.model().peak.sweep->readings.size();
    CHECK(early >= 5);
    CHECK_FALSE(stage.model().peak.sweep->curve.empty());
    roof.turn(4.0 * fastest, 30.0 / (4.0 * fastest));
    CHECK(stage.shows("Too fast"));
    roof.turn(slowly, 50.0 / slowly);
    CHECK(stage.shows_within("Back "));
    roof.turn(-slowly, 110.0 / slowly);

    const Sweep& sweep = *stage.model().peak.sweep;
    CHECK(sweep.scale == aim::Scale::decibel);
    CHECK(sweep.readings.size() > early);
    REQUIRE(sweep.fit);
    const auto truth = Bearing<Dial>::degrees(roof.station_deg() + kAskew_deg);
    CHECK((sweep.fit->peak - truth).size_deg() < 3.0);
    CHECK(sweep.hint.advice == aim::LiveAdvice::peak);
    CHECK(stage.shows_within("Peak in "));

    // What was found corrects where the sensor points, and not the compass.
    const double compass_deg = stage.model().findings.card->bearing_magnetic.degrees();
    stage.tap("keep sweep");
    const Findings& found = stage.model().findings;
    REQUIRE(found.sensor_check);
    CHECK(found.sensor_check->off.clockwise_deg() == Approx(-kAskew_deg).margin(3.0));
    REQUIRE(found.facing);
    CHECK((*found.facing - Bearing<True>::degrees(roof.antenna_deg())).size_deg() < 3.0);
    CHECK(found.card->bearing_magnetic.degrees() == Approx(compass_deg).margin(1e-6));
  }
}

TEST_CASE("a meter that falls silent gives the keys back, and its readings stay") {
  Stage stage;
  begin_by_sensor(stage);
  Roof roof(stage, false, 0.0);
  roof.turn(3.0, 20.0);
  const auto readings = stage.model().peak.sweep->readings;
  REQUIRE(readings.size() >= 3);
  stage.wait(3500ms);
  CHECK(stage.targets().find("read") != nullptr);
  CHECK(stage.model().peak.sweep->readings == readings);
  stage.tap("read");
  CHECK(stage.model().peak.sweep->readings.size() == readings.size() + 1);
  roof.turn(3.0, 20.0);
  CHECK(stage.model().peak.sweep->readings.size() > readings.size() + 2);
  CHECK(stage.targets().find("read") == nullptr);
}

TEST_CASE("the meter is chosen by touch, shows its state, and fills in the number to read") {
  Stage stage;
  stage.tap("place Peak");
  stage.tap("meter line");
  CHECK(stage.model().sheet == Sheet::Meter);
  stage.set(act::MetersFound{{{"dvb:0.0", ""}, {"/dev/ttyQ0", "PRACTICE meter"}}});
  stage.settle();
  stage.tap("meter dvb:0.0");
  CHECK(stage.model().settings.meter == "dvb:0.0");
  CHECK(stage.shows("silent"));
  stage.set(act::MeterLinkChanged{{Link::State::Lost, "cannot open the tuner"}});
  stage.settle();
  CHECK(stage.shows("not connected"));
  CHECK(stage.shows_within("annot open the tuner"));
  stage.set(act::MeterLinkChanged{{Link::State::Open, "tuner"}});
  stage.set(act::MeterBytes{stage.now(), "what?\n"});
  stage.settle();
  CHECK(stage.shows("unreadable"));
  stage.set(act::MeterBytes{stage.now(), "QUALITY 63 %\n"});
  stage.settle();
  CHECK(stage.shows("63 %"));
  stage.tap("close sheet");
  stage.tap("begin sweep");
  stage.set(act::MeterBytes{stage.now(), "QUALITY 64 %\n"});
  stage.tap("read");
  CHECK(stage.model().peak.sweep->readings.at(0).value == 64.0);
  stage.tap("end sweep");
  stage.tap("meter line");
  stage.tap("meter by hand");
  CHECK(stage.model().settings.meter.empty());
}
