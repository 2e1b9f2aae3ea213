#pragma once

#include "platform/frames.hpp"

#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>

namespace mastwise {

// Does work longer than a frame in its thread, on a snapshot of its inputs. A newer question
// replaces one that has not started and drops the answer to an older one. The first call
// of turn() starts the thread. Without threads, turn() does the work itself.
template <class Question, class Answer>
class Worker {
 public:
  // Tools for an answerer while it works.
  struct Work {
    std::function<void(Answer)> publish;  // partial results
    std::function<bool()> superseded;     // a newer question waits: stop
  };
  using Answerer = std::function<Answer(const Question&, const Work&)>;

  // `answer` runs in the worker's thread, which calls `wake` when an answer is ready.
  Worker(Answerer answer, std::function<void()> wake)
      : answer_(std::move(answer)), wake_(std::move(wake)) {}
  ~Worker() {
    {
      const std::lock_guard lock(mutex_);
      ending_ = true;
    }
    changed_.notify_all();
    if (thread_.joinable()) thread_.join();
  }
  Worker(const Worker&) = delete;
  Worker& operator=(const Worker&) = delete;

  void ask(Question question) {
    {
      const std::lock_guard lock(mutex_);
      question_ = std::move(question);
      ready_.reset();
      drawn_ = false;
    }
    changed_.notify_all();
  }
  std::optional<Answer> take() {
    const std::lock_guard lock(mutex_);
    return std::exchange(ready_, std::nullopt);
  }
  // Call it between two frames. Without threads it answers a question that was asked before the
  // last frame, and returns true.
  bool turn() {
    if (platform::has_threads()) {
      if (!thread_.joinable()) thread_ = std::thread([this] { run(); });
      return false;
    }
    if (!question_ || !std::exchange(drawn_, true)) return false;
    work_in_turn();
    return true;
  }
  // Waits until the worker is idle, for tests and pictures.
  void finish() {
    turn();
    if (!thread_.joinable() && question_) work_in_turn();
    std::unique_lock lock(mutex_);
    changed_.wait(lock, [this] { return !question_ && !busy_; });
  }

 private:
  bool superseded() {
    const std::lock_guard lock(mutex_);
    return ending_ || question_;
  }
  void publish(Answer answer) {
    {
      const std::lock_guard lock(mutex_);
      if (question_) return;
      ready_ = std::move(answer);
    }
    wake_();
  }
  Work work() {
    return {.publish = [this](Answer answer) { publish(std::move(answer)); },
            .superseded = [this] { return superseded(); }};
  }
  void work_in_turn() {
    const Question question = *std::exchange(question_, std::nullopt);
    publish(answer_(question, work()));
  }
  void run() {
    const Work tools = work();
    std::unique_lock lock(mutex_);
    while (true) {
      changed_.wait(lock, [this] { return ending_ || question_; });
      if (ending_) return;
      const Question question = *std::exchange(question_, std::nullopt);
      busy_ = true;
      lock.unlock();
      publish(answer_(question, tools));
      lock.lock();
      busy_ = false;
      changed_.notify_all();
    }
  }

  Answerer answer_;
  std::function<void()> wake_;
  std::mutex mutex_;
  std::condition_variable changed_;
  std::optional<Question> question_;
  std::optional<Answer> ready_;
  bool busy_ = false;
  bool ending_ = false;
  bool drawn_ = false;  // a frame since the question
  std::thread thread_;
};

}  // namespace mastwise
