#include "app/shell/receiver_line.hpp"

#include "app/service/device_source.hpp"

#include <utility>

namespace mastwise::shell {

Link link_after(const platform::LinkNews& news, const std::string& name, bool recorded) {
  using Kind = platform::LinkNews::Kind;
  if (news.kind == Kind::found) {
    return {Link::State::Open, news.text.empty() ? name : news.text, recorded};
  }
  if (news.kind == Kind::ended) return {Link::State::Ended, name, recorded};
  return {Link::State::Lost, news.text, recorded};
}

void NewsQueue::add(platform::LinkNews news) {
  constexpr auto kBytes = platform::LinkNews::Kind::bytes;
  const std::lock_guard lock(mutex_);
  bytes_ += news.text.size();
  const bool follows = news.kind == kBytes && !news_.empty() && news_.back().kind == kBytes &&
                       news.when - news_.back().when < kOnePiece;
  if (follows) {
    news_.back().text += news.text;
  } else {
    news_.push_back(std::move(news));
  }
  const auto is_bytes = [&](std::size_t at) { return news_[at].kind == kBytes; };
  // Of the news of the link the last one before the bytes that are left stays.
  while (bytes_ > kMostBytes && news_.size() > 2) {
    const std::size_t oldest = is_bytes(0) || !is_bytes(1) ? 0 : 1;
    bytes_ -= news_[oldest].text.size();
    news_.erase(news_.begin() + static_cast<std::ptrdiff_t>(oldest));
  }
}

std::deque<platform::LinkNews> NewsQueue::take() {
  const std::lock_guard lock(mutex_);
  bytes_ = 0;
  return std::exchange(news_, {});
}

std::size_t NewsQueue::bytes() const {
  const std::lock_guard lock(mutex_);
  return bytes_;
}

std::size_t NewsQueue::size() const {
  const std::lock_guard lock(mutex_);
  return news_.size();
}

namespace {

platform::OpenSource any_receiver_but(std::function<std::string()> taken) {
  return platform::any_receiver_source("localhost", {}, [taken = std::move(taken)] {
    std::vector<platform::SerialDevice> devices = platform::list_serial_devices();
    const std::string path = taken();
    std::erase_if(devices, [&](const platform::SerialDevice& device) {
      return !path.empty() && platform::same_device(device.path, path);
    });
    return devices;
  });
}

}  // namespace

ReceiverLine::ReceiverLine(const std::optional<std::string>& device, std::function<void()> wake,
                           std::function<std::string()> taken)
    : name_(device.value_or("the serial line")),
      recorded_(device && service::is_recording(*device)),
      wake_(std::move(wake)),
      link_(device ? service::device_source(*device) : any_receiver_but(std::move(taken)),
            [this](platform::LinkNews news) {
              news_.add(std::move(news));
              wake_();
            }) {}

bool ReceiverLine::give_to(Session& session) {
  link_.turn();
  return pass_news<act::ReceiverBytes, act::LinkChanged>(news_, session, name_, recorded_);
}

}  // namespace mastwise::shell
