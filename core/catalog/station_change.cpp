#include "core/catalog/station_change.hpp"

#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace mastwise {
namespace {

bool other_power(const std::optional<double>& before_kw, const std::optional<double>& now_kw) {
  if (!before_kw || !now_kw || *before_kw <= 0.0 || *now_kw <= 0.0) return false;
  return std::abs(10.0 * std::log10(*now_kw / *before_kw)) >= StationChange::kPowerStep_db;
}

// Stations without a distance come last.
bool comes_before(const StationChange& a, const StationChange& b) {
  const auto order = [](const StationChange& one) {
    return std::tuple(!one.distance_m, one.distance_m.value_or(0.0), one.kind,
                      std::string_view(one.call_sign), std::string_view(one.id));
  };
  return order(a) < order(b);
}

}  // namespace

std::string_view to_text(StationChange::Kind kind) {
  switch (kind) {
    case StationChange::Kind::added:
      return "added";
    case StationChange::Kind::gone:
      return "gone";
    case StationChange::Kind::changed:
      return "changed";
  }
  return {};
}

StationChange one_sided_change(StationChange::Kind kind, const Station& station,
                               const std::optional<Position>& near) {
  StationChange change{.kind = kind,
                       .id = station.id,
                       .call_sign = station.call_sign,
                       .city = station.city,
                       .state = station.state,
                       .rf_channel = station.rf_channel,
                       .erp_kw = station.erp_kw};
  if (near) change.distance_m = path_between(*near, station.position).distance_m;
  return change;
}

std::optional<StationChange> change_between(const Station& before, const Station& now,
                                            const std::optional<Position>& near) {
  const double moved_m = path_between(before.position, now.position).distance_m;
  const bool moved = moved_m > StationChange::kMove_m;
  const bool renamed = before.call_sign != now.call_sign;
  const bool on_other_channel = before.rf_channel != now.rf_channel;
  const bool of_other_power = other_power(before.erp_kw, now.erp_kw);
  if (!moved && !renamed && !on_other_channel && !of_other_power) return std::nullopt;
  StationChange change = one_sided_change(StationChange::Kind::changed, now, near);
  if (renamed) change.call_sign_before = before.call_sign;
  if (on_other_channel) change.rf_channel_before = before.rf_channel;
  if (of_other_power) change.erp_kw_before = before.erp_kw;
  if (moved) change.moved_m = moved_m;
  return change;
}

void ChangeList::add(StationChange change) {
  changes_.push_back(std::move(change));
  if (changes_.size() > 2 * most_ + 1000) shorten();
}

void ChangeList::forget_added(const std::string& id) {
  std::erase_if(changes_, [&](const StationChange& one) {
    return one.kind == StationChange::Kind::added && one.id == id;
  });
}

std::vector<StationChange> ChangeList::sorted() {
  shorten();
  std::sort(changes_.begin(), changes_.end(), comes_before);
  return std::move(changes_);
}

void ChangeList::shorten() {
  if (changes_.size() <= most_) return;
  std::nth_element(changes_.begin(), changes_.begin() + static_cast<std::ptrdiff_t>(most_),
                   changes_.end(), comes_before);
  changes_.resize(most_);
}

}  // namespace mastwise
