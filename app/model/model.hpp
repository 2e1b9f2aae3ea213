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
  bool magnetic = true;             // Nose: what is typed was read from a compass
  std::optional<Error> error = {};  // why the text is not what is wanted, once accepted
  bool operator==(const Keypad&) const = default;
};

// What was before the last touch that changed it.
struct TakenBack {
  std::string what;
  Stop stop;
  Monotonic until;
  std::optional<std::vector<Position>> ahead = {};
  std::optional<HandleChoice> handle = {};  // that was forgotten
  // A touch on an outcome, and what it replaced.
  std::optional<OutcomeRecord> outcome = {};
  std::optional<OutcomeRecord> replaced = {};
  std::optional<std::string> sweep_id = {};  // of the sweep that was kept
  bool operator==(const TakenBack&) const = default;
};

// What follows from the rest of the model; made anew by derive() after every action.
struct Findings {
  // The position in use. Stale: the receiver has fallen silent and this is where the rig was last.
  std::optional<Position> position = {};
  bool position_stale = false;

  UtcTime date = {};
  enum class DateOrigin { Receiver, Machine } date_origin = DateOrigin::Machine;

  std::optional<MagneticField> field = {};
  std::optional<RigHeading> nose = {};  // needs the declination when read from a compass
  // How far the rig has moved since its heading was set, which is no longer valid.
  std::optional<double> moved_m = {};
  std::optional<AimCard> card = {};
  std::optional<Bearing<True>> facing = {};  // where the heading sensor points
  std::optional<Turn> turn = {};             // from there to the target
  std::optional<double> speed_kmh = {};      // over ground, from a fresh fix
  std::vector<std::size_t> listed = {};      // rows of the stations' answer that are to be shown
  std::vector<std::string> brought = {};     // by network: what each listed row brings first
  std::string pinnable = {};                 // the network that is searched for
  std::vector<std::string> wanted = {};      // pinned networks and what brings them here
  std::string data_caution = {};             // on the age of what is listed
  std::optional<reception::Outlook> outlook = {};  // of the target
  std::optional<Slack> slack = {};                 // of the target
  std::vector<reception::Reason> reasons = {};
  // One sigma of pointing by the means in use, and what it is made of.
  double heading_error_deg = reception::kUsualHeadingError_deg;
  std::vector<ErrorLine> heading_errors = {};
  // While their sheets are open.
  std::vector<Saying> ways = {};
  std::vector<LeftOut> ways_left_out = {};
  std::optional<NorthMistake> mistake = {};
  // What the stations peaked on say of compass and handle, and the target's number by each.
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

// The whole state of the program. It can be printed (to_json), saved and compared.
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
  std::string trouble = {};  // what could not be kept or read
  std::string search = {};
  std::optional<StationsAnswer> stations = {};  // the last answer; its question tells how old it is
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
  std::optional<Position> ticked_at = {};  // where: they say nothing of another stop
  Form form = {};
  std::vector<Position> ahead = {};  // places where one might stop
  bool along = false;                // the way there is looked at
  std::optional<RouteSheet> route = {};
  Intake intake = {};
  Log log = {};
  std::vector<LogWrite> log_writes = {};  // not written yet
  LogbookFiles log_files = {};
  std::string weather = {};     // to be stamped on outcomes
  bool paper_wanted = false;    // the card for paper is not written yet
  std::string paper_file = {};  // where the last one lies

  Findings findings = {};
  bool operator==(const Model&) const = default;
};

// What the worker should be asked now; it differs from stations->question when the list is old.
StationsQuestion stations_question(const Model& model);

}  // namespace mastwise
