#pragma once

#include "platform/frames.hpp"

#include <condition_variable>
#include <cstddef>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

namespace mastwise {

// A fixed number of threads for computing, begun with the first job. One caller at a time.
class Pool {
 public:
  // `threads`: at least one, the caller's.
  explicit Pool(unsigned threads = platform::computing_threads()) : threads_(threads) {}
  ~Pool();
  Pool(const Pool&) = delete;
  Pool& operator=(const Pool&) = delete;

  std::size_t threads() const { return threads_; }

  // Calls job(thread) once on every thread, `thread` within [0, threads()), and returns when all
  // are done.
  void run(const std::function<void(std::size_t thread)>& job);

 private:
  void work(std::size_t thread);

  unsigned threads_;
  std::mutex mutex_;
  std::condition_variable changed_;
  const std::function<void(std::size_t)>* job_ = nullptr;
  std::size_t round_ = 0;    // of the current job
  std::size_t working_ = 0;  // threads that have not finished it
  bool ending_ = false;
  std::vector<std::thread> workers_;
};

}  // namespace mastwise
