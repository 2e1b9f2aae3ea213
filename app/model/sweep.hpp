#pragma once

#include "app/model/plan.hpp"
#include "core/channels/channels.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/sweep/edges.hpp"
#include "core/sweep/strong_station.hpp"
#include "core/sweep/sweep.hpp"

#include <optional>
#include <string>
#include <vector>

namespace mastwise {

// What the person turns the antenna by and reads the headings of a sweep from.
enum class SweepBy { Compass, Handle };

// Meter readings taken at several headings, and what follows from them.
struct Sweep {
  StationKey station = {};
  std::string title = {};
  Band band = Band::uhf;
  SweepBy by = SweepBy::Compass;
  aim::Scale scale = aim::Scale::quality_percent;
  Bearing<Dial> heading = {};  // at which the next reading is taken
  double value = 0.0;          // that it will be
  std::vector<aim::Reading> readings = {};

  std::optional<aim::SweepFit> fit = {};
  std::optional<Bearing<Dial>> next = {};  // where a reading would tell most
  std::string why_no_fit = {};             // in place of `fit`, once there are readings

  // Where the picture fails, going left and going right from it.
  std::optional<Bearing<Dial>> left_edge = {}, right_edge = {};
  std::optional<aim::EdgeMiddle> between_edges = {};
  std::optional<Agreement> edges_agree = {};  // with the fit
  std::string edge_trouble = {};              // why there is no middle or agreement
  bool operator==(const Sweep&) const = default;
};

// The greatest value of the scale, and the step of its plus and minus.
double scale_most(aim::Scale scale);
double scale_step(aim::Scale scale);
// What the meter is set to before it is read.
double scale_start(aim::Scale scale);
std::string scale_words(aim::Scale scale);

// Adds the reading that is set up, and fits again; `nothing`: no lock at this heading.
void read_meter(Sweep& sweep, const gear::Pattern& pattern, bool nothing);
void drop_last_reading(Sweep& sweep, const gear::Pattern& pattern);
// The picture fails at the heading that is set up.
void mark_edge(Sweep& sweep, bool right);
// Where the sweep says that the station is: by the readings, else between the edges.
struct SweepResult {
  Bearing<Dial> peak;
  double sigma_deg;
};
std::optional<SweepResult> result_of(const Sweep& sweep);

}  // namespace mastwise
