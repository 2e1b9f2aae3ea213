#pragma once

#include "platform/device_link.hpp"

#include <chrono>
#include <condition_variable>
#include <mutex>
#include <string>
#include <vector>

namespace mastwise::test {

// Collects the events of a link. Any thread.
class NewsBox {
 public:
  std::function<void(platform::LinkNews)> deliver() {
    return [this](platform::LinkNews news) {
      {
        const std::lock_guard lock(mutex_);
        if (news.kind == platform::LinkNews::Kind::bytes) bytes_ += news.text;
        news_.push_back(std::move(news));
      }
      more_.notify_all();
    };
  }

  // Waits until the condition of (news, all bytes so far) is true; false after twenty seconds.
  template <class Condition>
  bool wait(Condition condition) {
    std::unique_lock lock(mutex_);
    return more_.wait_for(lock, std::chrono::seconds(20),
                          [&] { return condition(std::as_const(news_), std::as_const(bytes_)); });
  }
  bool wait_for_bytes(std::size_t count) {
    return wait([&](const auto&, const std::string& bytes) { return bytes.size() >= count; });
  }
  bool wait_for(platform::LinkNews::Kind kind, std::size_t times = 1) {
    return wait([&](const auto& news, const auto&) { return count(news, kind) >= times; });
  }

  std::vector<platform::LinkNews> news() {
    const std::lock_guard lock(mutex_);
    return news_;
  }
  std::string bytes() {
    const std::lock_guard lock(mutex_);
    return bytes_;
  }
  std::size_t count(platform::LinkNews::Kind kind) {
    const std::lock_guard lock(mutex_);
    return count(news_, kind);
  }

 private:
  static std::size_t count(const std::vector<platform::LinkNews>& news,
                           platform::LinkNews::Kind kind) {
    std::size_t found = 0;
    for (const auto& one : news) found += one.kind == kind;
    return found;
  }

  std::mutex mutex_;
  std::condition_variable more_;
  std::vector<platform::LinkNews> news_;
  std::string bytes_;
};

}  // namespace mastwise::test
