#include "app/shell/meter_line.hpp"

#include "app/service/meter_source.hpp"

#include <vector>

namespace mastwise::shell {

void MeterLine::follow(const std::string& name) {
  if (name == name_) return;
  link_.reset();
  news_.take();
  {
    const std::lock_guard lock(mutex_);
    name_ = name;
  }
  if (name_.empty()) return;
  link_.emplace(service::meter_source(name_), [this](platform::LinkNews news) {
    news_.add(std::move(news));
    wake_();
  });
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
  if (link_) link_->turn();
  const bool any = pass_news<act::MeterBytes, act::MeterLinkChanged>(news_, session, name_, false);
  return find_meters(session) || any;
}

}  // namespace mastwise::shell
