#pragma once

#include "core/sweep/meter_lines.hpp"
#include "core/sweep/sweep.hpp"

#include <cstddef>
#include <cstdint>
#include <deque>
#include <optional>
#include <vector>

namespace mastwise::aim {

// What a sweep that reads itself knows of antenna and meter.
struct LiveOptions {
  Scale scale = Scale::quality_percent;
  double beamwidth_deg = 60.0;  // half power; 5 to 170
  MeterTiming timing = {};
  bool operator==(const LiveOptions&) const = default;
};

// What to do next, in the order of urgency.
enum class LiveAdvice : std::uint8_t {
  begin,     // nothing is read yet: turn slowly
  too_fast,  // the meter cannot follow
  back,      // `turn` leads to a gap around the peak that was passed too fast
  go_on,     // `turn` leads to where the peak's other side is unread
  slowly,    // keep turning
  peak,      // close enough: `turn` leads to it
};

struct LiveHint {
  LiveAdvice advice = LiveAdvice::begin;
  Turn turn = {};
  bool operator==(const LiveHint&) const = default;
};

// Readings from a heading sensor and a meter while the antenna turns: a plain value.
//
// A meter that averages with the time constant s and is late by d shows, while the signal changes
// evenly, what the antenna received s + d earlier [response of a first-order lag to a ramp, e.g.
// Oppenheim, Signals and Systems, chapter 6]. So each value goes to the heading at that time,
// between two headings at most 2.5 s apart. Turned at w degrees a second, averaging also blurs the
// beam and lowers it by about 12 (w s / beamwidth)^2 dB, from the offset loss of a beam; at the
// fastest rate used, 0.08 beamwidths in s, that is 0.08 dB. What is read faster is left out.
//
// Values are gathered to one reading until the heading has moved by a twelfth of the beamwidth and
// twice s has passed, since closer values share their noise; at rest, for 3 s and three times s,
// once. A reading is the median of its values.
// One that stands out from the line between its neighbors by 3 dB and more, and by 4 times the
// others' usual deviation, is a gust and left out [Hampel's identifier, Journal of the American
// Statistical Association 69 (1974), 383].
class LiveSweep {
 public:
  // `before`: readings that were taken by hand.
  explicit LiveSweep(LiveOptions options, std::vector<Reading> before = {});

  // The next heading of the sensor. Times must not run backward in each of the two.
  void turn(Monotonic when, Bearing<Dial> heading);
  // The next value of the meter in the scale's units; std::nullopt without lock.
  void read(Monotonic when, std::optional<double> value);

  // Readings so far, those by hand first, without gusts; changes when count() does.
  std::vector<Reading> readings() const;
  std::size_t count() const { return closed_.size(); }
  std::size_t gusts() const;

  // Degrees a second over the last 2 s, clockwise; std::nullopt without fresh headings.
  std::optional<double> rate_dps(Monotonic now) const;
  double fastest_dps() const;
  // The peak's error from not knowing the meter's lag better than to half a second [our choice, no
  // source]: none where both directions were turned alike.
  double lag_sigma_deg() const;
  // The error that more readings of the same antenna do not average out, since its pattern on the
  // roof is not the nominal one: 0.012 beamwidths [by simulation, live_coverage_test.cpp].
  double axis_sigma_deg() const { return 0.012 * options_.beamwidth_deg; }

  // `fit`: of readings(), if there is one.
  LiveHint hint(const std::optional<SweepFit>& fit, Monotonic now) const;
  bool operator==(const LiveSweep&) const = default;

 private:
  struct Heading {
    Monotonic when = {};
    double turned_deg = 0.0;  // without folding: a full turn to the right adds 360
    bool operator==(const Heading&) const = default;
  };
  struct Value {
    Monotonic when = {};  // of the antenna, the lag taken off
    std::optional<double> value = {};
    bool operator==(const Value&) const = default;
  };
  struct Sample {
    Monotonic when = {};
    double turned_deg = 0.0;
    std::optional<double> value = {};
    bool operator==(const Sample&) const = default;
  };
  struct Closed {
    Reading reading = {};
    double rate_dps = 0.0;
    bool operator==(const Closed&) const = default;
  };

  void place_values();
  void add(const Sample& sample);
  void close();
  std::optional<double> rate_between(Monotonic from, Monotonic to) const;
  double least_move_deg() const { return options_.beamwidth_deg / 12.0; }
  std::vector<bool> gust_marks() const;
  std::optional<Turn> gap_to_fill(Bearing<Dial> peak) const;

  LiveOptions options_;
  std::vector<Reading> before_;
  std::deque<Heading> headings_ = {};  // the last 30 s
  std::deque<Value> values_ = {};      // that wait for the next heading
  std::vector<Sample> open_ = {};      // of the reading that is being gathered
  std::vector<Closed> closed_ = {};
  std::optional<double> rested_deg_ = {};  // where the last reading was taken at rest
};

}  // namespace mastwise::aim
