#pragma once

#include "app/shell/session.hpp"
#include "platform/device_link.hpp"

#include <memory>
#include <mutex>
#include <string>
#include <vector>

namespace mastwise::shell {

// The receiver as the program sees it: the link's thread puts its news into a queue, the interface
// thread takes them out as actions.
class ReceiverLine {
 public:
  // `device`: a serial device, HOST:PORT, or a log file (played as a line of 4800 baud would);
  // nothing looks for whichever serial device speaks. `wake` is called from the link's thread.
  ReceiverLine(const std::optional<std::string>& device, std::function<void()> wake);

  // Gives all that has come to the session, in order; true when there was something.
  bool give_to(Session& session);

 private:
  std::string name_;
  std::function<void()> wake_;
  std::mutex mutex_;
  std::vector<platform::LinkNews> news_;
  platform::DeviceLink link_;  // last: its thread uses all the others
};

}  // namespace mastwise::shell
