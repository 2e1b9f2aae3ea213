#include "core/nmea/log_replay.hpp"

#include "core/nmea/sentences.hpp"

#include <algorithm>

namespace mastwise::nmea {
namespace {

constexpr milliseconds kLineStep{10};
constexpr milliseconds kClockWasSet = std::chrono::seconds(1);
constexpr milliseconds kLongestGap = std::chrono::hours(1);

// The clock of a log: see replay_log.
class LogClock {
 public:
  Monotonic read_line(std::string_view line) {
    now_ += kLineStep;
    framer_.feed(line, [&](std::string_view sentence) {
      const auto report = read_sentence(sentence);
      if (report && report->time) show(*report->time);
    });
    return now_;
  }

 private:
  void show(TimeOfDay time) {
    if (shown_ && time == *shown_) return;
    if (shown_) {
      const milliseconds ahead = (time - *shown_ + kOneDay) % kOneDay;
      now_ = std::max(now_, shown_at_ + (ahead <= kLongestGap ? ahead : kClockWasSet));
    }
    shown_ = time;
    shown_at_ = now_;
  }

  Framer framer_;
  Monotonic now_{};
  std::optional<TimeOfDay> shown_;
  Monotonic shown_at_{};
};

}  // namespace

LogReplay replay_log(std::string_view bytes, sys_days date_floor,
                     const std::function<void(const Receiver&, Monotonic)>& hear) {
  LogReplay replay{Receiver(date_floor), {}, {}, {}, {}};
  LogClock clock;
  Monotonic now{};
  const auto play = [&](std::string_view line) {
    now = clock.read_line(line);
    replay.receiver.feed(line, now);
    const Fix fix = replay.receiver.fix(now);
    if (fix.good()) replay.last_good = fix;
    if (hear) hear(replay.receiver, now);
  };
  while (!bytes.empty()) {
    const std::size_t line_end = bytes.find('\n');
    const std::size_t size = line_end == std::string_view::npos ? bytes.size() : line_end + 1;
    play(bytes.substr(0, size));
    bytes.remove_prefix(size);
    if (line_end == std::string_view::npos) play("\n");
  }
  replay.at_end = replay.receiver.fix(now);
  replay.heading = replay.receiver.heading(now);
  replay.duration = now.time_since_epoch();
  return replay;
}

}  // namespace mastwise::nmea
