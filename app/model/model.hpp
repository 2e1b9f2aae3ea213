#pragma once

#include "app/model/choices.hpp"
#include "app/model/form.hpp"
#include "app/model/intake.hpp"
#include "app/model/log.hpp"
#include "app/model/logbook_files.hpp"
#include "app/model/map.hpp"
#include "app/model/places.hpp"
#include "app/model/route.hpp"
#include "app/model/stations.hpp"
#include "app/model/stop.hpp"
#include "app/model/sweep.hpp"
#include "app/model/ways.hpp"
#include "app/safety/state.hpp"
#include "core/headings/aim_card.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/nmea/parked.hpp"
#include "core/nmea/receiver.hpp"
#include "core/nmea/straight_course.hpp"
#include "core/sweep/strong_station.hpp"
#include "core/time.hpp"

#include <optional>
#include <string>

namespace mastwise {

struct Keypad {
  KeypadPurpose purpose = KeypadPurpose::Position;
  Field field = {};  // which, where the purpose is a field
  std::string text = {};
  bool letters = false;             // the page of letters in place of figures
  bool magnetic = true;             // Nose: the typed heading is from a compass
  std::optional<Error> error = {};  // why the accepted text is wrong
  bool operator==(const Keypad&) const = default;
};

// The state before the last change, for Undo.
struct TakenBack {
  std::string what;
  Stop stop;
  Monotonic until;
  std::optional<std::vector<Position>> ahead = {};
  std::optional<HandleChoice> handle = {};  // the deleted one
  // A recorded outcome and the one it replaced.
  std::optional<OutcomeRecord> outcome = {};
  std::optional<OutcomeRecord> replaced = {};
  std::optional<std::string> sweep_id = {};  // of the saved sweep
  bool operator==(const TakenBack&) const = default;
};

// Values computed from the rest of the model; derive() updates them after every action.
struct Findings {
  // The position in use. Stale: the receiver is silent and this is the rig's last position.
  std::optional<Position> position = {};
  bool position_stale = false;

  UtcTime date = {};
  enum class DateOrigin { Receiver, Machine } date_origin = DateOrigin::Machine;

  std::optional<MagneticField> field = {};
  std::optional<RigHeading> nose = {};  // needs the declination if read from a compass
  // How far the rig has moved since its heading was set, which is no longer valid.
  std::optional<double> moved_m = {};
  std::optional<AimCard> card = {};
  std::optional<Bearing<True>> facing = {};        // direction of the heading sensor
  std::optional<Turn> turn = {};                   // from there to the target
  std::optional<double> speed_kmh = {};            // over ground, from a fresh fix
  std::vector<std::size_t> listed = {};            // rows of the stations' answer to show
  std::vector<std::string> brought = {};           // by network: the network of each listed row
  std::string pinnable = {};                       // the searched network
  std::vector<std::string> wanted = {};            // pinned networks and their stations here
  std::string data_caution = {};                   // on the age of the listed stations
  std::optional<reception::Outlook> outlook = {};  // of the target
  std::optional<Slack> slack = {};                 // of the target
  std::vector<reception::Reason> reasons = {};
  // One sigma of the chosen way to point, and its parts.
  double heading_error_deg = reception::kUsualHeadingError_deg;
  std::vector<ErrorLine> heading_errors = {};
  // While their sheets are open.
  std::vector<Saying> ways = {};
  std::vector<LeftOut> ways_left_out = {};
  std::optional<NorthMistake> mistake = {};
  // The errors of compass and handle by stations peaked on, and the target's number by each.
  std::optional<aim::DialCheck> compass_check = {}, handle_check = {};
  std::optional<Bearing<Dial>> corrected = {};
  std::optional<HandleReading> handle_corrected = {};
  ScanList scan = {};
  std::vector<OutcomeRecord> outcomes_here = {};
  std::vector<std::string> worked_before = {};  // headings at earlier stops here
  IntakeFindings intake = {};
  std::vector<std::string> networks_around = {};  // while the sheet that ticks them is open
  FormAnswer from_map = {}, from_net = {}, ruler = {}, reciprocal = {}, agreement = {}, handle = {};
  bool operator==(const Findings&) const = default;
};

// The whole state of the app. It can be printed (to_json), saved and compared.
struct Model {
  Monotonic now = {};
  UtcTime machine_time = {};
  Place place = Place::Here;
  Settings settings = {};

  Link link = {};
  nmea::Receiver receiver;
  nmea::ParkedAverage parked = {};
  nmea::StraightCourseFinder course = {};
  std::uint64_t positions_followed = 0;  // see nmea::Fix::positions_taken

  Stop stop = {};
  std::optional<TakenBack> taken_back = {};
  std::string trouble = {};  // a failed save or read
  std::string search = {};
  std::optional<StationsAnswer> stations = {};  // the last answer; its question shows its age
  std::optional<PlacesAnswer> places = {};      // likewise

  SafetyState safety = {};
  Sheet sheet = Sheet::None;
  std::size_t chance_floor = 0;  // of kChanceFloors
  bool by_network = false;       // list only the best source of each network
  MapState map = {};
  PlanFor plan_for = PlanFor::Pinned;
  std::size_t plan_floor = 0;  // of kPlanFloors
  DialUp dial_up = DialUp::TrueNorth;
  std::optional<Keypad> keypad = {};

  std::optional<Sweep> sweep = {};
  std::size_t scan_step = 0;  // of the plan, whose channels the sheet shows
  std::vector<Ticked> ticks = {};
  std::optional<Position> ticked_at = {};  // position of the ticks, which do not count elsewhere
  Form form = {};
  std::vector<Position> ahead = {};  // possible stops
  bool along = false;                // the route there is shown
  std::optional<RouteSheet> route = {};
  Intake intake = {};
  Log log = {};
  std::vector<LogWrite> log_writes = {};  // not written yet
  LogbookFiles log_files = {};
  std::string weather = {};     // for outcomes
  bool paper_wanted = false;    // the paper card is still to be written
  std::string paper_file = {};  // path of the last one

  Findings findings = {};
  bool operator==(const Model&) const = default;
};

// The question for the worker now; it differs from stations->question if the list is old.
StationsQuestion stations_question(const Model& model);

}  // namespace mastwise
