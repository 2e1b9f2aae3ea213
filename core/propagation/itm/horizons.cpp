#include "core/propagation/itm/terrain.hpp"

#include <algorithm>
#include <cstddef>

namespace mastwise::itm {
namespace {

// The heights as one terminal sees them: point 0 is its foot.
template <bool kReversed>
class View {
 public:
  View(const TerrainProfile& profile, double structural_height_m, double curvature_per_m)
      : heights_(profile.heights_m.data()),
        last_(profile.heights_m.size() - 1),
        spacing_m_(profile.spacing_m),
        half_curvature_(0.5 * curvature_per_m),
        antenna_m_(height(0) + structural_height_m) {}

  Horizon horizon(const Relief& relief, double opposite_antenna_m) const {
    const double distance_m = spacing_m_ * static_cast<double>(last_);
    Horizon best{distance_m,
                 (opposite_antenna_m - antenna_m_) / distance_m - half_curvature_ * distance_m};
    for (std::size_t block = 0; block < relief.blocks; ++block) {
      const std::size_t from_start = kReversed ? relief.blocks - 1 - block : block;
      const std::size_t first = from_start * relief.block_size;
      const std::size_t behind = std::min(first + relief.block_size, last_ + 1);
      // The feet are not obstacles.
      const std::size_t begin = std::max<std::size_t>(kReversed ? last_ + 1 - behind : first, 1);
      const std::size_t end = std::min(kReversed ? last_ + 1 - first : behind, last_);
      if (begin < end && may_rise_above(best.angle_rad, begin, end, relief.highest_m[from_start])) {
        search(begin, end, best);
      }
    }
    return best;
  }

  double antenna_m() const { return antenna_m_; }

 private:
  double height(std::size_t i) const { return heights_[kReversed ? last_ - i : i]; }

  // Whether a point as high as the block's highest would rise above the ray at its lowest.
  bool may_rise_above(double angle_rad, std::size_t begin, std::size_t end,
                      double highest_m) const {
    constexpr double kRoundingM = 1e-6;
    const double near_m = spacing_m_ * static_cast<double>(begin);
    const double far_m = spacing_m_ * static_cast<double>(end - 1);
    const double lowest_ray_m = antenna_m_ + angle_rad * (angle_rad < 0 ? far_m : near_m) +
                                half_curvature_ * near_m * near_m;
    return highest_m > lowest_ray_m - kRoundingM;
  }

  void search(std::size_t begin, std::size_t end, Horizon& best) const {
    for (std::size_t i = begin; i < end; ++i) {
      const double distance_m = spacing_m_ * static_cast<double>(i);
      const double angle_rad = (height(i) - antenna_m_) / distance_m - half_curvature_ * distance_m;
      if (angle_rad > best.angle_rad) best = {distance_m, angle_rad};
    }
  }

  const double* heights_;
  std::size_t last_;
  double spacing_m_;
  double half_curvature_;
  double antenna_m_;
};

}  // namespace

std::array<Horizon, 2> horizons(const Path& path, const TerrainProfile& profile,
                                const Relief& relief) {
  const View<false> transmitter(profile, path.terminals[0].structural_height_m,
                                path.earth_curvature_per_m);
  const View<true> receiver(profile, path.terminals[1].structural_height_m,
                            path.earth_curvature_per_m);
  return {transmitter.horizon(relief, receiver.antenna_m()),
          receiver.horizon(relief, transmitter.antenna_m())};
}

}  // namespace mastwise::itm
