#pragma once

#include "core/gear/pattern.hpp"
#include "core/result.hpp"
#include "core/sweep/dial.hpp"
#include "core/time.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace mastwise::aim {

// What the meter shows. Quality runs from 0 to 100, bars from 0 to 5 or 10; decibels may be of any
// reference.
enum class Scale : std::uint8_t { quality_percent, decibel, bars_of_5, bars_of_10 };

inline constexpr std::array kScales{Scale::quality_percent, Scale::decibel, Scale::bars_of_5,
                                    Scale::bars_of_10};

// "quality", "db", "bars", "bars10".
std::string_view to_text(Scale scale);

// One look at the meter.
struct Reading {
  Bearing<Dial> heading;
  std::optional<double> value;               // in the scale's units; nothing: no lock, no picture
  std::optional<milliseconds> waiting = {};  // between turning and reading; under 3 s weighs less
  bool operator==(const Reading&) const = default;
};

struct SweepOptions {
  Scale scale = Scale::quality_percent;
  // One sigma of a reading in the scale's units, 0.001 to 1000. Without it the noise is estimated:
  // what the scale usually has counts as much as three readings, so that a lucky few are not
  // believed.
  std::optional<double> noise = {};
};

// The same station by way of a reflection.
struct SecondLobe {
  Bearing<Dial> heading;
  double relative_db;  // to the peak, negative
  double probability;  // that there is a reflection at all, 0.9 and more
  bool operator==(const SecondLobe&) const = default;
};

struct SweepFit {
  Bearing<Dial> peak;  // where the station itself comes from
  double sigma_deg;    // root of the mean square error that is to be expected
  double error95_deg;  // the peak lies within so many degrees to either side, 95 times of 100
  double noise;        // one sigma of a reading, in the scale's units
  // The opposite heading where the readings allow it as well: always with an antenna of two like
  // faces, else when over 2.5 % of the probability is there.
  std::optional<Bearing<Dial>> other_face;
  std::optional<SecondLobe> second_lobe;  // only where the evidence favors it
  bool enough;                            // an error of sigma costs less than 0.5 dB of the peak
  int more_headings;                      // how many more should be read; 0 when enough
  bool operator==(const SweepFit&) const = default;
};

// Fits an antenna's own pattern to a sweep. Made once for a pattern, which costs about as much as a
// hundred fits; safe to share between threads.
//
// The model: reading = level + slope * (pattern toward the station, in dB) + noise, where a
// reflection may add its own power from 30 to 90 degrees aside and 5 to 12.5 dB below. The slope is
// 1 for decibels and free, but positive, for quality and bars. Level, slope and noise are
// integrated out in closed form (normal-inverse-gamma prior), the reflection and the peak over a
// grid. Readings at the end of the scale and missing ones say only "so much or more", "or less".
// The station is taken to be ten times likelier within the headings read, widened by half the
// beamwidth, than elsewhere. error95_deg holds 98 % of the probability, which leaves room for
// what the model lacks.
// Sources: marginal likelihood of the linear model, e.g. Gelman et al., Bayesian Data Analysis,
// chapter 14; censored readings: Tobin, Econometrica 26 (1958), 24-36; where a reflection lies and
// how noisy a meter is: common practice, no source.
class SweepFitter {
 public:
  // Refuses a pattern that differs by less than 3 dB over the circle: there is no peak to find.
  static Result<SweepFitter> for_pattern(const gear::Pattern& pattern);

  // Refuses: fewer than 2 headings with a reading, a value outside the scale (decibels: within
  // 300 of 0), a noise outside its range.
  Result<SweepFit> fit(std::span<const Reading> readings, const SweepOptions& options) const;

  // Where the next reading would lessen the expected square error of the peak most, of all headings
  // 5 degrees apart; an error of over a beamwidth counts as one, since more than lost cannot be. A
  // heading read before is chosen only when it is worth a quarter more than any other. Takes some
  // ten fits of time. Errors as fit().
  Result<Bearing<Dial>> next_heading(std::span<const Reading> readings,
                                     const SweepOptions& options) const;

 private:
  friend class SweepPosterior;

  // One way in which the station may arrive: alone, or with a reflection `aside_deg` clockwise.
  struct Arrival {
    double aside_deg = 0.0;
    double relative_db = 0.0;
    float log_prior = 0.0F;
    bool reflected = false;
    std::vector<float> response_db = {};  // by -(heading - peak); see sweep_arrivals.cpp
  };

  explicit SweepFitter(const gear::Pattern& pattern);
  void add_arrival(double aside_deg, double relative_db, double prior, bool reflected);

  gear::Pattern pattern_;
  double beamwidth_deg_;
  std::size_t combs_;  // steps of the coarse grid in which the pattern repeats itself
  std::vector<Arrival> arrivals_ = {};
};

}  // namespace mastwise::aim
