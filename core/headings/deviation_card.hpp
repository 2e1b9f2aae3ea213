#pragma once

#include "core/angles/bearing.hpp"
#include "core/time.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

// The deviation of a magnetic heading sensor that is fixed to the rig, learned from driving.
namespace mastwise {

// A straight stretch of driving.
struct DrivenStretch {
  Bearing<Magnetic> read;      // by the sensor, the mean
  double deviation_deg = 0.0;  // the magnetic course less the reading, east positive
  double sigma_deg = 1.0;      // of the deviation, one sigma, over 0
  double horizontal_nt = 0.0;  // of the earth's field there, over 0
  UtcTime at = {};
  bool operator==(const DrivenStretch&) const = default;
};

// Adds a stretch and keeps the newest kStretchesPerSector of each kSector_deg of readings. If the
// newest kChangedStretches are all beyond three sigmas of a usable card of the older ones, iron on
// the rig has moved: the older ones are dropped, and the result is true.
bool add_stretch(std::vector<DrivenStretch>& stretches, const DrivenStretch& fresh);
inline constexpr std::size_t kStretchesPerSector = 6;  // our choice, no source, like the next two
inline constexpr double kSector_deg = 22.5;
inline constexpr std::size_t kChangedStretches = 3;

// The deviation at a reading R: A + B sin R + C cos R + D sin 2R + E cos 2R. Source: NGA, Handbook
// of Magnetic Compass Adjustment (formerly Pub. 226), chapter V. A may be any angle: that of the
// sensor's mounting is in it.
struct DeviationCard {
  static constexpr std::size_t kTerms = 5;
  std::array<double, kTerms> terms_deg = {};                       // A to E
  std::array<std::array<double, kTerms>, kTerms> covariance = {};  // of them, square degrees
  double scatter_deg = 0.0;       // of the stretches about the curve, root mean square
  std::size_t stretches = 0;      // that count
  std::size_t left_out = 0;       // beyond four sigmas: a steel bridge, a truck alongside
  std::array<bool, 8> seen = {};  // eighths of the circle of readings, the first about north
  double horizontal_nt = 0.0;     // mean of the stretches
  UtcTime newest = {};
  bool operator==(const DeviationCard&) const = default;

  Turn deviation(Bearing<Magnetic> read) const;
  std::size_t eighths_seen() const;
};

// Least squares over the stretches, each with its sigma; the covariance grows with the scatter
// where that is larger than the sigmas say, and never shrinks. Empty with fewer than
// kFewestStretches, or while they lie so close together that five terms do not follow from them.
std::optional<DeviationCard> fit_deviation(std::span<const DrivenStretch> stretches);
inline constexpr std::size_t kFewestStretches = 8;  // our choice: three more than the terms

// One sigma of the card's deviation at a reading, degrees, where the horizontal field is
// `horizontal_nt` (over 0), at `now`: of the fit, of the place and of the age. The pull of the
// rig's own magnetism turns the needle by the more the weaker the earth's field is, that of iron
// which the earth magnetizes does not; nobody knows their shares, so the place counts with B and C
// times the change of 1 / H [same handbook, chapter II]. The age counts kAging_deg_per_year [our
// choice, no source].
double deviation_sigma_deg(const DeviationCard& card, Bearing<Magnetic> read, double horizontal_nt,
                           UtcTime now);
inline constexpr double kAging_deg_per_year = 2.0;

enum class CardState {
  learning,  // too little of the circle, or too few stretches
  holds,
  too_far,  // learned where the earth's field is too different
  too_old,
};
// Whether the card corrects here and now: seen from at least kEighths, and its sigma is nowhere
// above kUsable_deg, which is what a sensor without a card is given.
CardState state_of(const std::optional<DeviationCard>& card, double horizontal_nt, UtcTime now);
inline constexpr std::size_t kEighths = 6;  // our choice, no source
inline constexpr double kUsable_deg = 2.0;  // kCompensated_deg

// What a card says of one reading.
struct SensorDeviation {
  Turn turn;                 // to add to the reading
  double sigma_deg = 0.0;    // of it
  double reading_deg = 0.0;  // of the sensor itself, one sigma
  bool operator==(const SensorDeviation&) const = default;
};
// Empty unless the card holds.
std::optional<SensorDeviation> deviation_at(const std::optional<DeviationCard>& card,
                                            Bearing<Magnetic> read, double horizontal_nt,
                                            UtcTime now);
inline constexpr std::string_view kCardSource = "deviation card of the sensor, from driving";

}  // namespace mastwise
