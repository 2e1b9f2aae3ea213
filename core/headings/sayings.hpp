#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/headings/aim_card.hpp"
#include "core/headings/handle.hpp"
#include "core/headings/heading_error.hpp"
#include "core/result.hpp"
#include "core/sky/guide_bodies.hpp"
#include "core/sky/sun_marks.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace mastwise {

// A way to express one heading.
enum class SayingKind : std::uint8_t {
  true_bearing,
  grid_bearing,
  magnetic_bearing,  // on a plain compass
  set_compass,       // on a compass with its declination set
  rig_sides,
  handle,
  sun_shadow,
  star,  // or the moon, or a planet
  landmark,
  walked_line,
  turn_in_place,  // by a compass, from a known direction
};
std::string_view to_text(SayingKind kind);

// From the shadow of a plumb line, seen along it away from the sun, to the heading.
struct ShadowAngle {
  Turn now;
  Turn in_five_minutes;
  bool operator==(const ShadowAngle&) const = default;
};

// The shadow of a plumb line: at these times it needs no angle. One of the two is not empty.
struct FromShadow {
  UtcTime now = {};
  std::vector<sky::SunMark> marks = {};  // from now on
  std::optional<ShadowAngle> angle = {};
  bool operator==(const FromShadow&) const = default;
};

// Walk toward this place; the point beyond it in line is the heading.
struct WalkTo {
  Position target;
  double distance_m;
  bool operator==(const WalkTo&) const = default;
};

// From the grid lines of a map with this zone's grid.
struct OnGrid {
  Bearing<Grid> bearing;
  std::string zone = {};
  bool operator==(const OnGrid&) const = default;
};

// A compass with its declination set to this then reads the true bearing.
struct OnSetCompass {
  Declination declination;
  Bearing<True> reads;
  bool operator==(const OnSetCompass&) const = default;
};

// From the moon, a planet or a star to the heading.
struct FromStar {
  sky::GuideBody body;
  Bearing<True> azimuth;
  double altitude_deg;  // as seen
  Turn aside;
  bool operator==(const FromStar&) const = default;
};
using FromStars = std::vector<FromStar>;  // at least one, the best first

// From a landmark to the heading; a town's landmark is its middle.
struct FromLandmark {
  Turn aside;
  std::string name = {};  // empty if unnamed
  bool town = false;
  bool operator==(const FromLandmark&) const = default;
};

// Read a compass along the known direction, without a step turn until it reads `aside` more. The
// pull of iron is in both readings.
struct FromTurn {
  enum class Known : std::uint8_t { landmark, shadow, star } known = Known::shadow;
  Turn aside;
  FromLandmark landmark = {};               // of Known::landmark
  std::optional<sky::GuideBody> star = {};  // of Known::star
  bool operator==(const FromTurn&) const = default;
};

// The content of each way, one alternative for each SayingKind, in its order. Bearing<Magnetic> is
// the reading of a plain compass.
using SaidAs = std::variant<Bearing<True>, OnGrid, Bearing<Magnetic>, OnSetCompass, RigAngle,
                            HandleTurn, FromShadow, FromStars, FromLandmark, WalkTo, FromTurn>;

// One heading, expressed in one way.
struct Saying {
  SayingKind kind;
  PointingMethod method;
  SaidAs said_as;
  HeadingBudget budget;
  double sigma_deg;  // of the budget
  bool operator==(const Saying&) const = default;
};

// A way that cannot be used here and now, and why.
struct LeftOut {
  SayingKind kind;
  Error why;
  bool operator==(const LeftOut&) const = default;
};

struct Sayings {
  std::vector<Saying> sayings;    // smallest error first
  std::vector<LeftOut> left_out;  // in the order of SayingKind
};

// The sun while its shadow can be used.
struct SunNow {
  Bearing<True> azimuth;
  Bearing<True> azimuth_in_five_minutes;
};

struct Landmark {
  std::string name = {};  // empty if unnamed
  bool town = false;      // the position is the middle of the town of that name
  Position position;
  double error_m = 0.0;  // one sigma
};

// The inputs of all ways. A way whose inputs are unknown is left out.
struct SayingInputs {
  Position from;  // the stop
  AimCard card;
  // Errors of the stop, transmitter, needle, rig heading, clock and walk; the rest is filled in
  // from the fields below.
  HeadingContext context = {};
  std::optional<Handle> handle = {};
  std::optional<HandleReading> handle_now = {};
  UtcTime now = {};
  std::optional<SunNow> sun = {};
  std::vector<sky::SunMark> sun_marks = {};  // for the card's heading, from now on
  std::vector<sky::Guide> guides = {};       // those that can be used now, the best first
  std::optional<Landmark> landmark = {};
  Turn compass_off = {};              // the compass reads this much more than by declination
  std::optional<double> walk_m = {};  // length of a possible walk from the stop, over 0
};

// The heading of `card` in every available way, each with its error budget. In the blackout zone of
// the magnetic model every compass is left out. Sources: those of the card and of heading_budget.
Sayings say_heading(const SayingInputs& inputs);

// The way with the smallest error that points the antenna, which a bearing alone does not; null if
// there is none. Nobody knows of the clouds: `sky_seen` false leaves out the sun and the stars.
const Saying* best_way(std::span<const Saying> sayings, bool sky_seen);
bool needs_sky(const Saying& saying);

}  // namespace mastwise
