#pragma once

#include "core/time.hpp"
#include "platform/byte_source.hpp"

#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

namespace mastwise::platform {

// The news of a link. In order: "found", bytes, "lost", "found"...
struct LinkNews {
  enum class Kind {
    found,  // the first bytes since it was opened follow
    bytes,
    lost,   // it is being opened again; repeated when the reason changes
    ended,  // no more bytes follow, as at the end of a file; the link's thread has finished
  };
  Kind kind;
  std::string text;  // the bytes; for display, why it was lost or the name of what was found
  Monotonic when;    // by monotonic_now()
};

struct LinkTiming {
  milliseconds first_retry{250};     // after a loss; each further try waits twice as long,
  milliseconds longest_retry{2500};  // but no longer than this, until bytes arrive again
  milliseconds read_timeout{100};    // the longest wait of a stop
};

// Keeps a device open on a separate thread, as long as this object lives; where no thread can wait
// for a device, in turn().
//
// Threads: construct, stop and destroy on one thread, which is not the link's. Only the link's
// thread uses `open`, its sources and `deliver`; deliver passes its news to another thread, returns
// soon, throws nothing, and must not stop the link. After stop() has returned nothing is delivered.
class DeviceLink {
 public:
  DeviceLink(OpenSource open, std::function<void(LinkNews)> deliver, LinkTiming timing = {});
  ~DeviceLink() { stop(); }
  DeviceLink(const DeviceLink&) = delete;
  DeviceLink& operator=(const DeviceLink&) = delete;

  // Waits for the thread, up to the time of a read or a delivery. May be called again.
  void stop();

  // Without that thread it opens the device, or reads what has arrived, and never waits. With it
  // it does nothing.
  void turn();

 private:
  enum class Outcome { lost, ended, stopped };

  void run();
  Outcome listen(ByteSource& source);
  std::optional<Outcome> hear(ByteSource& source, milliseconds timeout);
  void lose(const Error& error);
  bool wait_for_retry();
  bool is_stopping();
  void tell(LinkNews::Kind kind, std::string text);

  OpenSource open_;
  std::function<void(LinkNews)> deliver_;
  LinkTiming timing_;
  milliseconds retry_after_;
  std::string lost_because_;             // empty while it is not lost
  bool found_ = false;                   // the source that is open has given bytes
  std::unique_ptr<ByteSource> in_turn_;  // the source, without threads
  Monotonic next_turn_{};                // not before this
  std::mutex mutex_;
  std::condition_variable stop_wanted_;
  bool stopping_ = false;
  std::thread thread_;  // last, as it uses all the others
};

}  // namespace mastwise::platform
