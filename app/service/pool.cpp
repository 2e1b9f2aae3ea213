#include "app/service/pool.hpp"

namespace mastwise {

Pool::~Pool() {
  {
    const std::lock_guard lock(mutex_);
    ending_ = true;
  }
  changed_.notify_all();
  for (std::thread& worker : workers_) worker.join();
}

void Pool::run(const std::function<void(std::size_t thread)>& job) {
  while (workers_.size() + 1 < threads_) {
    workers_.emplace_back([this, thread = workers_.size() + 1] { work(thread); });
  }
  {
    const std::lock_guard lock(mutex_);
    job_ = &job;
    working_ = workers_.size();
    ++round_;
  }
  changed_.notify_all();
  job(0);
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return working_ == 0; });
}

void Pool::work(std::size_t thread) {
  std::size_t done_round = 0;
  std::unique_lock lock(mutex_);
  while (true) {
    changed_.wait(lock, [&] { return ending_ || round_ != done_round; });
    if (ending_) return;
    done_round = round_;
    const auto& job = *job_;
    lock.unlock();
    job(thread);
    lock.lock();
    if (--working_ == 0) changed_.notify_all();
  }
}

}  // namespace mastwise
