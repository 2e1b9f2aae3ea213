#pragma once

#include <array>
#include <cmath>

namespace mastwise::motion {

// A vector in the tablet's frame: x to the right along the screen, y to its upper edge, z out of
// the screen [Linux kernel, iio mount-matrix.txt].
struct Vector {
  double x = 0.0, y = 0.0, z = 0.0;
  bool operator==(const Vector&) const = default;

  friend Vector operator+(const Vector& a, const Vector& b) {
    return {a.x + b.x, a.y + b.y, a.z + b.z};
  }
  friend Vector operator-(const Vector& a, const Vector& b) {
    return {a.x - b.x, a.y - b.y, a.z - b.z};
  }
  friend Vector operator*(double factor, const Vector& v) {
    return {factor * v.x, factor * v.y, factor * v.z};
  }
};

inline double dot(const Vector& a, const Vector& b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
inline Vector cross(const Vector& a, const Vector& b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double length(const Vector& v) {
  return std::sqrt(dot(v, v));
}
inline bool is_finite(const Vector& v) {
  return std::isfinite(v.x) && std::isfinite(v.y) && std::isfinite(v.z);
}

}  // namespace mastwise::motion
