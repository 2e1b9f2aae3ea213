#include "app/shell/meter_line.hpp"

#include "app/service/meter_source.hpp"

#include <deque>
#include <vector>

namespace mastwise::shell {

void MeterLine::follow(const std::string& name) {
  if (name == name_) return;
  link_.reset();
  {
    const std::lock_guard lock(mutex_);
    news_.take();
    name_ = name;
  }
  if (name_.empty()) return;
  link_.emplace(service::meter_source(name_), [this](platform::LinkNews news) {
    {
      const std::lock_guard lock(mutex_);
      news_.add(std::move(news));
    }
    wake_();
  });
}

bool MeterLine::pass_news(Session& session) {
  std::deque<platform::LinkNews> news;
  {
    const std::lock_guard lock(mutex_);
    news = news_.take();
  }
  for (platform::LinkNews& item : news) {
    if (item.kind == platform::LinkNews::Kind::bytes) {
      session.act(act::MeterBytes{item.when, std::move(item.text)});
    } else {
      session.act(act::MeterLinkChanged{link_after(item, name_, false)});
    }
  }
  return !news.empty();
}

bool MeterLine::find_meters(Session& session) {
  constexpr milliseconds kLookEvery{2000};
  const Model& model = session.model();
  if (model.sheet != Sheet::Meter) {
    looked_.reset();
    return false;
  }
  if (looked_ && model.now - *looked_ < kLookEvery) return false;
  looked_ = model.now;
  std::vector<MeterChoice> found;
  for (const service::FoundMeter& one : service::list_meters()) {
    found.push_back({.name = one.name, .label = one.label});
  }
  if (found == model.peak.meters) return false;
  session.act(act::MetersFound{std::move(found)});
  return true;
}

std::string MeterLine::in_use() {
  const std::lock_guard lock(mutex_);
  return name_;
}

bool MeterLine::give_to(Session& session) {
  follow(session.model().settings.meter);
  const bool any = pass_news(session);
  return find_meters(session) || any;
}

}  // namespace mastwise::shell
