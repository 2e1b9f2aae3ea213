#include "core/sky/sun_marks.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::sky {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

constexpr std::array kLies{ShadowLies::Along, ShadowLies::Right, ShadowLies::Against,
                           ShadowLies::Left};

// How far the sun's shadow is clockwise of where it marks.
double past_deg(const SunPlace& sun, ShadowLies lies, Bearing<True> heading) {
  const Bearing<True> wanted = heading + Turn::clockwise_deg(90.0 * static_cast<int>(lies));
  return (sun.azimuth.reciprocal() - wanted).clockwise_deg();
}

// A jump from one side of the circle to the other is the opposite direction.
bool crosses(double first_deg, double last_deg) {
  return (first_deg < 0.0) != (last_deg < 0.0) && std::fabs(first_deg - last_deg) < 180.0;
}

SunMark mark_between(Position position, Bearing<True> heading, ShadowLies lies, UtcTime before,
                     UtcTime after) {
  const auto past = [&](UtcTime time) {
    return past_deg(sun_at(position, time), lies, heading) >= 0.0;
  };
  const bool begun = past(before);
  while (after - before > seconds(1)) {
    const UtcTime middle = before + (after - before) / 2;
    (past(middle) == begun ? before : after) = middle;
  }
  const Turn in_a_minute =
      sun_at(position, after + seconds(30)).azimuth - sun_at(position, after - seconds(30)).azimuth;
  return {after, lies, in_a_minute.clockwise_deg()};
}

}  // namespace

std::vector<SunMark> sun_marks(Position position, UtcTime from, Bearing<True> heading) {
  constexpr minutes kStep{10};
  std::vector<SunMark> marks;
  SunPlace sun = sun_at(position, from);
  for (UtcTime time = from; time < from + hours(48); time += kStep) {
    const SunPlace next = sun_at(position, time + kStep);
    const bool up = sun.elevation_deg > 0.0, stays_up = next.elevation_deg > 0.0;
    if (up || stays_up) {
      for (const ShadowLies lies : kLies) {
        if (!crosses(past_deg(sun, lies, heading), past_deg(next, lies, heading))) continue;
        const SunMark mark = mark_between(position, heading, lies, time, time + kStep);
        if (!why_no_shadow(sun_at(position, mark.time))) marks.push_back(mark);
      }
    }
    const bool day_over = (up && !stays_up) || time >= from + hours(24);
    if (day_over && !marks.empty()) break;
    sun = next;
  }
  std::sort(marks.begin(), marks.end(),
            [](const SunMark& a, const SunMark& b) { return a.time < b.time; });
  return marks;
}

}  // namespace mastwise::sky
