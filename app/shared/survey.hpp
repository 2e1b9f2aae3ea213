#pragma once

#include "app/shared/ahead_table.hpp"
#include "app/shared/plan.hpp"
#include "app/shared/settings.hpp"
#include "core/angles/bearing.hpp"
#include "core/gear/near_towers.hpp"
#include "core/geo/position.hpp"
#include "core/plan/scan_help.hpp"
#include "core/reception/path_picture.hpp"
#include "core/reception/prospect.hpp"
#include "core/reception/surroundings.hpp"
#include "core/reception/survey.hpp"
#include "core/stations/networks.hpp"
#include "core/stations/station.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace mastwise {

struct Stop;

// The question to the worker: the stations received here, and the path to the target.
struct StationsQuestion {
  std::optional<Position> from = {};
  std::string search = {};
  bool practice = false;
  reception::Surroundings surroundings = reception::Surroundings::open;
  reception::LeafChoice leaves = reception::LeafChoice::in_leaf;
  unsigned month = 7;  // for leaves by the season: 1 to 12
  GearChoice gear = {};
  std::optional<StationKey> target = {};
  std::optional<Bearing<True>> turn = {};  // of the antenna, if not straight at the target
  std::vector<StationKey> pinned = {};
  PlanFor plan_for = PlanFor::Pinned;
  double plan_floor_percent = kUsualFloor_percent;
  double heading_error_deg = reception::kUsualHeadingError_deg;
  std::array<reception::LearnedBias, 3> learned = {};  // by band
  bool compare = false;                                // this place with those ahead
  bool compare_pinned = false;                         // by what is pinned, not by all networks
  std::vector<Position> ahead = {};                    // only if they are compared
  std::size_t generation = 0;  // of the user's catalog, raised by each change
  std::vector<std::string> pinned_networks = {};
  std::vector<TickedNetwork> ticked_networks = {};
  std::optional<gear::NoiseEnvironment> noise = {};
  bool inverter_on = false;
  gear::NearTowers towers = {};
  reception::ObstacleRing ring = {};  // around `from`
  std::vector<PinNote> pin_notes = {};
  std::vector<gear::ApplianceNoise> appliances = {};  // of the rig, as measured
  bool operator==(const StationsQuestion&) const = default;
};

// The question at another place, where nobody has marked what stands around.
StationsQuestion elsewhere(StationsQuestion question, const Position& place);

// Whether the answer to one question serves the other: a list for a place a few steps away still
// does.
bool same_question(const StationsQuestion& asked, StationsQuestion now);

// The part of the question that a survey depends on.
StationsQuestion survey_part(StationsQuestion question);

// A station as seen from the stop.
struct StationRow {
  Station station;
  std::optional<reception::Outlook> outlook = {};  // unknown without a position
  std::vector<reception::Reason> reasons = {};     // costliest first
  bool operator==(const StationRow&) const = default;
};

// The stations on board, also those out of reach.
struct StationsOnBoard {
  std::size_t count = 0;
  bool networks_named = false;  // by the tables, for any station in reach
  // The nearest one where none is in reach: the position may be wrong, or the tables are of another
  // country. Empty without a position.
  std::optional<double> nearest_m = {};
  Bearing<True> nearest_bearing = {};
  bool operator==(const StationsOnBoard&) const = default;
};

// A pinned station that no table on board lists any more, or that another table's record of the
// same transmitter stands for.
struct LostPin {
  PinNote pin = {};
  std::optional<PinNote> instead = {};  // a station of the same call sign
  bool operator==(const LostPin&) const = default;
};

struct StationsAnswer {
  StationsQuestion question;
  std::vector<StationRow> rows = {};  // best first
  std::size_t measured = 0, all = 0;  // paths; the list fills until they are equal
  std::optional<reception::PathPicture> target_path = {};
  std::optional<reception::SignalBudget> target_budget = {};
  std::optional<Slack> target_slack = {};   // at the turn, if there is one
  std::optional<double> turn_percent = {};  // chance of the target there
  std::optional<NullHint> target_null = {};
  std::optional<Plan> plan = {};  // once all is measured
  // The fewest headings that bring in every station likely here; by them the list is ordered.
  std::vector<PlanStep> turns = {};
  std::optional<AheadTable> ahead = {};
  std::optional<StationsOnBoard> on_board = {};  // once all is measured
  std::vector<LostPin> lost_pins = {};
  std::string trouble = {};  // why the survey failed
  bool operator==(const StationsAnswer&) const = default;
};

// The row of a station; null if the answer has none.
const StationRow* find_row(const StationsAnswer& answer, const StationKey& key);

// The stations of a plan step that the answer knows.
std::vector<ScanCandidate> scan_candidates(const StationsAnswer& answer, const PlanStep& step);

// Notes what the pinned stations of the answer are called, and forgets the notes of others.
void note_pins(Stop& stop, const StationsAnswer& answer);

// Whether a pinned station is gone.
bool any_lost_pin(const Stop& stop, const StationsAnswer& answer);

// Whether it carries the network, ignoring case.
bool carries(const Station& station, const std::string& network);
// Adds the networks ticked for the station.
void add_ticked(Station& station, const std::vector<TickedNetwork>& ticked);

}  // namespace mastwise
