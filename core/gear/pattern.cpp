#include "core/gear/pattern.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <numbers>

namespace mastwise::gear {
namespace {

// Also of a table, which has no infinitely deep nulls.
constexpr double kDeepestFloorDb = 60.0;
constexpr double kHalfPowerField = std::numbers::sqrt2 / 2.0;

double cosine(double degrees) {
  return std::cos(degrees * std::numbers::pi / 180.0);
}

}  // namespace

Pattern Pattern::lobes(double half_power_beamwidth_deg, double floor_db, bool both_faces) {
  const double width_deg = std::clamp(half_power_beamwidth_deg, 1.0, 170.0);
  Pattern pattern;
  pattern.exponent_ = std::log(0.5) / std::log(cosine(width_deg / 2.0));
  pattern.floor_db_ = 0.0 - std::clamp(floor_db, 0.0, kDeepestFloorDb);
  pattern.both_faces_ = both_faces;
  return pattern;
}

Pattern Pattern::omnidirectional() {
  return Pattern();
}

Pattern Pattern::directional(double half_power_beamwidth_deg, double front_to_back_db) {
  return lobes(half_power_beamwidth_deg, front_to_back_db, false);
}

Pattern Pattern::bidirectional(double half_power_beamwidth_deg, double end_floor_db) {
  return lobes(half_power_beamwidth_deg, end_floor_db, true);
}

Pattern Pattern::no_deeper_than(double depth_db) const {
  Pattern pattern = *this;
  if (from_measurement()) pattern.floor_db_ = std::max(floor_db_, -depth_db);
  return pattern;
}

double Pattern::relative_db(Turn off_axis) const {
  if (!table_.empty()) {
    const double field = table_field(fold_circle_deg(off_axis.clockwise_deg()));
    return field > 0.0 ? std::max(20.0 * std::log10(field), floor_db_) : floor_db_;
  }
  const double along = cosine(off_axis.size_deg());
  const double facing = both_faces_ ? std::fabs(along) : along;
  if (facing <= 0.0) return floor_db_;
  return std::max(10.0 * exponent_ * std::log10(facing), floor_db_) + 0.0;
}

double Pattern::table_field(double angle_deg) const {
  const auto after =
      std::upper_bound(table_.begin(), table_.end(), angle_deg,
                       [](double angle, const Point& point) { return angle < point.angle_deg; });
  const Point from = *std::prev(after);  // the first row is the axis, at 0 degrees
  const Point to = after == table_.end() ? Point{360.0, table_.front().field} : *after;
  const double part = (angle_deg - from.angle_deg) / (to.angle_deg - from.angle_deg);
  return from.field + part * (to.field - from.field);
}

std::optional<double> Pattern::half_power_beamwidth_deg() const {
  if (!table_.empty()) {
    const auto right_deg = table_half_power_deg(true);
    const auto left_deg = table_half_power_deg(false);
    if (!right_deg || !left_deg) return std::nullopt;
    return *right_deg + *left_deg;
  }
  if (floor_db_ > 10.0 * std::log10(0.5)) return std::nullopt;
  return 2.0 * std::acos(std::pow(0.5, 1.0 / exponent_)) * 180.0 / std::numbers::pi;
}

std::optional<double> Pattern::table_half_power_deg(bool clockwise) const {
  Point inner = table_.front();
  for (std::size_t i = 1; i < table_.size(); ++i) {
    const Point& row = table_[clockwise ? i : table_.size() - i];
    const Point outer{clockwise ? row.angle_deg : 360.0 - row.angle_deg, row.field};
    if (outer.field <= kHalfPowerField) {
      const double part = (inner.field - kHalfPowerField) / (inner.field - outer.field);
      return inner.angle_deg + part * (outer.angle_deg - inner.angle_deg);
    }
    inner = outer;
  }
  return std::nullopt;
}

}  // namespace mastwise::gear
