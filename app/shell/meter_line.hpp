#pragma once

#include "app/shell/receiver_line.hpp"

#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>

namespace mastwise::shell {

// The connection to the signal meter of the settings: opened, and opened anew when another is
// chosen. Works like ReceiverLine.
class MeterLine {
 public:
  explicit MeterLine(std::function<void()> wake) : wake_(std::move(wake)) {}

  // Passes what has arrived to the session, follows the settings, and looks for meters while their
  // sheet is open; true if there was anything new.
  bool give_to(Session& session);
  // The name of the meter in use, empty without one. Any thread.
  std::string in_use();

 private:
  bool find_meters(Session& session);
  void follow(const std::string& name);

  std::function<void()> wake_;
  std::optional<Monotonic> looked_;
  std::mutex mutex_;  // of the name
  std::string name_;  // changed on the interface thread only
  NewsQueue news_;
  std::optional<platform::DeviceLink> link_;  // last: its thread uses all the others
};

}  // namespace mastwise::shell
