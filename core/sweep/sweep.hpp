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

// The scale of the meter. Quality goes from 0 to 100, bars from 0 to 5 or 10; decibels may have any
// reference.
enum class Scale : std::uint8_t { quality_percent, decibel, bars_of_5, bars_of_10 };

inline constexpr std::array kScales{Scale::quality_percent, Scale::decibel, Scale::bars_of_5,
                                    Scale::bars_of_10};

// "quality", "db", "bars", "bars10".
std::string_view to_text(Scale scale);

// One reading of the meter.
struct Reading {
  Bearing<Dial> heading;
  std::optional<double> value;  // in the scale's units; std::nullopt: no lock, no picture
  std::optional<milliseconds> waiting = {};  // between turning and reading; under 3 s counts less
  bool operator==(const Reading&) const = default;
};

struct SweepOptions {
  Scale scale = Scale::quality_percent;
  // One sigma of a reading in the scale's units, 0.001 to 1000. If empty, the noise is estimated:
  // the scale's usual noise counts as three readings, so that a few lucky readings do not dominate.
  std::optional<double> noise = {};
};

// The same station via a reflection.
struct SecondLobe {
  Bearing<Dial> heading;
  double relative_db;  // to the peak, negative
  double probability;  // of a reflection at all, 0.9 and more
  bool operator==(const SecondLobe&) const = default;
};

struct SweepFit {
  Bearing<Dial> peak;  // direction of the station
  double sigma_deg;    // root of the expected mean square error
  double error95_deg;  // the peak is within this many degrees to either side, 95 times of 100
  double noise;        // one sigma of a reading, in the scale's units
  // The opposite heading if the readings also allow it: always with an antenna of two equal faces,
  // else if it has over 2.5 % of the probability.
  std::optional<Bearing<Dial>> other_face;
  std::optional<SecondLobe> second_lobe;  // only if the evidence favors it
  bool enough;        // sigma costs less than 0.5 dB of the peak, error95_deg is forgiven
  int more_headings;  // number of further readings to take; 0 if enough
  bool operator==(const SweepFit&) const = default;
};

// What the antenna forgives: half of its half-power beamwidth, of any antenna at most 45 degrees.
double forgiven_deg(const gear::Pattern& pattern);

// What the meter shows at a heading, by the fit.
struct CurvePoint {
  Bearing<Dial> heading;
  double value;      // the mean, in the scale's units
  double low, high;  // it is between them 95 times of 100, without the noise of a single reading
  bool operator==(const CurvePoint&) const = default;
};

// Fits the antenna's pattern to a sweep. Construct it once for a pattern, which costs about as much
// as a hundred fits; safe to share between threads.
//
// The model: reading = level + slope * (pattern toward the station, in dB) + noise, where a
// reflection may add power from 30 to 90 degrees aside and 5 to 12.5 dB below. The slope is 1 for
// decibels and free, but positive, for quality and bars. Level, slope and noise are integrated in
// closed form (normal-inverse-gamma prior), the reflection and the peak over a grid. Readings at
// the end of the scale and missing ones are bounds: "this or more", or "this or less". So are
// decibels further below the highest than any null in place, if the pattern was measured. The
// station is ten times likelier within the headings read, widened by half the beamwidth, than
// elsewhere.
// The evidence counts for 0.8 of itself, less where readings are close together, since no antenna,
// wind or meter is quite as in the model; error95_deg covers 93 to 98 % of the probability, by its
// size, so that it holds in 93 to 97 of 100 sweeps with other patterns, gusts, drift and coarse
// meters.
// Sources: marginal likelihood of the linear model, e.g. Gelman et al., Bayesian Data Analysis,
// chapter 14; censored readings: Tobin, Econometrica 26 (1958), 24-36. The position of reflections
// and the noise of meters: common practice, no source.
class SweepFitter {
 public:
  // Error for a pattern that varies by less than 3 dB over the circle: it has no peak to find.
  static Result<SweepFitter> for_pattern(const gear::Pattern& pattern);

  // Errors: fewer than 2 headings with a reading, a value outside the scale (decibels: within 300
  // of 0), a noise out of range.
  Result<SweepFit> fit(std::span<const Reading> readings, const SweepOptions& options) const;

  // The antenna's pattern as it goes through the readings, all around the circle every 3 degrees,
  // clockwise from the heading opposite to the peak; within the scale. Takes the time of a few
  // fits. Errors as fit().
  Result<std::vector<CurvePoint>> curve(std::span<const Reading> readings,
                                        const SweepOptions& options) const;

  // The next heading that most reduces the expected square error of the peak, among headings 5
  // degrees apart. Errors over a beamwidth count as one beamwidth: the station is lost either way.
  // A heading that was read before is chosen only if it is worth a quarter more than any other.
  // Takes the time of some ten fits. Errors as fit().
  Result<Bearing<Dial>> next_heading(std::span<const Reading> readings,
                                     const SweepOptions& options) const;

 private:
  friend class SweepPosterior;

  // One way in which the signal may arrive: alone, or with a reflection `aside_deg` clockwise.
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
  std::size_t combs_;  // steps of the coarse grid in one period of the pattern
  std::vector<Arrival> arrivals_ = {};
};

}  // namespace mastwise::aim
