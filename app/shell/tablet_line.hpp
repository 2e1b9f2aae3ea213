#pragma once

#include "app/shell/receiver_line.hpp"

#include <functional>
#include <optional>
#include <string>

namespace mastwise::shell {

// What the session needs of the tablet's own sensors at the moment.
enum class TabletNeed {
  nothing,
  motion,   // whether the rig moves, told once a second
  heading,  // eight times a second, with the magnetometer
};
TabletNeed tablet_need(const Model& model);

// The connection to the tablet's own sensors, open only while something needs them. Works like
// ReceiverLine.
class TabletLine {
 public:
  // `root`: the folder that contains sys, for tests.
  explicit TabletLine(std::function<void()> wake, std::string root = "/")
      : wake_(std::move(wake)), root_(std::move(root)) {}

  // Passes what has arrived to the session, and follows its need; true if there was anything new.
  bool give_to(Session& session);

 private:
  void follow(TabletNeed need, Session& session);

  std::function<void()> wake_;
  std::string root_;
  TabletNeed need_ = TabletNeed::nothing;
  NewsQueue news_;
  std::optional<platform::DeviceLink> link_;  // last: its thread uses all the others
};

}  // namespace mastwise::shell
