#include "app/model/nose.hpp"

#include "app/model/ways.hpp"
#include "core/sky/sun.hpp"

#include <algorithm>

namespace mastwise {
namespace {

constexpr double kUsualScatter_m = 3.0;

void take(Model& model, const Result<RigHeadingReading>& reading, Nose::Origin origin) {
  if (!reading) {
    model.trouble = reading.error().message();
    return;
  }
  model.trouble.clear();
  model.stop.nose = Nose{.heading = reading->heading.nose(),
                         .origin = origin,
                         .sigma_deg = reading->sigma_deg,
                         .taken_at = reading->taken_at,
                         .caution = reading->caution};
}

bool knows_position(Model& model) {
  if (model.findings.position) return true;
  model.trouble = "The position is unknown.";
  return false;
}

}  // namespace

void nose_from_course(Model& model, bool backed_in) {
  if (!model.course.last() || !knows_position(model)) return;
  take(model,
       rig_heading_from_course(*model.course.last(), backed_in ? Drove::backed_in : Drove::forward,
                               model.settings.carrier, *model.findings.position),
       backed_in ? Nose::Origin::BackedIn : Nose::Origin::LastCourse);
}

void nose_from_sensor(Model& model) {
  if (!knows_position(model)) return;
  take(model,
       rig_heading_from_sensor(model.receiver.heading(model.now), Turn(), model.findings.field,
                               *model.findings.position),
       Nose::Origin::Sensor);
}

void nose_from_sun(Model& model, SunFrom side) {
  if (!knows_position(model)) return;
  const sky::Shadow shadow = sky::plumb_shadow(*model.findings.position, moment_of(model));
  if (shadow.why_none) {
    model.trouble = "The sun gives no usable shadow now.";
    return;
  }
  take(model,
       rig_heading_from_sun(shadow.sun.azimuth,
                            clock_error_min(model) * shadow.error_per_clock_minute_deg, side,
                            *model.findings.position),
       Nose::Origin::Sun);
}

void nose_from_points(Model& model) {
  if (!knows_position(model) || !model.stop.tail_mark) return;
  const auto parked = model.parked.result();
  const double scatter_m =
      parked && parked->scatter_m ? std::max(*parked->scatter_m, 0.1) : kUsualScatter_m;
  take(model,
       rig_heading_from_two_points(*model.stop.tail_mark, *model.findings.position, scatter_m),
       Nose::Origin::TwoPoints);
}

}  // namespace mastwise
