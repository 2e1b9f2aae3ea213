#pragma once

#include "core/geo/magnetic_field.hpp"
#include "core/headings/deviation_card.hpp"
#include "core/time.hpp"

#include <optional>
#include <vector>

namespace mastwise {

// Finds straight stretches of driving, on which the course over ground is the direction of the
// nose. A stretch is kWindow long, above kLeastSpeed_mps, its courses within kSteady_deg of each
// other, also in the kSettling before it, in which a slow sensor follows the turn that led to it.
// After one the next begins kPause later, since neighbors say the same. A rig that backs up is
// slower. All our choice, no source.
class StretchFinder {
 public:
  struct Sample {
    Bearing<True> course;
    double speed_mps = 0.0;
    Bearing<Magnetic> read;  // by the sensor, fresh
    bool operator==(const Sample&) const = default;
  };
  // One sample for each position of the receiver; `now` must not run backward. Returns a stretch
  // that is complete with it.
  std::optional<DrivenStretch> add(const Sample& sample, const MagneticField& field, UtcTime at,
                                   Monotonic now);
  bool operator==(const StretchFinder&) const = default;

  static constexpr double kLeastSpeed_mps = 10.0;
  static constexpr double kSteady_deg = 3.0;
  static constexpr milliseconds kSettling{6000}, kWindow{12000}, kPause{60000}, kGap{3000};
  // What the road's own iron may turn the needle by over one stretch, one sigma.
  static constexpr double kRoad_deg = 1.0;

 private:
  struct Held {
    Monotonic at;
    Sample sample;
    bool operator==(const Held&) const = default;
  };
  std::optional<DrivenStretch> finish(const MagneticField& field, UtcTime at) const;

  std::vector<Held> run_;
  std::optional<Monotonic> not_before_;
};

}  // namespace mastwise
