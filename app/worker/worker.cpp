#include "app/worker/worker.hpp"

#include <utility>

namespace mastwise {

Worker::Worker(Answerer answer, std::function<void()> wake)
    : answer_(std::move(answer)), wake_(std::move(wake)), thread_([this] { run(); }) {}

Worker::~Worker() {
  {
    const std::lock_guard lock(mutex_);
    ending_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

void Worker::ask(StationsQuestion question) {
  {
    const std::lock_guard lock(mutex_);
    question_ = std::move(question);
    ready_.reset();
  }
  changed_.notify_all();
}

std::optional<StationsAnswer> Worker::take() {
  const std::lock_guard lock(mutex_);
  return std::exchange(ready_, std::nullopt);
}

void Worker::finish() {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return !question_ && !busy_; });
}

bool Worker::superseded() {
  const std::lock_guard lock(mutex_);
  return ending_ || question_;
}

void Worker::publish(StationsAnswer answer) {
  {
    const std::lock_guard lock(mutex_);
    if (question_) return;
    ready_ = std::move(answer);
  }
  wake_();
}

void Worker::run() {
  const Work work{.publish = [this](StationsAnswer answer) { publish(std::move(answer)); },
                  .superseded = [this] { return superseded(); }};
  std::unique_lock lock(mutex_);
  while (true) {
    changed_.wait(lock, [this] { return ending_ || question_; });
    if (ending_) return;
    const StationsQuestion question = *std::exchange(question_, std::nullopt);
    busy_ = true;
    lock.unlock();
    publish(answer_(question, work));
    lock.lock();
    busy_ = false;
    changed_.notify_all();
  }
}

}  // namespace mastwise
