#include "app/words/headings.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"

#include <cmath>

#include <fmt/format.h>

namespace mastwise::words {
namespace {

// Of a position, to a tenth of a meter, as receivers show it.
std::string position_degrees(double degrees) {
  return fmt::format("{:.6f}", degrees);
}

// One instruction for each alternative of SaidAs.
struct HeadingWords {
  const Phrases::Headings& p;
  bool miles;
  const TimeZone& zone;

  std::string operator()(Bearing<True> bearing) const {
    return fill(p.true_bearing, {{"degrees", plain_degrees(bearing.degrees())}});
  }
  std::string operator()(const OnGrid& it) const {
    return fill(p.grid_bearing,
                {{"zone", it.zone}, {"degrees", plain_degrees(it.bearing.degrees())}});
  }
  std::string operator()(Bearing<Magnetic> bearing) const {
    return fill(p.magnetic_bearing, {{"degrees", plain_degrees(bearing.degrees())}});
  }
  std::string operator()(const OnSetCompass& it) const {
    return fill(p.set_compass, {{"declination", set_declination(it.declination)},
                                {"degrees", plain_degrees(it.reads.degrees())}});
  }
  std::string operator()(RigAngle angle) const { return rig_sides(angle); }
  std::string operator()(const HandleTurn& turn) const { return handle_turn(turn); }
  std::string operator()(const FromShadow& it) const {
    std::string marks;
    for (const sky::SunMark& mark : it.marks) {
      if (!marks.empty()) marks += "; ";
      marks += sun_mark(mark, it.now, zone);
    }
    if (it.angle) {
      if (!marks.empty()) marks += "; ";
      marks += fill(p.shadow_angle,
                    {{"now", aside(it.angle->now)}, {"later", aside(it.angle->in_five_minutes)}});
    }
    return fill(p.sun_shadow, {{"marks", marks}});
  }
  std::string operator()(const FromStars& stars) const {
    std::string said;
    for (const FromStar& star : stars) {
      said += fill(said.empty() ? p.star : p.or_star,
                   {{"star", star_place(star.body, star.azimuth, star.altitude_deg)},
                    {"aside", aside(star.aside)}});
    }
    return said;
  }
  std::string operator()(const FromLandmark& it) const {
    return fill(p.landmark, {{"landmark", landmark_name(it)}, {"aside", aside(it.aside)}});
  }
  std::string landmark_name(const FromLandmark& it) const {
    if (it.town) return fill(p.middle_of_town, {{"name", it.name}});
    return it.name.empty() ? std::string(p.a_landmark) : it.name;
  }
  std::string operator()(const FromTurn& it) const {
    const std::string known = it.known == FromTurn::Known::landmark ? landmark_name(it.landmark)
                              : it.known == FromTurn::Known::star   ? guide_name(*it.star)
                                                                    : std::string(p.the_shadow);
    const double right_deg = it.aside.clockwise_deg();
    return fill(right_deg < 0.0 ? p.turn_in_place_less : p.turn_in_place,
                {{"known", known}, {"degrees", fmt::format("{:.0f}", std::fabs(right_deg))}});
  }
  std::string operator()(const WalkTo& it) const {
    return fill(p.walk, {{"distance", height(it.distance_m, miles)},
                         {"latitude", position_degrees(it.target.latitude_deg())},
                         {"longitude", position_degrees(it.target.longitude_deg())}});
  }
};

}  // namespace

const char* way_title(SayingKind kind) {
  switch (kind) {
    case SayingKind::true_bearing:
      return say("True bearing");
    case SayingKind::grid_bearing:
      return say("On a map, from its grid lines");
    case SayingKind::magnetic_bearing:
      return say("On a plain compass");
    case SayingKind::set_compass:
      return say("On a compass set to the declination");
    case SayingKind::rig_sides:
      return say("By the sides of the rig");
    case SayingKind::handle:
      return say("On the ceiling handle");
    case SayingKind::sun_shadow:
      return say("By the shadow of a plumb line");
    case SayingKind::star:
      return say("By a star, a planet or the moon");
    case SayingKind::landmark:
      return say("By a landmark");
    case SayingKind::walked_line:
      return say("By a line walked with the receiver");
    case SayingKind::turn_in_place:
      return say("By turning a compass in place, even near steel");
  }
  return "";
}

std::string heading(const SaidAs& said, bool miles, const TimeZone& zone) {
  return std::visit(HeadingWords{phrases().headings, miles, zone}, said);
}

std::string brief_heading(SaidAs said, bool miles, const TimeZone& zone) {
  if (auto* shadow = std::get_if<FromShadow>(&said); shadow && !shadow->marks.empty()) {
    shadow->marks.erase(shadow->marks.begin() + 1, shadow->marks.end());
    shadow->angle.reset();
  }
  if (auto* stars = std::get_if<FromStars>(&said); stars && !stars->empty()) {
    stars->erase(stars->begin() + 1, stars->end());
  }
  return heading(said, miles, zone);
}

std::string sun_mark(const sky::SunMark& mark, UtcTime now, const TimeZone& zone) {
  const UtcTime time = std::chrono::round<std::chrono::minutes>(mark.time);
  const auto days = local_day(time, zone) - local_day(now, zone);
  std::string when = clock(time, zone);
  if (days == std::chrono::days(1)) {
    when = fill(say("{time} tomorrow"), {{"time", when}});
  } else if (days != std::chrono::days(0)) {
    when = fill(say("{time} on {date}"), {{"time", when}, {"date", date(local_day(time, zone))}});
  }
  return fill(phrases().headings.shadow_lies.at(static_cast<std::size_t>(mark.lies)),
              {{"time", when}});
}

std::string guide_name(sky::GuideBody body) {
  return named(phrases().headings.guide_bodies, body);
}

std::string star_place(sky::GuideBody body, Bearing<True> azimuth, double altitude_deg) {
  const auto& p = phrases().headings;
  return fill(p.star_place, {{"name", guide_name(body)},
                             {"octant", octant(azimuth)},
                             {"degrees", amount_of_degrees(altitude_deg)}});
}

std::string rig_sides(RigAngle angle) {
  const auto& sides = phrases().headings.rig_sides;
  const double step_deg = 360.0 / static_cast<double>(sides.size());
  const auto step = static_cast<std::size_t>(std::lround(angle.clockwise_deg() / step_deg));
  return sides[step % sides.size()];
}

std::string handle_turn(const HandleTurn& turn) {
  const auto& p = phrases().headings;
  const std::string reading = plain_degrees(turn.reading.dial_deg());
  if (std::lround(turn.clockwise_from_below_deg) == 0) {
    return fill(p.leave_handle, {{"reading", reading}});
  }
  std::string words =
      fill(turn.clockwise_from_below_deg > 0.0 ? p.handle_clockwise : p.handle_counterclockwise,
           {{"degrees", amount_of_degrees(turn.clockwise_from_below_deg)},
            {"reading", reading},
            {"side", named(p.sides, turn.swings_toward)}});
  if (std::lround(turn.past_deg) > 0) {
    words += fill(p.past_and_back, {{"degrees", amount_of_degrees(turn.past_deg)}});
  }
  return words;
}

std::string north_mistake(const NorthMistake& mistake) {
  const auto& p = phrases().headings;
  const double off_deg = mistake.off.clockwise_deg();
  std::string effect = p.no_difference;
  if (std::lround(mistake.off.size_deg()) != 0) {
    effect = fill(off_deg > 0.0 ? p.too_far_right : p.too_far_left,
                  {{"degrees", amount_of_degrees(off_deg)}});
  }
  const std::string as_true = plain_degrees(mistake.heading.degrees());
  const std::string as_magnetic = plain_degrees(mistake.magnetic.degrees());
  switch (mistake.kind) {
    case NorthMistakeKind::map_north_as_magnetic:
      return fill(p.map_north_as_magnetic,
                  {{"true", as_true}, {"magnetic", as_magnetic}, {"effect", effect}});
    case NorthMistakeKind::declination_twice:
      return fill(p.declination_twice,
                  {{"true", as_true}, {"magnetic", as_magnetic}, {"effect", effect}});
    case NorthMistakeKind::wrong_sign:
      return fill(p.wrong_sign, {{"wrong", plain_degrees(mistake.needle.degrees())},
                                 {"magnetic", as_magnetic},
                                 {"effect", effect}});
  }
  return {};
}

std::string rig_heading_caution(const RigHeadingCaution& caution) {
  const auto& p = phrases().headings;
  switch (caution.kind) {
    case RigHeadingCaution::Kind::trailer_in_line:
      return p.trailer_in_line;
    case RigHeadingCaution::Kind::true_or_magnetic:
      return p.true_or_magnetic;
    case RigHeadingCaution::Kind::sensor_declination:
      return fill(p.sensor_declination,
                  {{"set", set_declination(caution.set.value_or(Declination()))},
                   {"here", set_declination(caution.here.value_or(Declination()))}});
  }
  return {};
}

std::string rig_moved(double moved_m, bool miles) {
  return fill(phrases().headings.rig_moved, {{"distance", height(moved_m, miles)}});
}

std::string why_no_shadow(sky::NoShadow why) {
  return named(phrases().headings.no_shadow, why);
}

std::string why_no_pole_star(sky::NoPoleStar why) {
  return named(phrases().headings.no_pole_star, why);
}

}  // namespace mastwise::words
