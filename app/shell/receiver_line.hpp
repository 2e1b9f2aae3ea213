#pragma once

#include "app/shell/session.hpp"
#include "platform/device_link.hpp"

#include <cstddef>
#include <deque>
#include <memory>
#include <mutex>
#include <string>
#include <utility>
#include <vector>

namespace mastwise::shell {

// News on its way between the threads. Bytes that arrive close together are one piece, and while
// nobody takes them only the latest are kept, so that neither a flood nor a frozen screen makes it
// grow without bound. A cut sentence fails its checksum. Any thread may call anything.
class NewsQueue {
 public:
  // Some seconds of the fastest line, 921,600 baud.
  static constexpr std::size_t kMostBytes = 512 * 1024;
  // The age of a reading is wrong by no more than this.
  static constexpr milliseconds kOnePiece{50};

  void add(platform::LinkNews news);
  // Everything since the last call, in order.
  std::deque<platform::LinkNews> take();
  std::size_t bytes() const;
  std::size_t size() const;

 private:
  mutable std::mutex mutex_;
  std::deque<platform::LinkNews> news_;
  std::size_t bytes_ = 0;
};

// The connection after a piece of news that is not bytes. `name`: of the device, unless the news
// has one.
Link link_after(const platform::LinkNews& news, const std::string& name, bool recorded);

// Passes what was queued to the session, in order, as actions of these two kinds; true if there was
// anything.
template <class Bytes, class LinkChanged>
bool pass_news(NewsQueue& queue, Session& session, const std::string& name, bool recorded) {
  std::deque<platform::LinkNews> news = queue.take();
  for (platform::LinkNews& item : news) {
    if (item.kind == platform::LinkNews::Kind::bytes) {
      session.act(Bytes{item.when, std::move(item.text)});
    } else {
      session.act(LinkChanged{link_after(item, name, recorded)});
    }
  }
  return !news.empty();
}

// The receiver's connection: the link's thread queues events, and the interface thread passes them
// on as actions.
class ReceiverLine {
 public:
  // `device` as in service::device_source; empty searches gpsd and all serial devices of this
  // machine, except `taken()`, the path of one that something else reads, or empty. The link's
  // thread calls `wake` and `taken`.
  ReceiverLine(
      const std::optional<std::string>& device, std::function<void()> wake,
      std::function<std::string()> taken = [] { return std::string(); });

  // Passes all received events to the session, in order; true if there were any.
  bool give_to(Session& session);

 private:
  std::string name_;
  bool recorded_;
  std::function<void()> wake_;
  NewsQueue news_;
  platform::DeviceLink link_;  // last: its thread uses all the others
};

}  // namespace mastwise::shell
