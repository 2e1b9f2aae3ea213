#pragma once

#include "app/model/stations.hpp"

#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>

namespace mastwise {

// Does in its own thread what takes longer than a frame. It works on a snapshot of its inputs; a
// newer question takes the place of one that has not begun, and the answer to an older one is
// dropped.
class Worker {
 public:
  // What an answerer may use while it works.
  struct Work {
    std::function<void(StationsAnswer)> publish;  // what is known so far
    std::function<bool()> superseded;             // a newer question waits: stop
  };
  using Answerer = std::function<StationsAnswer(const StationsQuestion&, const Work&)>;

  // `answer` runs in the worker's thread; `wake` is called from there when an answer is ready.
  Worker(Answerer answer, std::function<void()> wake);
  ~Worker();
  Worker(const Worker&) = delete;
  Worker& operator=(const Worker&) = delete;

  void ask(StationsQuestion question);
  std::optional<StationsAnswer> take();
  // Waits until nothing is being worked on; for tests and for pictures.
  void finish();

 private:
  void run();
  bool superseded();
  void publish(StationsAnswer answer);

  Answerer answer_;
  std::function<void()> wake_;
  std::mutex mutex_;
  std::condition_variable changed_;
  std::optional<StationsQuestion> question_;
  std::optional<StationsAnswer> ready_;
  bool busy_ = false;
  bool ending_ = false;
  std::thread thread_;
};

}  // namespace mastwise
