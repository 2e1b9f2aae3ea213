#include "core/geo/weak_field.hpp"

#include "core/geo/geodesic.hpp"

namespace mastwise {
namespace {

class WeakFieldSearch {
 public:
  WeakFieldSearch(const MagneticModel& model, UtcTime date, double height_m)
      : model_(model), date_(date), height_m_(height_m) {}

  // The least horizontal field in a hemisphere: of a coarse grid, then in ever shorter steps.
  Position pole(double hemisphere) const {
    constexpr int kLeastLatitude_deg = 50, kRow_deg = 5, kColumn_deg = 15;
    Position best = *Position::at_deg(hemisphere * kLeastLatitude_deg, 0.0);
    for (int row_deg = kLeastLatitude_deg; row_deg < 90; row_deg += kRow_deg) {
      for (int column_deg = -180; column_deg < 180; column_deg += kColumn_deg) {
        better(best, *Position::at_deg(hemisphere * row_deg, column_deg));
      }
    }
    constexpr double kFirstStep_m = 300e3, kLastStep_m = 50.0;
    constexpr int kSides = 8;
    for (double step_m = kFirstStep_m; step_m > kLastStep_m;) {
      const Position from = best;
      bool found = false;
      for (int side = 0; side < kSides; ++side) {
        found |=
            better(best, destination(from, Bearing<True>::degrees(360.0 / kSides * side), step_m));
      }
      if (!found) step_m /= 2.0;
    }
    return best;
  }

  std::vector<Position> outline(const Position& pole, double limit_nt) const {
    std::vector<Position> outline;
    for (int ray = 0; ray < kOutlineBearings; ++ray) {
      const auto bearing = Bearing<True>::degrees(360.0 / kOutlineBearings * ray);
      outline.push_back(destination(pole, bearing, reach_m(pole, bearing, limit_nt)));
    }
    return outline;
  }

 private:
  double horizontal_nt(const Position& position) const {
    return model_.at(position, date_, height_m_).horizontal_nt;
  }

  bool better(Position& best, const Position& other) const {
    if (horizontal_nt(other) >= horizontal_nt(best)) return false;
    best = other;
    return true;
  }

  // How far the field stays below the limit on a bearing from the pole.
  double reach_m(const Position& pole, Bearing<True> bearing, double limit_nt) const {
    const auto weak = [&](double distance_m) {
      return horizontal_nt(destination(pole, bearing, distance_m)) < limit_nt;
    };
    constexpr double kStep_m = 100e3, kMost_m = 5000e3, kNear_m = 500.0;
    double outside_m = kStep_m;
    while (outside_m < kMost_m && weak(outside_m)) outside_m += kStep_m;
    double inside_m = outside_m - kStep_m;
    while (outside_m - inside_m > kNear_m) {
      const double middle_m = 0.5 * (inside_m + outside_m);
      (weak(middle_m) ? inside_m : outside_m) = middle_m;
    }
    return 0.5 * (inside_m + outside_m);
  }

  const MagneticModel& model_;
  UtcTime date_;
  double height_m_;
};

}  // namespace

std::array<WeakField, 2> weak_fields(const MagneticModel& model, UtcTime date, double height_m) {
  const WeakFieldSearch search(model, date, height_m);
  const auto around = [&](double hemisphere) {
    const Position pole = search.pole(hemisphere);
    return WeakField{.pole = pole,
                     .blackout = search.outline(pole, kBlackoutBelow_nt),
                     .caution = search.outline(pole, kCautionBelow_nt)};
  };
  return {around(1.0), around(-1.0)};
}

}  // namespace mastwise
