#pragma once

#include "core/motion/vector.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

// What the iron of a tablet does to its own magnetometer, learned by turning the tablet every way.
// In a steady field the readings of a tablet without iron lie on a sphere about zero. Permanent
// magnetism (hard iron) moves the sphere, iron that the earth magnetizes (soft iron) makes it an
// ellipsoid. Source: Freescale AN4246, Calibrating an eCompass in the Presence of Hard and
// Soft-Iron Interference (the model; the fit is our own least squares).
namespace mastwise::motion {

// The readings are kept by the direction of the field in the tablet: kPatches of one size on a cube
// about the middle of the readings.
inline constexpr std::size_t kPatches = 24;
std::size_t patch_of(const Vector& from_middle);

// Adds a reading in uT; of each patch the newest kPointsPerPatch stay, at least kApart_ut apart.
// Returns false if it is near another one and was left out.
bool add_point(std::vector<Vector>& points, const Vector& reading_ut);
inline constexpr std::size_t kPointsPerPatch = 4;  // our choice, no source, like kApart_ut
// A fit takes the newest of so many.
inline constexpr std::size_t kMostPoints = kPatches * kPointsPerPatch;
inline constexpr double kApart_ut = 1.0;

struct IronFit {
  static constexpr std::size_t kTerms = 9;
  Vector hard_ut = {};  // the field of the permanent magnetism
  // The symmetric matrix xx, yy, zz, xy, xz, yz, 1/uT, that makes the ellipsoid a unit sphere.
  std::array<double, 6> shape = {};
  // Of hard_ut and shape, in their order, row by row.
  std::array<std::array<double, kTerms>, kTerms> covariance = {};
  double strength_ut = 0.0;  // of the field: the radius of a sphere of the ellipsoid's volume
  double scatter = 0.0;      // of the readings about the ellipsoid, a share of the strength
  std::size_t points = 0;
  std::size_t patches = 0;  // that were seen, of kPatches
  bool operator==(const IronFit&) const = default;

  // The field without the tablet's iron, uT; and the reading that a field gives.
  Vector without_iron_ut(const Vector& reading_ut) const;
  Vector with_iron_ut(const Vector& field_ut) const;
};

// The least-squares ellipsoid by Gauss and Newton from a sphere. Empty with fewer than
// kFewestPoints, while the readings see less of the sphere than nine terms need, or when they lie
// on no ellipsoid.
std::optional<IronFit> fit_iron(std::span<const Vector> points);
inline constexpr std::size_t kFewestPoints = 18;  // twice the terms, our choice

}  // namespace mastwise::motion
