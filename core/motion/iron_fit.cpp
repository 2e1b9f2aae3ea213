#include "core/motion/iron_fit.hpp"

#include "core/inverse.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::motion {
namespace {

constexpr std::size_t kIron = IronFit::kTerms;
using IronRow = std::array<double, kIron>;
using IronMatrix = SquareMatrix<kIron>;

// Hard iron in units of the radius, then the shape times the radius: all near one, so that the
// equations are well scaled.
struct Shape {
  Vector middle = {};
  std::array<double, 6> shape{1.0, 1.0, 1.0, 0.0, 0.0, 0.0};
};

Vector times(const std::array<double, 6>& s, const Vector& v) {
  return {s[0] * v.x + s[3] * v.y + s[4] * v.z, s[3] * v.x + s[1] * v.y + s[5] * v.z,
          s[4] * v.x + s[5] * v.y + s[2] * v.z};
}

double determinant(const std::array<double, 6>& s) {
  return s[0] * (s[1] * s[2] - s[5] * s[5]) - s[3] * (s[3] * s[2] - s[5] * s[4]) +
         s[4] * (s[3] * s[5] - s[1] * s[4]);
}

std::optional<IronMatrix> inverse_of(const IronMatrix& matrix) {
  constexpr double kSingular = 1e-10;
  double largest = 0.0;
  for (std::size_t i = 0; i < kIron; ++i) largest = std::max(largest, matrix[i][i]);
  return inverse(matrix, kSingular * largest);
}

// How far a point is off the unit sphere, and the derivatives of that by the terms.
double off_sphere(const Shape& now, const Vector& point, IronRow& slopes) {
  const Vector from = point - now.middle;
  const Vector seen = times(now.shape, from);
  const double radius = length(seen);
  if (radius <= 0.0) {
    slopes = {};
    return -1.0;
  }
  const Vector unit = (1.0 / radius) * seen;
  const Vector by_middle = times(now.shape, unit);
  slopes = {-by_middle.x,
            -by_middle.y,
            -by_middle.z,
            unit.x * from.x,
            unit.y * from.y,
            unit.z * from.z,
            unit.x * from.y + unit.y * from.x,
            unit.x * from.z + unit.z * from.x,
            unit.y * from.z + unit.z * from.y};
  return radius - 1.0;
}

double squares_of(const Shape& now, std::span<const Vector> points) {
  double squares = 0.0;
  IronRow slopes{};
  for (const Vector& point : points) squares += std::pow(off_sphere(now, point, slopes), 2);
  return squares;
}

Shape moved(const Shape& now, const IronRow& step) {
  Shape next = now;
  next.middle = next.middle + Vector{step[0], step[1], step[2]};
  for (std::size_t i = 0; i < 6; ++i) next.shape[i] += step[3 + i];
  return next;
}

struct Normal {
  IronMatrix matrix{};
  IronRow right{};
};

Normal normal_equations(const Shape& now, std::span<const Vector> points) {
  Normal normal;
  IronRow slopes{};
  for (const Vector& point : points) {
    const double off = off_sphere(now, point, slopes);
    for (std::size_t i = 0; i < kIron; ++i) {
      normal.right[i] -= slopes[i] * off;
      for (std::size_t k = 0; k < kIron; ++k) normal.matrix[i][k] += slopes[i] * slopes[k];
    }
  }
  return normal;
}

// Marquardt's steps: between those of Gauss and Newton and steepest descent.
std::optional<Shape> least_squares(std::span<const Vector> points) {
  constexpr int kMostSteps = 60;
  constexpr double kEnough = 1e-12;
  Shape now;
  double squares = squares_of(now, points), damping = 1e-3;
  for (int step = 0; step < kMostSteps; ++step) {
    Normal normal = normal_equations(now, points);
    for (std::size_t i = 0; i < kIron; ++i) normal.matrix[i][i] *= 1.0 + damping;
    const auto solved = inverse_of(normal.matrix);
    if (!solved) return std::nullopt;
    IronRow change{};
    double size = 0.0;
    for (std::size_t i = 0; i < kIron; ++i) {
      for (std::size_t k = 0; k < kIron; ++k) change[i] += (*solved)[i][k] * normal.right[k];
      size += change[i] * change[i];
    }
    const Shape next = moved(now, change);
    const double then = squares_of(next, points);
    if (!(then <= squares)) {
      damping *= 10.0;
      continue;
    }
    now = next;
    squares = then;
    damping = std::max(1e-9, damping / 10.0);
    if (size < kEnough) return now;
  }
  return now;
}

// The middle of the box about the points, and half of its longest side.
struct Box {
  Vector middle;
  double half = 0.0;
};

Box box_of(std::span<const Vector> points) {
  Vector low = points.front(), high = low;
  for (const Vector& p : points) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y), std::max(high.z, p.z)};
  }
  const Vector sides = high - low;
  return {0.5 * (low + high), 0.5 * std::max({sides.x, sides.y, sides.z})};
}

IronFit fit_of(const Shape& shape, const Box& box, std::span<const Vector> points,
               const IronMatrix& inverse, double variance) {
  IronFit fit{.hard_ut = box.middle + box.half * shape.middle, .points = points.size()};
  IronRow unit{};
  for (std::size_t i = 0; i < 3; ++i) unit[i] = box.half;
  for (std::size_t i = 0; i < 6; ++i) {
    fit.shape[i] = shape.shape[i] / box.half;
    unit[3 + i] = 1.0 / box.half;
  }
  for (std::size_t i = 0; i < kIron; ++i) {
    for (std::size_t k = 0; k < kIron; ++k) {
      fit.covariance[i][k] = variance * unit[i] * unit[k] * inverse[i][k];
    }
  }
  fit.strength_ut = 1.0 / std::cbrt(determinant(fit.shape));
  fit.scatter = std::sqrt(variance);
  std::array<bool, kPatches> seen{};
  for (const Vector& point : points) seen[patch_of(times(fit.shape, point - fit.hard_ut))] = true;
  fit.patches = static_cast<std::size_t>(std::count(seen.begin(), seen.end(), true));
  return fit;
}

bool positive_definite(const std::array<double, 6>& s) {
  return s[0] > 0.0 && s[0] * s[1] - s[3] * s[3] > 0.0 && determinant(s) > 0.0;
}

}  // namespace

std::size_t patch_of(const Vector& from_middle) {
  const std::array<double, 3> v{from_middle.x, from_middle.y, from_middle.z};
  std::size_t axis = 0;
  for (std::size_t i = 1; i < 3; ++i) {
    if (std::fabs(v[i]) > std::fabs(v[axis])) axis = i;
  }
  const bool first = v[(axis + 1) % 3] >= 0.0, second = v[(axis + 2) % 3] >= 0.0;
  const std::size_t face = 2 * axis + (v[axis] >= 0.0 ? 0 : 1);
  return 4 * face + 2 * static_cast<std::size_t>(first) + static_cast<std::size_t>(second);
}

bool add_point(std::vector<Vector>& points, const Vector& reading_ut) {
  if (!is_finite(reading_ut)) return false;
  const auto near = [&](const Vector& point) { return length(point - reading_ut) < kApart_ut; };
  if (std::any_of(points.begin(), points.end(), near)) return false;
  points.push_back(reading_ut);
  // The middle has moved, so that other patches may have one too many, too.
  const Vector middle = box_of(points).middle;
  std::array<std::size_t, kPatches> kept{};
  std::vector<Vector> newest;
  for (auto point = points.rbegin(); point != points.rend(); ++point) {
    if (kept[patch_of(*point - middle)]++ < kPointsPerPatch) newest.push_back(*point);
  }
  points.assign(newest.rbegin(), newest.rend());
  return true;
}

Vector IronFit::without_iron_ut(const Vector& reading_ut) const {
  return strength_ut * times(shape, reading_ut - hard_ut);
}

Vector IronFit::with_iron_ut(const Vector& field_ut) const {
  const auto& [xx, yy, zz, xy, xz, yz] = shape;
  const std::array<double, 6> adjugate{yy * zz - yz * yz, xx * zz - xz * xz, xx * yy - xy * xy,
                                       xz * yz - xy * zz, xy * yz - xz * yy, xy * xz - yz * xx};
  return hard_ut + (1.0 / (strength_ut * determinant(shape))) * times(adjugate, field_ut);
}

std::optional<IronFit> fit_iron(std::span<const Vector> points) {
  if (points.size() < kFewestPoints) return std::nullopt;
  points = points.last(std::min(points.size(), kMostPoints));
  const Box box = box_of(points);
  if (!(box.half > 0.0) || !std::isfinite(box.half)) return std::nullopt;
  std::vector<Vector> scaled;
  for (const Vector& point : points) scaled.push_back((1.0 / box.half) * (point - box.middle));
  const auto shape = least_squares(scaled);
  if (!shape || !positive_definite(shape->shape)) return std::nullopt;
  const auto inverse = inverse_of(normal_equations(*shape, scaled).matrix);
  if (!inverse) return std::nullopt;
  const double freedom = static_cast<double>(points.size() - kIron);
  return fit_of(*shape, box, points, *inverse, squares_of(*shape, scaled) / freedom);
}

}  // namespace mastwise::motion
