#include "app/shell/tablet_line.hpp"

#include "platform/tablet_sensors.hpp"

namespace mastwise::shell {

TabletNeed tablet_need(const Model& model) {
  return model.safety.antenna == safety::Antenna::Raised ? TabletNeed::motion : TabletNeed::nothing;
}

void TabletLine::follow(TabletNeed need, Session& session) {
  if (need == need_) return;
  need_ = need;
  link_.reset();
  news_.take();
  session.act(act::TabletLinkChanged{Link{}});
  if (need == TabletNeed::nothing) return;
  const platform::TabletSystem system{
      .root = root_, .told = milliseconds(1000), .field_wanted = false};
  link_.emplace(platform::tablet_sensor_source(system), [this](platform::LinkNews news) {
    news_.add(std::move(news));
    wake_();
  });
}

bool TabletLine::give_to(Session& session) {
  const bool any =
      pass_news<act::TabletBytes, act::TabletLinkChanged>(news_, session, "the tablet", false);
  follow(tablet_need(session.model()), session);
  return any;
}

}  // namespace mastwise::shell
