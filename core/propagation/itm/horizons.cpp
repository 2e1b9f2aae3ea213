#include "core/propagation/itm/terrain.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace mastwise::itm {
namespace {

constexpr std::size_t kBlock = 16;

// The heights as one terminal sees them: point 0 is its own foot.
template <bool kReversed>
class View {
 public:
  View(const TerrainProfile& profile, double structural_height_m, double curvature_per_m)
      : heights_(profile.heights_m.data()),
        last_(profile.heights_m.size() - 1),
        spacing_m_(profile.spacing_m),
        half_curvature_(0.5 * curvature_per_m),
        antenna_m_(height(0) + structural_height_m) {}

  Horizon horizon(double opposite_antenna_m) const {
    const double distance_m = spacing_m_ * static_cast<double>(last_);
    Horizon best{distance_m,
                 (opposite_antenna_m - antenna_m_) / distance_m - half_curvature_ * distance_m};
    std::size_t i = 1;
    for (; i + kBlock <= last_; i += kBlock) {
      if (block_rises_above(best.angle_rad, i)) search(i, i + kBlock, best);
    }
    search(i, last_, best);
    return best;
  }

  double antenna_m() const { return antenna_m_; }

 private:
  double height(std::size_t i) const { return heights_[kReversed ? last_ - i : i]; }

  // Whether any point of the block may be above the ray; without a division, so that a compiler
  // can take several points at once.
  bool block_rises_above(double angle_rad, std::size_t begin) const {
    constexpr double kRoundingM = 1e-6;
    const double* heights =
        kReversed ? heights_ + (last_ - begin - (kBlock - 1)) : heights_ + begin;
    const double slope = angle_rad * spacing_m_;
    const double bulge = half_curvature_ * spacing_m_ * spacing_m_;
    const double start = static_cast<double>(kReversed ? begin + kBlock - 1 : begin);
    std::array<double, 4> highest = {-1e9, -1e9, -1e9, -1e9};
    for (std::size_t j = 0; j < kBlock; j += 4) {
      for (std::size_t lane = 0; lane < 4; ++lane) {
        const double step = static_cast<double>(static_cast<int>(j + lane));
        const double i = kReversed ? start - step : start + step;
        const double above = heights[j + lane] - i * (slope + bulge * i);
        highest[lane] = above > highest[lane] ? above : highest[lane];
      }
    }
    return std::max(std::max(highest[0], highest[1]), std::max(highest[2], highest[3])) >
           antenna_m_ - kRoundingM;
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

std::array<Horizon, 2> horizons(const Path& path, const TerrainProfile& profile) {
  const View<false> transmitter(profile, path.terminals[0].structural_height_m,
                                path.earth_curvature_per_m);
  const View<true> receiver(profile, path.terminals[1].structural_height_m,
                            path.earth_curvature_per_m);
  return {transmitter.horizon(receiver.antenna_m()), receiver.horizon(transmitter.antenna_m())};
}

}  // namespace mastwise::itm
