#include "app/shell/receiver_line.hpp"

#include "app/service/device_source.hpp"

#include <utility>

namespace mastwise::shell {
namespace {

Link link_after(const platform::LinkNews& news, const std::string& name, bool recorded) {
  using Kind = platform::LinkNews::Kind;
  if (news.kind == Kind::found) return {Link::State::Open, name, recorded};
  if (news.kind == Kind::ended) return {Link::State::Ended, name, recorded};
  return {Link::State::Lost, news.text, recorded};
}

}  // namespace

ReceiverLine::ReceiverLine(const std::optional<std::string>& device, std::function<void()> wake)
    : name_(device.value_or("the serial line")),
      recorded_(device && service::is_recording(*device)),
      wake_(std::move(wake)),
      link_(device ? service::device_source(*device) : platform::any_serial_source(),
            [this](platform::LinkNews news) {
              {
                const std::lock_guard lock(mutex_);
                news_.push_back(std::move(news));
              }
              wake_();
            }) {}

bool ReceiverLine::give_to(Session& session) {
  std::vector<platform::LinkNews> news;
  {
    const std::lock_guard lock(mutex_);
    news.swap(news_);
  }
  for (platform::LinkNews& item : news) {
    if (item.kind == platform::LinkNews::Kind::bytes) {
      session.act(act::ReceiverBytes{item.when, std::move(item.text)});
    } else {
      session.act(act::LinkChanged{link_after(item, name_, recorded_)});
    }
  }
  return !news.empty();
}

}  // namespace mastwise::shell
