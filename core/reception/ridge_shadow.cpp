#include "core/reception/ridge_shadow.hpp"

#include "core/reception/obstacles.hpp"
#include "core/terrain/profile.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <span>

namespace mastwise::reception {
namespace {

// A cell as the tower sees it.
struct Seen {
  std::uint32_t line;  // of the sweep
  float distance_m;
  std::uint32_t cell;
};

// One line of the sweep: the edges above all that is behind them, from the tower on. Of two edges
// at one slope the farther costs more, so an edge that a farther one reaches above is dropped.
class Line {
 public:
  Line(const Tower& tower, const terrain::PathProfile& profile, double rig_antenna_m)
      : tower_(tower), profile_(profile), rig_antenna_m_(rig_antenna_m) {}

  void restart() {
    edges_.clear();
    next_ = 1;
    gap_ = false;
  }
  // `distance_m` grows from call to call.
  std::uint8_t loss_at(double distance_m);

 private:
  struct Edge {
    double slope;  // from the tower's antenna
    double distance_m;
  };

  // The slope to a height over the curved earth.
  double slope_to(double height_m, double distance_m) const {
    const double drop_m = distance_m * distance_m / (2.0 * kRayEarthRadius_m);
    return (height_m - drop_m - tower_.antenna_amsl_m) / distance_m;
  }
  double ground_m(double distance_m) const {
    const double at = distance_m / profile_.spacing_m;
    const std::size_t last = profile_.heights_m.size() - 2;
    const std::size_t i = std::min(static_cast<std::size_t>(at), last);
    const double part = std::min(at - static_cast<double>(i), 1.0);
    return profile_.heights_m[i] + part * (profile_.heights_m[i + 1] - profile_.heights_m[i]);
  }
  void take_edges(double to_m);

  const Tower& tower_;
  const terrain::PathProfile& profile_;
  double rig_antenna_m_;
  std::vector<Edge> edges_;
  std::size_t next_ = 1;  // point of the profile
  bool gap_ = false;      // unknown ground among the points so far
};

void Line::take_edges(double to_m) {
  for (; next_ < profile_.heights_m.size(); ++next_) {
    const double distance_m = static_cast<double>(next_) * profile_.spacing_m;
    if (distance_m > to_m) return;
    const double height_m = profile_.heights_m[next_];
    if (std::isnan(height_m)) {
      gap_ = true;
      continue;
    }
    const Edge edge{slope_to(height_m, distance_m), distance_m};
    while (!edges_.empty() && edges_.back().slope <= edge.slope) edges_.pop_back();
    edges_.push_back(edge);
  }
}

std::uint8_t Line::loss_at(double distance_m) {
  take_edges(distance_m - profile_.spacing_m);
  const double ground = ground_m(distance_m);
  if (std::isnan(ground)) return RidgeShadow::kUnknown;
  const double slope = slope_to(ground + rig_antenna_m_, distance_m);
  // The square of v with its sign, without what all edges share.
  const Edge* worst = nullptr;
  double most = -1e300;
  for (const Edge& edge : edges_) {
    const double above = edge.slope - slope;
    const double v = above * std::fabs(above) * edge.distance_m / (distance_m - edge.distance_m);
    if (v <= most) continue;
    most = v;
    worst = &edge;
  }
  double loss_db = 0.0;
  if (worst != nullptr) {
    loss_db = edge_loss_db((worst->slope - slope) * worst->distance_m, worst->distance_m,
                           distance_m - worst->distance_m, tower_.frequency_mhz);
  }
  if (gap_ && loss_db < RidgeShadow::kRidge_db) return RidgeShadow::kUnknown;
  // Rounded down, so that no ridge seems to cost kRidge_db that does not.
  return static_cast<std::uint8_t>(1.0 + std::min(std::floor(loss_db), 253.0));
}

// The cells in the order of the sweep.
class Sweep {
 public:
  Sweep(map::PlanePoint tower, int side, double meters_per_cell)
      : tower_(tower), side_(side), meters_per_cell_(meters_per_cell) {
    const double half_m = meters_per_cell * side / 2.0;
    const double farthest_m =
        std::hypot(std::fabs(tower.east_m) + half_m, std::fabs(tower.north_m) + half_m);
    lines_ = std::ceil(2.0 * std::numbers::pi * farthest_m / meters_per_cell);
    for (int row = 0; row < side; ++row) {
      for (int column = 0; column < side; ++column) seen_.push_back(seen_at(row, column));
    }
    std::sort(seen_.begin(), seen_.end(), [](const Seen& a, const Seen& b) {
      return a.line != b.line ? a.line < b.line : a.distance_m < b.distance_m;
    });
  }

  // Calls `use` with the cells of each line that has any, nearest first.
  template <class Use>
  void each_line(Use use) const {
    for (auto first = seen_.begin(); first != seen_.end();) {
      const auto end = std::find_if(first, seen_.end(),
                                    [&](const Seen& seen) { return seen.line != first->line; });
      use(std::span<const Seen>(&*first, static_cast<std::size_t>(end - first)));
      first = end;
    }
  }

  map::PlanePoint end_of(std::span<const Seen> line) const {
    const double bearing = 2.0 * std::numbers::pi * line.front().line / lines_;
    const double distance_m = line.back().distance_m;
    return {tower_.east_m + distance_m * std::sin(bearing),
            tower_.north_m + distance_m * std::cos(bearing)};
  }

 private:
  Seen seen_at(int row, int column) const {
    const double east_m = (column + 0.5 - side_ / 2.0) * meters_per_cell_ - tower_.east_m;
    const double north_m = (side_ / 2.0 - row - 0.5) * meters_per_cell_ - tower_.north_m;
    double turns = std::atan2(east_m, north_m) / (2.0 * std::numbers::pi);
    if (turns < 0.0) turns += 1.0;
    const auto line = static_cast<std::uint32_t>(std::lround(turns * lines_)) %
                      static_cast<std::uint32_t>(lines_);
    return {line, static_cast<float>(std::hypot(east_m, north_m)),
            static_cast<std::uint32_t>(row * side_ + column)};
  }

  map::PlanePoint tower_;
  int side_;
  double meters_per_cell_;
  double lines_ = 0.0;  // around the tower
  std::vector<Seen> seen_;
};

}  // namespace

Result<RidgeShadow> ridge_shadow(const terrain::TileSource& tiles,
                                 const map::Projection& projection, const Tower& tower,
                                 double rig_antenna_m, int side, double meters_per_cell) {
  constexpr int kMostCells = 1024;
  constexpr double kLeastCell_m = 10.0, kMostCell_m = 10'000.0;
  if (side < 1 || side > kMostCells || !(meters_per_cell >= kLeastCell_m) ||
      !(meters_per_cell <= kMostCell_m)) {
    return Error{.what = "the grid of a ridge's shadow is out of range",
                 .remedy = "ask for 1 to 1024 cells a side of 10 to 10,000 m"};
  }
  const auto at = projection.to_plane(tower.position);
  if (!at) return Error{.what = "the tower is too far away for the map"};
  RidgeShadow shadow{.side = side, .meters_per_cell = meters_per_cell};
  shadow.cells.assign(static_cast<std::size_t>(side) * static_cast<std::size_t>(side),
                      RidgeShadow::kUnknown);
  terrain::PathProfile profile;
  Line line(tower, profile, rig_antenna_m);
  const Sweep sweep(*at, side, meters_per_cell);
  sweep.each_line([&](std::span<const Seen> cells) {
    const auto end = projection.to_earth(sweep.end_of(cells));
    if (!end || cells.back().distance_m < 1.0F) return;
    terrain::cut_profile(tiles, tower.position, *end, profile, terrain::ProfileDetail::k90m);
    line.restart();
    for (const Seen& seen : cells) shadow.cells[seen.cell] = line.loss_at(seen.distance_m);
  });
  return shadow;
}

}  // namespace mastwise::reception
