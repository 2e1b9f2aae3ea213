#include "platform/device_link.hpp"

#include "platform/clock.hpp"
#include "platform/frames.hpp"

#include <algorithm>
#include <array>

namespace mastwise::platform {

DeviceLink::DeviceLink(OpenSource open, std::function<void(LinkNews)> deliver, LinkTiming timing)
    : open_(std::move(open)),
      deliver_(std::move(deliver)),
      timing_(timing),
      retry_after_(timing.first_retry),
      thread_(has_device_threads() ? std::thread([this] { run(); }) : std::thread()) {}

void DeviceLink::stop() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  stop_wanted_.notify_all();
  if (thread_.joinable()) thread_.join();
}

void DeviceLink::run() {
  Outcome outcome = Outcome::lost;
  while (outcome == Outcome::lost && !is_stopping()) {
    const auto source = open_();
    if (source) {
      outcome = listen(**source);
    } else {
      lose(source.error());
    }
    if (outcome == Outcome::lost && !wait_for_retry()) return;
  }
  if (outcome == Outcome::ended) tell(LinkNews::Kind::ended, {});
}

DeviceLink::Outcome DeviceLink::listen(ByteSource& source) {
  found_ = false;
  while (!is_stopping()) {
    if (const auto outcome = hear(source, timing_.read_timeout)) return *outcome;
  }
  return Outcome::stopped;
}

// One read; empty to go on.
std::optional<DeviceLink::Outcome> DeviceLink::hear(ByteSource& source, milliseconds timeout) {
  std::array<char, 4096> bytes;
  const auto chunk = source.read(bytes, timeout);
  if (!chunk) {
    lose(chunk.error());
    return Outcome::lost;
  }
  if (chunk->size > 0) {
    if (!found_) tell(LinkNews::Kind::found, source.name());
    found_ = true;
    lost_because_.clear();
    retry_after_ = timing_.first_retry;
    tell(LinkNews::Kind::bytes, std::string(bytes.data(), chunk->size));
  }
  if (chunk->ended) return Outcome::ended;
  return std::nullopt;
}

void DeviceLink::turn() {
  const Monotonic now = monotonic_now();
  if (thread_.joinable() || stopping_ || now < next_turn_) return;
  std::optional<Outcome> outcome;
  if (in_turn_) {
    outcome = hear(*in_turn_, milliseconds(0));
  } else if (auto source = open_()) {
    in_turn_ = *std::move(source);
    found_ = false;
  } else {
    lose(source.error());
    outcome = Outcome::lost;
  }
  if (!outcome) return;
  in_turn_.reset();
  if (*outcome == Outcome::ended) {
    stopping_ = true;
    tell(LinkNews::Kind::ended, {});
    return;
  }
  next_turn_ = now + retry_after_;
  retry_after_ = std::min(2 * retry_after_, timing_.longest_retry);
}

void DeviceLink::lose(const Error& error) {
  if (error.message() == lost_because_) return;
  lost_because_ = error.message();
  tell(LinkNews::Kind::lost, lost_because_);
}

// False to stop instead.
bool DeviceLink::wait_for_retry() {
  std::unique_lock lock(mutex_);
  const bool stopped = stop_wanted_.wait_for(lock, retry_after_, [this] { return stopping_; });
  retry_after_ = std::min(2 * retry_after_, timing_.longest_retry);
  return !stopped;
}

bool DeviceLink::is_stopping() {
  const std::lock_guard lock(mutex_);
  return stopping_;
}

void DeviceLink::tell(LinkNews::Kind kind, std::string text) {
  deliver_(LinkNews{kind, std::move(text), monotonic_now()});
}

}  // namespace mastwise::platform
