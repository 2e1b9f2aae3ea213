#include "core/plan/null_aim.hpp"

#include <algorithm>

namespace mastwise {
namespace {

constexpr double kWorthTurning_percent = 5.0;

std::optional<gear::PatternNull> null_toward(const gear::Pattern& pattern, Turn off_axis) {
  for (const gear::PatternNull& null : gear::nulls(pattern)) {
    const double aside_deg = off_axis.clockwise_deg() - null.middle.clockwise_deg();
    if (Turn::clockwise_deg(aside_deg).size_deg() <= null.width_deg / 2.0) return null;
  }
  return std::nullopt;
}

}  // namespace

std::optional<NullAim> null_aim_at(const reception::Survey& survey,
                                   std::span<const std::optional<reception::ChanceCurve>> curves,
                                   std::size_t station, Bearing<True> heading,
                                   double floor_percent) {
  const auto& curve = curves[station];
  if (!curve || !curve->avoided()) return std::nullopt;
  const double chance_percent = curve->percent_at(heading);
  const double gain_percent = chance_percent - curve->percent_at(curve->toward());
  if (gain_percent < kWorthTurning_percent) return std::nullopt;
  const reception::Outlook& interferer = *survey.outlook(*curve->avoided());
  const reception::Receiver& receiver = survey.receiver();
  const auto null =
      null_toward(receiver.gear.antenna.in(interferer.band).pattern, interferer.bearing - heading);
  if (!null || receiver.heading_error_deg > null->width_deg / 2.0) return std::nullopt;
  NullAim aim{.heading = heading,
              .interferer = *curve->avoided(),
              .null = *null,
              .chance_percent = chance_percent,
              .gain_percent = gain_percent};
  for (std::size_t i = 0; i < curves.size(); ++i) {
    if (!curves[i] || curves[i]->percent_at(curve->toward()) < floor_percent) continue;
    if (curves[i]->percent_at(heading) < floor_percent) aim.loses.push_back(i);
  }
  return aim;
}

std::optional<NullAim> null_aim(const reception::Survey& survey,
                                std::span<const std::optional<reception::ChanceCurve>> curves,
                                std::size_t station, double floor_percent) {
  if (!curves[station]) return std::nullopt;
  return null_aim_at(survey, curves, station, best_heading(*curves[station]), floor_percent);
}

}  // namespace mastwise
