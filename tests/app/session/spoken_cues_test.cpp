#include "app/session/spoken_cues.hpp"

#include "app/aim/aimed.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

// A voice that takes a second and a half for a sentence and half a second for a number.
class Listener {
 public:
  explicit Listener(double tolerance_deg) {
    model_.safety.roof = true;
    model_.settings.speech = true;
    model_.findings.slack = Slack{.left_deg = tolerance_deg, .right_deg = tolerance_deg};
    turn(90.0);
  }

  Model& model() { return model_; }
  void turn(double degrees) { model_.findings.turn = Turn::clockwise_deg(degrees); }

  // Holds the antenna still.
  void wait(double seconds) {
    for (double passed = 0.0; passed < seconds; passed += kStep_s) step();
  }
  // Turns it at a pace until that much is left.
  void turn_to(double degrees, double pace_deg_per_s) {
    double left = model_.findings.turn->clockwise_deg();
    while (std::fabs(left - degrees) > 1e-6) {
      const double most = pace_deg_per_s * kStep_s;
      left += std::clamp(degrees - left, -most, most);
      turn(left);
      step();
    }
  }
  std::vector<std::string> take() { return std::exchange(heard_, {}); }
  // From the end of one to the begin of the next, the shortest, in seconds.
  double shortest_pause_s() const { return shortest_pause_s_; }

 private:
  static constexpr double kStep_s = 0.05;

  void step() {
    model_.now += milliseconds(50);
    const bool speaking = model_.now < busy_until_;
    const auto words = cues_.next(model_, speaking);
    if (!words) return;
    CHECK_FALSE(speaking);
    using Seconds = std::chrono::duration<double>;
    if (busy_until_ > Monotonic{}) {
      shortest_pause_s_ = std::min(shortest_pause_s_, Seconds(model_.now - busy_until_).count());
    }
    heard_.push_back(*words);
    busy_until_ = model_.now + milliseconds(words->size() > 4 ? 1'500 : 500);
  }

  Model model_{Shared{.receiver = nmea::Receiver(std::chrono::sys_days{})}};
  SpokenCues cues_;
  std::vector<std::string> heard_;
  Monotonic busy_until_{};
  double shortest_pause_s_ = 1e9;
};

using Words = std::vector<std::string>;

}  // namespace

TEST_CASE("the voice says the turn in full, then what is left, then there") {
  Listener listener(15.0);
  listener.turn(12.0 + 20.0);
  listener.wait(2.5);
  CHECK(listener.take() == Words{"Turn right, 32 degrees"});
  listener.turn_to(0.0, 6.0);
  listener.wait(3.0);
  const Words heard = listener.take();
  REQUIRE(heard.size() >= 2);
  CHECK(heard.back() == "There");
  int before = 32;
  for (std::size_t i = 0; i + 1 < heard.size(); ++i) {
    const int number = std::stoi(heard[i]);
    CHECK(std::to_string(number) == heard[i]);  // the number alone
    CHECK(number < before);
    before = number;
  }
  CHECK(listener.shortest_pause_s() >= 0.6);
}

TEST_CASE("still and on the heading, the voice says nothing more, for an hour") {
  Listener listener(15.0);
  listener.turn_to(0.0, 30.0);
  listener.wait(5.0);
  CHECK(listener.take().back() == "There");
  // The sensor's noise does not count.
  for (int second = 0; second < 3'600; ++second) {
    listener.turn(second % 2 == 0 ? 0.8 : -0.8);
    listener.wait(1.0);
  }
  CHECK(listener.take().empty());
}

TEST_CASE("still and off the heading, the voice reminds once and then waits") {
  Listener listener(15.0);
  listener.wait(300.0);
  CHECK(listener.take() == Words{"Turn right, 90 degrees", "Turn right, 90 degrees"});
}

TEST_CASE("noise at the edge of the tolerance does not make the voice chatter") {
  Listener listener(15.0);
  listener.model().findings.heading_error_deg = 3.0;  // 5.88 degrees in 95 of 100 cases
  const double edge_deg = 15.0 - aimed(listener.model())->doubt_deg;
  REQUIRE(edge_deg > 2.0);
  listener.turn_to(edge_deg - 0.5, 30.0);
  listener.wait(5.0);
  CHECK(listener.take().back() == "There");
  for (int second = 0; second < 600; ++second) {
    listener.turn(edge_deg + (second % 2 == 0 ? 0.9 : -0.9));
    listener.wait(1.0);
  }
  CHECK(listener.take().empty());
}

TEST_CASE("the voice says the side again after turning past or the wrong way") {
  Listener listener(6.0);
  listener.model().findings.heading_error_deg = 1.0;
  listener.turn(20.0);
  listener.wait(3.0);
  CHECK(listener.take() == Words{"Turn right, 20 degrees"});
  listener.turn_to(-15.0, 60.0);
  listener.wait(4.0);
  CHECK(listener.take().back() == "Turn left, 15 degrees");
  listener.turn_to(-40.0, 60.0);
  listener.wait(4.0);
  CHECK(listener.take().back() == "Turn left, 40 degrees");
}

TEST_CASE("the voice is silent without the setting, the roof or a sensor") {
  Listener listener(15.0);
  SECTION("setting") {
    listener.model().settings.speech = false;
  }
  SECTION("roof") {
    listener.model().safety.roof = false;
  }
  SECTION("sensor") {
    listener.model().findings.turn.reset();
    listener.model().now += milliseconds(50);
  }
  listener.wait(20.0);
  CHECK(listener.take().empty());
}

TEST_CASE("the alarm is spoken between its tones whatever the setting, but not while quieter") {
  Listener listener(15.0);
  listener.model().settings.speech = false;
  listener.model().safety.drive = safety::Drive::Alarm;
  listener.wait(24.0);
  const Words heard = listener.take();
  CHECK(heard.size() == 5);  // after 2 s, then every 5 s
  for (const std::string& words : heard) CHECK(words == "The antenna is up. Stop.");
  // The tone has at least twice the time of the words.
  CHECK(listener.shortest_pause_s() >= 3.0);
  listener.model().safety.quiet_until = listener.model().now + milliseconds(30'000);
  listener.wait(29.0);
  CHECK(listener.take().empty());
  listener.wait(8.0);
  CHECK(listener.take().size() >= 1);
}

TEST_CASE("the question about a moving rig is spoken once each time it comes up") {
  Listener listener(5.0);
  listener.model().safety.roof = false;
  listener.model().settings.speech = false;
  listener.wait(2.0);
  CHECK(listener.take().empty());
  for (int times = 0; times < 2; ++times) {
    listener.model().safety.asking = Asking::Moving;
    listener.wait(30.0);
    CHECK(listener.take() == std::vector<std::string>{"The rig seems to move. The antenna is up."});
    listener.model().safety.asking = Asking::Nothing;
    listener.wait(5.0);
    CHECK(listener.take().empty());
  }
}
