#include "app/here/nose.hpp"

#include "app/words/language.hpp"
#include "core/sky/sun.hpp"

#include <algorithm>

namespace mastwise {
namespace {

constexpr double kUsualScatter_m = 3.0;

void take(Shared& shared, const Result<RigHeadingReading>& reading, Nose::Origin origin) {
  if (!reading) {
    shared.trouble = reading.error().message();
    return;
  }
  shared.trouble.clear();
  shared.stop.nose = Nose{.heading = reading->heading.nose(),
                          .origin = origin,
                          .sigma_deg = reading->sigma_deg,
                          .taken_at = reading->taken_at,
                          .caution = reading->caution};
}

bool knows_position(Shared& shared) {
  if (shared.findings.position) return true;
  shared.trouble = words::say("The position is unknown.");
  return false;
}

}  // namespace

void nose_from_course(Shared& shared, bool backed_in) {
  if (!shared.course.last() || !knows_position(shared)) return;
  take(shared,
       rig_heading_from_course(*shared.course.last(), backed_in ? Drove::backed_in : Drove::forward,
                               shared.settings.carrier, *shared.findings.position),
       backed_in ? Nose::Origin::BackedIn : Nose::Origin::LastCourse);
}

void nose_from_sensor(Shared& shared) {
  if (!knows_position(shared)) return;
  take(shared,
       rig_heading_from_sensor(shared.receiver.heading(shared.now), Turn(), shared.findings.field,
                               *shared.findings.position, shared.findings.sensor_deviation),
       Nose::Origin::Sensor);
}

void nose_from_sun(Shared& shared, SunFrom side) {
  if (!knows_position(shared)) return;
  const sky::Shadow shadow = sky::plumb_shadow(*shared.findings.position, moment_of(shared));
  if (shadow.why_none) {
    shared.trouble = words::say("The sun gives no usable shadow now.");
    return;
  }
  take(shared,
       rig_heading_from_sun(shadow.sun.azimuth,
                            clock_error_min(shared) * shadow.error_per_clock_minute_deg, side,
                            *shared.findings.position),
       Nose::Origin::Sun);
}

void nose_from_points(Shared& shared) {
  if (!knows_position(shared) || !shared.stop.tail_mark) return;
  const auto parked = shared.parked.result();
  const double scatter_m =
      parked && parked->scatter_m ? std::max(*parked->scatter_m, 0.1) : kUsualScatter_m;
  take(shared,
       rig_heading_from_two_points(*shared.stop.tail_mark, *shared.findings.position, scatter_m),
       Nose::Origin::TwoPoints);
}

}  // namespace mastwise
