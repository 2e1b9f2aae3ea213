#include "core/reception/obstacle_ring.hpp"

#include "core/propagation/p1812/knife_edge.hpp"
#include "core/propagation/wavelength.hpp"
#include "core/reception/obstacles.hpp"
#include "core/reception/surroundings.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

namespace mastwise::reception {
namespace {

constexpr double kRadian = std::numbers::pi / 180.0;
// Of a hill's distance: as far a person's hill and the ground's may differ [our choice].
constexpr double kSameHill = 3.0;

// Loss of an edge `above_m` over a ray to a far station, `near_m` (positive) from the antenna.
double far_edge_loss_db(double above_m, double near_m, double frequency_mhz) {
  return p1812::knife_edge_loss_db(above_m *
                                   std::sqrt(2.0 / (wavelength_m(frequency_mhz) * near_m)));
}

double power(double loss_db) {
  return std::pow(10.0, -loss_db / 10.0);
}

// The power that passes an upright end of a screen; the ray is `inside_deg` from it, negative:
// beside the screen.
double past_end(double inside_deg, double distance_m, double frequency_mhz) {
  if (inside_deg >= 90.0) return 0.0;
  if (inside_deg <= -90.0) return 1.0;
  const double along_m = distance_m * std::cos(inside_deg * kRadian);
  return power(far_edge_loss_db(distance_m * std::sin(inside_deg * kRadian),
                                std::max(along_m, 1e-6), frequency_mhz));
}

// A screen as seen in one direction.
struct Screen {
  double distance_m = 0.0;
  double above_m = 0.0;                    // its top over the ray
  double left_deg = 0.0, right_deg = 0.0;  // from its ends to the ray
  double through = 0.0;                    // the share of power that it lets through
  double loss_db(double frequency_mhz) const {
    const double around =
        std::min(1.0, power(far_edge_loss_db(above_m, distance_m, frequency_mhz)) +
                          past_end(left_deg, distance_m, frequency_mhz) +
                          past_end(right_deg, distance_m, frequency_mhz));
    return -10.0 * std::log10(through + (1.0 - through) * around);
  }
};

// Neighboring sides with obstacles from `side` on, clockwise or anticlockwise, without itself.
std::size_t going_on(const ObstacleRing& ring, std::size_t side, bool clockwise) {
  std::size_t count = 0;
  std::size_t next = side;
  while (count < kSides) {
    next = (next + (clockwise ? 1 : kSides - 1)) % kSides;
    if (!ring.sides[next].blocks()) break;
    ++count;
  }
  return count;
}

double side_loss_db(const ObstacleRing& ring, std::size_t side, Bearing<True> bearing,
                    const GroundAhead& ground, double antenna_m, double frequency_mhz,
                    bool in_leaf) {
  const Side& what = ring.sides[side];
  const double off_deg = (bearing - ring.middle_of(side)).clockwise_deg();
  Screen screen{.distance_m = what.distance_m,
                .left_deg = kSide_deg / 2.0 + off_deg,
                .right_deg = kSide_deg / 2.0 - off_deg};
  if (ring.side_toward(bearing) == side) {
    screen.left_deg += kSide_deg * static_cast<double>(going_on(ring, side, false));
    screen.right_deg += kSide_deg * static_cast<double>(going_on(ring, side, true));
  } else if (std::min(screen.left_deg, screen.right_deg) <= -90.0) {
    return 0.0;
  }
  const bool hill = what.kind == SideKind::hill;
  const double same_m = hill ? kSameHill * what.distance_m : what.distance_m;
  const double slope = ground.slope_beyond(same_m);
  screen.above_m = what.height_m - antenna_m - slope * what.distance_m;
  if (what.kind == SideKind::trees) {
    screen.through = power(leaves_loss_db(kTreesDepth_m, frequency_mhz, in_leaf));
  }
  const double known_db = hill ? ground.edge_loss_db(same_m, slope, frequency_mhz) : 0.0;
  return std::max(0.0, screen.loss_db(frequency_mhz) - known_db);
}

constexpr std::array<std::string_view, kSides> kDirections{"N", "NE", "E", "SE",
                                                           "S", "SW", "W", "NW"};

Error bad_side(std::string_view text, const char* what) {
  return {.what = what,
          .where = std::string(text),
          .remedy = "write an obstacle as NE:trees, or NE:trees:20m:12m with distance and height"};
}

std::optional<double> number(std::string_view text) {
  double value = 0.0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  const bool whole = read.ec == std::errc() && read.ptr == text.data() + text.size();
  return whole && std::isfinite(value) ? std::optional(value) : std::nullopt;
}

std::optional<double> meters(std::string_view text) {
  text = words::trimmed(text);
  if (!text.empty() && words::upper(text.back()) == 'M') text.remove_suffix(1);
  return number(words::trimmed(text));
}

std::optional<std::size_t> direction(std::string_view text) {
  text = words::trimmed(text);
  for (std::size_t i = 0; i < kSides; ++i) {
    if (words::same_word(text, kDirections[i])) return i;
  }
  const auto degrees = number(text);
  if (!degrees) return std::nullopt;
  return ObstacleRing{}.side_toward(Bearing<True>::degrees(*degrees));
}

}  // namespace

std::string_view to_text(SideKind kind) {
  switch (kind) {
    case SideKind::unmarked:
      return "not marked";
    case SideKind::open:
      return "open";
    case SideKind::trees:
      return "trees";
    case SideKind::rig:
      return "rig";
    case SideKind::hill:
      return "hill";
  }
  return {};
}

Result<SideKind> parse_side_kind(std::string_view text) {
  constexpr std::array kKinds{SideKind::open, SideKind::trees, SideKind::rig, SideKind::hill};
  return words::parse_choice(text, kKinds, "a kind of obstacle");
}

Side usual_side(SideKind kind, bool far, bool high) {
  switch (kind) {
    case SideKind::unmarked:
    case SideKind::open:
      break;
    case SideKind::trees:
      return {kind, far ? 45.0 : 15.0, high ? 15.0 : 8.0};
    case SideKind::rig:
      return {kind, far ? 16.0 : 8.0, high ? 4.0 : 3.0};
    case SideKind::hill:
      return {kind, far ? 500.0 : 150.0, high ? 60.0 : 20.0};
  }
  return {.kind = kind};
}

Bearing<True> ObstacleRing::middle_of(std::size_t side) const {
  return Bearing<True>::degrees(first.degrees() + kSide_deg * static_cast<double>(side));
}

std::size_t ObstacleRing::side_toward(Bearing<True> bearing) const {
  const double into_deg = fold_circle_deg(bearing.degrees() - first.degrees() + kSide_deg / 2.0);
  return static_cast<std::size_t>(into_deg / kSide_deg) % kSides;
}

bool ObstacleRing::blank() const {
  return std::all_of(sides.begin(), sides.end(),
                     [](const Side& side) { return side.kind == SideKind::unmarked; });
}

bool ObstacleRing::clear() const {
  return std::none_of(sides.begin(), sides.end(), [](const Side& side) { return side.blocks(); });
}

GroundAhead::GroundAhead(std::span<const double> heights_m, double spacing_m,
                         double station_antenna_amsl_m, double stop_antenna_amsl_m)
    : heights_m_(heights_m),
      spacing_m_(spacing_m),
      station_amsl_m_(station_antenna_amsl_m),
      stop_amsl_m_(stop_antenna_amsl_m) {}

double GroundAhead::above_antenna_m(std::size_t point, double distance_m) const {
  const double amsl_m = point == 0 ? station_amsl_m_ : heights_m_[point];
  return amsl_m - stop_amsl_m_ - distance_m * distance_m / (2.0 * kRayEarthRadius_m);
}

double GroundAhead::slope_beyond(double from_m) const {
  if (heights_m_.size() < 2) return 0.0;
  const std::size_t last = heights_m_.size() - 1;
  double slope = -std::numeric_limits<double>::infinity();
  for (std::size_t point = 0; point < last; ++point) {
    const double distance_m = static_cast<double>(last - point) * spacing_m_;
    if (distance_m <= from_m && point > 0) break;
    slope = std::max(slope, above_antenna_m(point, distance_m) / distance_m);
  }
  return slope;
}

double GroundAhead::edge_loss_db(double to_m, double slope, double frequency_mhz) const {
  double most_db = 0.0;
  const std::size_t last = heights_m_.empty() ? 0 : heights_m_.size() - 1;
  for (std::size_t from_stop = 1; from_stop < last; ++from_stop) {
    const double distance_m = static_cast<double>(from_stop) * spacing_m_;
    if (distance_m > to_m) break;
    const double above_m = above_antenna_m(last - from_stop, distance_m) - slope * distance_m;
    most_db = std::max(most_db, far_edge_loss_db(above_m, distance_m, frequency_mhz));
  }
  return most_db;
}

RingLoss ring_loss(const ObstacleRing& ring, Bearing<True> bearing, const GroundAhead& ground,
                   double antenna_m, double frequency_mhz, bool in_leaf) {
  RingLoss worst{.side = ring.side_toward(bearing)};
  for (std::size_t side = 0; side < kSides; ++side) {
    if (!ring.sides[side].blocks()) continue;
    const double loss_db =
        side_loss_db(ring, side, bearing, ground, antenna_m, frequency_mhz, in_leaf);
    if (loss_db > worst.loss_db) worst = {loss_db, side};
  }
  return worst;
}

Result<NamedSide> parse_side(std::string_view text) {
  std::vector<std::string_view> parts;
  for (std::string_view rest = text;;) {
    const std::size_t colon = rest.find(':');
    parts.push_back(rest.substr(0, colon));
    if (colon == std::string_view::npos) break;
    rest.remove_prefix(colon + 1);
  }
  if (parts.size() != 2 && parts.size() != 4) return bad_side(text, "not an obstacle");
  const auto side = direction(parts[0]);
  if (!side) return bad_side(text, "unknown direction");
  const auto kind = parse_side_kind(parts[1]);
  if (!kind) return kind.error();
  NamedSide named{*side, usual_side(*kind, false, true)};
  if (parts.size() == 2) return named;
  const auto distance_m = meters(parts[2]), height_m = meters(parts[3]);
  if (!distance_m || !height_m) return bad_side(text, "distance or height is not a number");
  if (!named.what.blocks()) return bad_side(text, "an open side has no distance and height");
  named.what.distance_m = *distance_m;
  named.what.height_m = *height_m;
  if (auto error = fault(named.what)) return *error;
  return named;
}

std::optional<Error> fault(const Side& side) {
  if (!side.blocks()) return std::nullopt;
  const bool possible = side.distance_m >= kNearestSide_m && side.distance_m <= kFarthestSide_m &&
                        side.height_m > 0.0 && side.height_m <= kHighestSide_m;
  if (possible) return std::nullopt;
  return Error{.what = "an obstacle's distance or height is out of range",
               .where = std::string(to_text(side.kind)),
               .remedy = "give 1 to 3000 m away and up to 1000 m high"};
}

}  // namespace mastwise::reception
