#pragma once

#include "app/shell/session.hpp"
#include "platform/device_link.hpp"

#include <memory>
#include <mutex>
#include <string>
#include <vector>

namespace mastwise::shell {

// The receiver's connection: the link's thread queues events, and the interface thread passes them
// on as actions.
class ReceiverLine {
 public:
  // `device`: a serial device, HOST:PORT, or a log file (played at 4800 baud); empty searches all
  // serial devices. The link's thread calls `wake`.
  ReceiverLine(const std::optional<std::string>& device, std::function<void()> wake);

  // Passes all received events to the session, in order; true if there were any.
  bool give_to(Session& session);

 private:
  std::string name_;
  bool recorded_;
  std::function<void()> wake_;
  std::mutex mutex_;
  std::vector<platform::LinkNews> news_;
  platform::DeviceLink link_;  // last: its thread uses all the others
};

}  // namespace mastwise::shell
