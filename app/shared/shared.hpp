#pragma once

#include "app/shared/action.hpp"
#include "app/shared/form.hpp"
#include "app/shared/link.hpp"
#include "app/shared/navigation.hpp"
#include "app/shared/places.hpp"
#include "app/shared/settings.hpp"
#include "app/shared/stop.hpp"
#include "app/shared/survey.hpp"
#include "core/geo/magnetic_field.hpp"
#include "core/headings/aim_card.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/headings/heading_error.hpp"
#include "core/headings/stretch_finder.hpp"
#include "core/motion/sensor_lines.hpp"
#include "core/motion/tablet_compass.hpp"
#include "core/nmea/parked.hpp"
#include "core/nmea/receiver.hpp"
#include "core/nmea/straight_course.hpp"
#include "core/safety/rig_motion.hpp"
#include "core/sweep/strong_station.hpp"
#include "core/time.hpp"
#include "core/zones/local_zone.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

// What every feature may see.
namespace mastwise {

// Constant data that the computations need besides the model.
struct World {
  const MagneticModel& magnetic;
  Stop practice_stop;
  // The clocks of a position, or the tablet's where its zone is unknown. Called by the model's
  // thread only.
  std::function<LocalZone(const std::optional<Position>&)> zone_of =
      [](const std::optional<Position>&) { return LocalZone{}; };
};

// The state before a change, for Undo.
struct TakenBack {
  std::string what;
  Stop stop;
  Monotonic at = {};              // of the change, if it was in this run of the app
  std::vector<Action> also = {};  // they restore what else the change touched
  bool operator==(const TakenBack&) const = default;
};
inline constexpr std::size_t kMostUndo = 24;
// Where Undo has no place of its own on the screen, it is there this long; so is what the foot
// says.
inline constexpr milliseconds kUndoFresh{12'000};

// What waits to be written, and why it could not be. It is tried again until it is on the disk.
struct Unsaved {
  std::size_t records = 0;
  std::string why = {};
  bool operator==(const Unsaved&) const = default;
};

// The stop of the last run, which may not be this one.
struct EarlierStop {
  Stop stop;
  Position at;  // where the rig was
  UtcTime saved = {};
  bool elsewhere = false;  // the receiver says that the rig is somewhere else now
  bool operator==(const EarlierStop&) const = default;
};

// Values that follow from the rest; derive() finds them anew after every action.
struct Findings {
  // The position in use. Stale: the receiver is silent and this is the rig's last position.
  std::optional<Position> position = {};
  bool position_stale = false;

  UtcTime date = {};
  enum class DateOrigin { Receiver, Machine, Floor } date_origin = DateOrigin::Machine;
  // The clocks of the position in use, and `date` by them. Everything shown follows them.
  LocalZone zone = {};
  std::chrono::local_days today = {};
  ui::Look look = ui::Look::Day;  // of the screen
  bool in_leaf = true;            // the trees at the stop; without a position, as if in summer

  std::optional<MagneticField> field = {};
  std::optional<RigHeading> nose = {};  // needs the declination if read from a compass
  // How far the rig has moved since its heading was set, which is no longer valid.
  std::optional<double> moved_m = {};
  reception::ObstacleRing ring = {};  // what was marked around the rig where it is now
  std::optional<AimCard> card = {};
  // Of a heading sensor on the antenna, not on the rig; else of the held tablet, if that is the way
  // to point.
  std::optional<Bearing<True>> facing = {};
  bool facing_by_tablet = false;
  motion::TabletReading tablet = {};  // of its own sensors
  bool tablet_stands_well = false;    // somebody has said where, and a compass works there
  bool rig_seems_to_move = false;  // by the tablet's accelerometer or a heading sensor on the rig
  std::optional<DeviationCard> deviation_card = {};  // of the sensor
  std::optional<SensorDeviation> sensor_deviation =
      {};                                          // of its present reading, if the card holds
  std::optional<Turn> turn = {};                   // from there to the target
  std::optional<double> speed_kmh = {};            // over ground, from a fresh fix
  std::optional<reception::Outlook> outlook = {};  // of the target
  std::optional<Slack> slack = {};                 // of the target
  std::vector<reception::Reason> reasons = {};
  // One sigma of the chosen way to point, and its parts.
  double heading_error_deg = reception::kUsualHeadingError_deg;
  std::vector<ErrorLine> heading_errors = {};
  // The errors of compass, handle and sensor by stations peaked on, and the target's number by
  // each.
  std::optional<aim::DialCheck> compass_check = {}, handle_check = {}, sensor_check = {};
  // The compass check is within its error of what the place allows: nothing is corrected.
  bool compass_agrees = false;
  std::optional<Bearing<Dial>> corrected = {};
  std::optional<HandleReading> handle_corrected = {};
  std::vector<std::size_t> listed = {};  // rows of the stations' answer to show
  std::optional<StationsOnBoard> on_board = {};
  bool antenna_up = false;
  std::optional<Monotonic> antenna_changed = {};  // while that can be undone
  bool importing = false;                         // a table
  std::vector<Position> way = {};                 // the stop and the places ahead, as driven
  std::chrono::local_days earlier_day = {};       // of the earlier stop, where it was
  bool operator==(const Findings&) const = default;
};

// What the tablet's own iron does to its magnetometer.
struct TabletIron {
  std::vector<motion::Vector> seen = {};  // while it is learned
  std::vector<motion::Vector> fitted = {};
  std::optional<motion::IronFit> fit = {};  // of those
  bool operator==(const TabletIron&) const = default;
};

struct Shared {
  Monotonic now = {};
  UtcTime machine_time = {};
  // Today is never before it: the later of the day of the build and the last trusted date.
  std::chrono::sys_days clock_floor = std::chrono::sys_days::min();
  Settings settings = {};

  std::string explained = {};  // the word of the trade whose page is open
  Guide guide = Guide::None;   // the one that is open

  // Where the person is.
  Place place = Place::Here;
  Sheet sheet = Sheet::None;
  std::string trouble = {};  // a failed save or read
  std::string notice =
      {};  // what the start found; the prompts of the start do not hide it for good
  Unsaved unsaved = {};

  Link link = {};
  bool backlight = false;   // of the screen can be set
  bool voiceless = false;   // the last words had no voice
  bool in_browser = false;  // which gives the position, and lets nothing be downloaded
  nmea::Receiver receiver;
  nmea::ParkedAverage parked = {};
  nmea::StraightCourseFinder course = {};
  StretchFinder stretch_finder = {};  // where the heading sensor's deviation shows
  Link tablet_link = {};              // to the tablet's own sensors
  motion::SensorLines tablet = {};    // what they say
  TabletIron tablet_iron = {};
  safety::ShakeWatch shake = {};
  safety::TurnWatch rig_turn = {};
  std::uint64_t positions_followed = 0;  // see nmea::Fix::positions_taken

  Stop stop = {};
  std::vector<TakenBack> undo = {};  // the latest last
  Monotonic undo_shown = {};         // the last change or Undo
  std::optional<EarlierStop> earlier = {};
  std::optional<StationsAnswer> stations = {};  // the last answer; its question shows its age
  std::optional<PlacesAnswer> places = {};      // likewise
  std::string search = {};                      // typed, for stations
  Form form = {};

  Findings findings = {};

  // Actions that follow from the present one. A feature tells another this way; they are applied
  // before anything is drawn, so the list is empty between actions.
  std::vector<Action> following = {};
  bool operator==(const Shared&) const = default;
};

// Saves the stop for Undo before `what` changes it. The returned step can be given more to restore.
TakenBack& remember(Shared& shared, std::string what);

// Whether Undo is now that of the antenna: its change is the latest.
bool undo_is_antennas(const Shared& shared);

// Applies the actions that all features share.
void update(Shared& shared, const Action& action, const World& world);

// Brings the findings up to date, except those that a feature sets: `listed`, `antenna_up`,
// `antenna_changed`, `importing`, `way`.
void derive(Shared& shared, const World& world);

// UTC, from the receiver if it sends it, else by the tablet's clock. Before the floor that clock is
// certainly wrong: then it is the floor and the time that the tablet has been on.
UtcTime moment_of(const Shared& shared);

// Whether the tablet's clock is certainly wrong: before the floor, or more than a day from the
// receiver's trusted date.
bool clock_is_wrong(const Shared& shared);

// Clock error in minutes: a receiver's clock is right to the second, a tablet's may be a minute
// off [common practice, no source].
double clock_error_min(const Shared& shared);

// Uncertainty of a transmitter's position, one sigma, meters: public records round to the arc
// second.
inline constexpr double kTransmitter_m = 30.0;

// Error of each end of a line walked with the receiver, one sigma, meters: as of a fix in the open
// [common practice, no source].
inline constexpr double kWalkEnd_m = 3.0;

// What a compass shows here for a true bearing: by the correction that a kept sweep found, else by
// the declination. Every compass number on screen and paper comes from here. Empty without a
// position.
std::optional<Bearing<Magnetic>> on_compass_here(const Shared& shared, Bearing<True> bearing);

// Where the heading sensor says that it points, by map north, before a correction by sweeps. A
// magnetic one needs the declination; the findings' deviation card corrects it where it counts.
std::optional<Bearing<True>> sensor_says(const nmea::HeadingSensor& sensor,
                                         const Findings& findings);

// What the error of a way to point depends on here, and with the compass read elsewhere.
HeadingContext heading_context(const Shared& shared);
HeadingContext heading_context(const Shared& shared, std::optional<Standing> standing);

// One sigma of the rig heading, degrees: one that was typed depends on where the compass was read.
double nose_sigma_deg(const Shared& shared, const Nose& nose);

// The near place of a position; null if none was found for a position within some steps.
const places::NearPlace* near_place_of(const Shared& shared, const Position& position);

}  // namespace mastwise
