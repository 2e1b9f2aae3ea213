#include "core/nmea/log_replay.hpp"

#include "core/nmea/sentences.hpp"

#include <algorithm>

namespace mastwise::nmea {
namespace {

constexpr milliseconds kStep{10};
constexpr milliseconds kClockWasSet = std::chrono::seconds(1);
constexpr milliseconds kLongestGap = std::chrono::hours(1);

// The clock of a log: see replay_log.
class LogClock {
 public:
  Monotonic read(std::string_view piece) {
    now_ += kStep;
    framer_.feed(piece, [&](std::string_view sentence) {
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

// The length up to where the first sentence ends, see Framer, so that none is heard together with
// the one that takes it back.
std::size_t length_of_first(std::string_view bytes) {
  const bool begins = bytes.front() == '$' || bytes.front() == '!';
  const std::size_t end = bytes.find_first_of("\r\n$!", begins ? 1 : 0);
  if (end == std::string_view::npos) return bytes.size();
  return end + (bytes.substr(end, 2) == "\r\n" ? 2 : 1);
}

}  // namespace

LogReplay replay_log(std::string_view bytes, sys_days date_floor,
                     const std::function<void(const Receiver&, Monotonic)>& hear) {
  LogReplay replay{Receiver(date_floor), {}, {}, {}, {}};
  LogClock clock;
  Monotonic now{};
  const auto play = [&](std::string_view piece) {
    now = clock.read(piece);
    replay.receiver.feed(piece, now);
    const Fix fix = replay.receiver.fix(now);
    if (fix.good()) replay.last_good = fix;
    if (hear) hear(replay.receiver, now);
  };
  const bool ends = bytes.empty() || bytes.back() == '\n' || bytes.back() == '\r';
  while (!bytes.empty()) {
    const std::size_t length = length_of_first(bytes);
    play(bytes.substr(0, length));
    bytes.remove_prefix(length);
  }
  if (!ends) play("\n");
  replay.at_end = replay.receiver.fix(now);
  replay.heading = replay.receiver.heading(now);
  replay.duration = now.time_since_epoch();
  return replay;
}

}  // namespace mastwise::nmea
