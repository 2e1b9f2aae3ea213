#pragma once

#include "core/time.hpp"
#include "platform/byte_source.hpp"

#include <condition_variable>
#include <functional>
#include <mutex>
#include <string>
#include <thread>

namespace mastwise::platform {

// What a link tells. In order: "found", bytes, "lost", "found"...
struct LinkNews {
  enum class Kind {
    found,  // the first bytes since it was opened follow
    bytes,
    lost,   // it is being opened again; told again when the reason changes
    ended,  // there will be no more, as at the end of a file; the link's thread has done its work
  };
  Kind kind;
  std::string text;  // the bytes, or why it was lost, in words for a person
  Monotonic when;    // by monotonic_now()
};

struct LinkTiming {
  milliseconds first_retry{250};     // after a loss; each further try waits twice as long,
  milliseconds longest_retry{2500};  // but no longer than this, until bytes come again
  milliseconds read_timeout{100};    // the longest that a stop has to wait for
};

// Keeps a device open on one thread of its own, for as long as it lives.
//
// Threads: construct, stop and destroy on one thread, which is not the link's. `open`, its sources
// and `deliver` are used on the link's thread only; deliver hands its news to another thread,
// returns soon, throws nothing, and must not stop the link. Once stop() has returned nothing is
// delivered.
class DeviceLink {
 public:
  DeviceLink(OpenSource open, std::function<void(LinkNews)> deliver, LinkTiming timing = {});
  ~DeviceLink() { stop(); }
  DeviceLink(const DeviceLink&) = delete;
  DeviceLink& operator=(const DeviceLink&) = delete;

  // Waits for the thread: for a read's or a delivery's time. May be called again.
  void stop();

 private:
  enum class Outcome { lost, ended, stopped };

  void run();
  Outcome listen(ByteSource& source);
  void lose(const Error& error);
  bool wait_for_retry();
  bool is_stopping();
  void tell(LinkNews::Kind kind, std::string text);

  OpenSource open_;
  std::function<void(LinkNews)> deliver_;
  LinkTiming timing_;
  milliseconds retry_after_;
  std::string lost_because_;  // empty while it is not lost
  std::mutex mutex_;
  std::condition_variable stop_wanted_;
  bool stopping_ = false;
  std::thread thread_;  // last, as it uses all the others
};

}  // namespace mastwise::platform
