#include "app/shell/tablet_line.hpp"

#include "platform/tablet_sensors.hpp"

namespace mastwise::shell {

TabletNeed tablet_need(const Model& model) {
  const bool way = model.settings.pointing == PointingMethod::tablet_magnetometer &&
                   !model.settings.tablet_points.empty();
  const bool aims = model.place == Place::Aim && model.sheet == Sheet::None;
  if (model.sheet == Sheet::Tablet || (way && aims)) return TabletNeed::heading;
  return model.safety.antenna == safety::Antenna::Raised ? TabletNeed::motion : TabletNeed::nothing;
}

void TabletLine::follow(TabletNeed need, Session& session) {
  if (need == need_) return;
  need_ = need;
  link_.reset();
  news_.take();
  session.act(act::TabletLinkChanged{Link{}});
  if (need == TabletNeed::nothing) return;
  const bool heading = need == TabletNeed::heading;
  const platform::TabletSystem system{
      .root = root_, .told = milliseconds(heading ? 125 : 1000), .field_wanted = heading};
  link_.emplace(platform::tablet_sensor_source(system), [this](platform::LinkNews news) {
    news_.add(std::move(news));
    wake_();
  });
}

bool TabletLine::give_to(Session& session) {
  if (link_) link_->turn();
  const bool any =
      pass_news<act::TabletBytes, act::TabletLinkChanged>(news_, session, "the tablet", false);
  follow(tablet_need(session.model()), session);
  return any;
}

}  // namespace mastwise::shell
