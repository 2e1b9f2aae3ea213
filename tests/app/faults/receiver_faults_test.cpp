#include "app/shell/receiver_line.hpp"
#include "tests/support/nmea_text.hpp"
#include "tests/support/receiver_epoch.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/stage.hpp"

#include <chrono>
#include <cmath>

#include <catch2/catch.hpp>
#include <fmt/format.h>

// Receivers that misbehave, seen by the whole app.
using namespace mastwise;
using platform::LinkNews;
using test::Stage;

namespace {

const Position kParkedAt = *Position::at_deg(42.51, -118.53);

LinkNews bytes_at(milliseconds when, std::string text) {
  return {LinkNews::Kind::bytes, std::move(text), Monotonic(when)};
}

void link_is(Stage& stage, Link::State state) {
  stage.session().act(act::LinkChanged{{.state = state, .name = "test"}});
}

// One second without drawing each frame.
void second_passes(Stage& stage, std::string_view bytes) {
  stage.receive(bytes);
  stage.late_round(milliseconds(1'000));
}

}  // namespace

TEST_CASE("a line that is lost every second for an hour loses neither the fix nor the app") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  const int seconds = test::kSanitized ? 200 : 3'600;
  int without_position = 0;
  std::size_t most_unsaved = 0;
  for (int second = 0; second < seconds; ++second) {
    link_is(stage, Link::State::Open);
    stage.session().act(act::ReceiverBytes{stage.now(), test::epoch(kParkedAt, second)});
    link_is(stage, Link::State::Lost);
    stage.late_round(milliseconds(1'000));
    if (!stage.model().findings.position) ++without_position;
    most_unsaved = std::max(most_unsaved, stage.model().unsaved.records);
  }
  CHECK(without_position == 0);
  CHECK(most_unsaved <= 1);
  CHECK(stage.model().receiver.counts().sentences_bad_checksum == 0);
  CHECK(stage.model().undo.size() <= kMostUndo);
  // Each loss is on the screen at once.
  CHECK(stage.model().link.state == Link::State::Lost);
}

TEST_CASE("the queue of a flood stays bounded while nobody takes it, and keeps the latest bytes") {
  shell::NewsQueue queue;
  queue.add({LinkNews::Kind::found, {}, Monotonic(milliseconds(1))});
  std::string all;
  std::size_t most_pieces = 0;
  // 30 s of 92,160 bytes each second, in the pieces that a read of that line gets.
  for (int ms = 1; ms <= 30'000; ++ms) {
    std::string text = fmt::format("{:091}\n", ms);
    all += text;
    queue.add(bytes_at(milliseconds(ms), std::move(text)));
    REQUIRE(queue.bytes() <= shell::NewsQueue::kMostBytes);
    most_pieces = std::max(most_pieces, queue.size());
  }
  CHECK(most_pieces < 250);
  std::string kept;
  Monotonic before{};
  const auto taken = queue.take();
  CHECK(taken.front().kind == LinkNews::Kind::found);
  for (const LinkNews& news : taken) {
    CHECK(news.when >= before);
    before = news.when;
    kept += news.text;
  }
  CHECK(kept.size() > shell::NewsQueue::kMostBytes - 10'000);
  CHECK(all.ends_with(kept));
  CHECK(queue.take().empty());
}

TEST_CASE("news of the link stay in their order among the bytes") {
  shell::NewsQueue queue;
  queue.add({LinkNews::Kind::found, {}, Monotonic(milliseconds(1))});
  queue.add(bytes_at(milliseconds(1), "a"));
  queue.add(bytes_at(milliseconds(40), "b"));
  queue.add(bytes_at(milliseconds(60), "c"));
  queue.add({LinkNews::Kind::lost, "unplugged", Monotonic(milliseconds(61))});
  queue.add({LinkNews::Kind::found, {}, Monotonic(milliseconds(62))});
  queue.add(bytes_at(milliseconds(62), "d"));
  std::vector<std::string> texts;
  for (const LinkNews& news : queue.take()) texts.push_back(news.text);
  CHECK(texts == std::vector<std::string>{"", "ab", "c", "unplugged", "", "d"});
}

TEST_CASE("the whole app keeps up with a flood of 92 kB a second") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  link_is(stage, Link::State::Open);
  // An epoch is repeated within its second, as a receiver at a high rate would send it.
  const int seconds = test::kSanitized ? 2 : 10;
  std::size_t sentences = 0, bytes = 0;
  std::chrono::duration<double> busy{0.0};
  for (int second = 0; second < seconds; ++second) {
    shell::NewsQueue queue;
    std::string epoch;
    const std::string one = test::epoch(kParkedAt, second);
    while (epoch.size() < 92'160) epoch += one;
    sentences += static_cast<std::size_t>(std::count(epoch.begin(), epoch.end(), '\n'));
    bytes += epoch.size();
    for (std::size_t at = 0; at < epoch.size(); at += 92) {
      queue.add(
          bytes_at(stage.now().time_since_epoch() + milliseconds(at / 93), epoch.substr(at, 92)));
    }
    const auto began = std::chrono::steady_clock::now();
    for (LinkNews& news : queue.take()) {
      stage.session().act(act::ReceiverBytes{news.when, std::move(news.text)});
    }
    busy += std::chrono::steady_clock::now() - began;
    stage.late_round(milliseconds(1'000));
  }
  const double a_second = static_cast<double>(sentences) / busy.count();
  WARN("the app takes " << a_second << " sentences a second, "
                        << static_cast<double>(bytes) / busy.count() / 1'000.0 << " kB/s");
  CHECK(stage.model().receiver.counts().sentences_bad_checksum == 0);
  REQUIRE(stage.model().findings.position);
  CHECK(std::fabs(stage.model().findings.position->latitude_deg() - 42.51) < 1e-4);
  // Sentences that arrive within a second take less than a second, with room for the screen.
  if (!test::kSanitized) CHECK(busy.count() < 0.5 * seconds);
}

TEST_CASE("of two receivers on one line with different positions one is used, without jumps") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  link_is(stage, Link::State::Open);
  const auto sentence = [](const char* talker, int second, const char* latitude) {
    return test::sentence(fmt::format("{}RMC,1200{:02}.00,A,{},N,11831.8000,W,0.0,,020736,,,A",
                                      talker, second, latitude));
  };
  for (int second = 0; second < 40; ++second) {
    // A plotter repeats a place 50 km away.
    second_passes(stage, sentence("II", second, "4300.0000") + sentence("GP", second, "4230.6000"));
    REQUIRE(stage.model().findings.position);
    CHECK(std::fabs(stage.model().findings.position->latitude_deg() - 43.0) < 1e-3);
  }
  CHECK_FALSE(stage.model().safety.drive == safety::Drive::Alarm);
  CHECK(stage.model().findings.speed_kmh.value_or(0.0) < 1.0);
}

TEST_CASE("a receiver whose time stands still goes stale on the screen") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  link_is(stage, Link::State::Open);
  for (int second = 0; second < 6; ++second) second_passes(stage, test::epoch(kParkedAt, second));
  REQUIRE(stage.model().findings.position);
  CHECK_FALSE(stage.model().findings.position_stale);
  for (int second = 0; second < 10; ++second) second_passes(stage, test::epoch(kParkedAt, 5));
  CHECK(stage.model().findings.position_stale);
}

TEST_CASE("a receiver 1,024 weeks behind gets its date back, and the shift is shown") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  link_is(stage, Link::State::Open);
  // 1,024 weeks before 2 July 2036 [IS-GPS-200, 20.3.3.3.1.1].
  const std::chrono::sys_days real{std::chrono::year(2036) / 7 / 2};
  const std::chrono::year_month_day said(real - std::chrono::weeks(1'024));
  for (int second = 0; second < 6; ++second) {
    second_passes(
        stage, test::sentence(fmt::format(
                   "GPRMC,1200{:02}.00,A,4230.6000,N,11831.8000,W,0.0,,{:02}{:02}{:02},,,A", second,
                   static_cast<unsigned>(said.day()), static_cast<unsigned>(said.month()),
                   int(said.year()) % 100)));
  }
  REQUIRE(stage.model().receiver.date());
  CHECK(stage.model().receiver.date()->date == real);
  CHECK(stage.model().receiver.date()->weeks_shifted == 1'024);
  CHECK(std::chrono::floor<std::chrono::days>(stage.model().findings.date) == real);
  stage.set(act::Show{Place::Here});
  stage.settle();
  stage.set(act::OpenSheet{Sheet::Position});
  CHECK(stage.shows_within("1024"));
}
