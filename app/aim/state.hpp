#pragma once

#include "app/shared/form.hpp"
#include "app/shared/names.hpp"
#include "app/shared/survey.hpp"
#include "core/geo/weak_field.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/headings/sayings.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace mastwise {

// The direction at the top of the dial.
enum class DialUp { TrueNorth, Nose, Facing };
template <>
inline constexpr std::array kStoredNames<DialUp> = names({"true_north", "nose", "facing"});

// What the sky offers for a heading, searched once in ten minutes.
struct SkyAhead {
  Position position;
  Bearing<True> heading;
  UtcTime from = {};
  std::vector<sky::SunMark> marks = {};
  std::vector<sky::GuideBody> guides = {};  // the best first
  bool operator==(const SkyAhead&) const = default;
};

// Where no compass works, computed once a month.
struct WeakFields {
  UtcTime month = {};
  std::array<WeakField, 2> around_poles;
  bool operator==(const WeakFields&) const = default;
};

// A direction that a compass can be checked by.
struct KnownDirection {
  CompassCheckBy by = CompassCheckBy::sun;
  Bearing<True> bearing;
  double sigma_deg = 0.0;  // with the sight along it
  std::optional<sky::GuideBody> body = {};
  bool operator==(const KnownDirection&) const = default;
};

// What a complete answer said, to compare with the next one.
struct Reached {
  StationsQuestion question = {};
  std::optional<Slack> slack = {};       // of the target
  std::vector<PlanStation> brings = {};  // the headings of the plan, together
  bool operator==(const Reached&) const = default;
};

// What the last short move has changed: among hills a few hundred meters may.
struct MoveNote {
  double moved_m = 0.0;
  std::optional<Slack> before = {};  // of the target, if it was far from what it is now
  std::vector<std::string> gained = {}, lost = {};  // stations of the plan, by their titles
  bool operator==(const MoveNote&) const = default;
};

struct AimState {
  std::optional<Reached> reached = {};
  std::optional<MoveNote> moved = {};
  DialUp dial_up = DialUp::TrueNorth;

  // Found anew while their sheets are open.
  std::vector<Saying> ways = {};
  std::vector<LeftOut> ways_left_out = {};
  std::optional<SkyAhead> sky = {};
  std::optional<WeakFields> weak = {};
  std::optional<NorthMistake> mistake = {};
  std::vector<KnownDirection> known = {};
  bool compass_read = false;           // a reading is typed, to check by one of them
  std::optional<Turn> ring_turn = {};  // of an adjustable compass since it was last set
  bool anomaly = false;                // of the field here, by the checks
  FormAnswer reciprocal = {}, agreement = {}, handle = {};
  bool operator==(const AimState&) const = default;
};

}  // namespace mastwise
