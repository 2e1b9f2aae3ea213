#pragma once

#include "app/look/look.hpp"
#include "app/shared/plan.hpp"
#include "app/words/language.hpp"
#include "core/gear/gear.hpp"
#include "core/gear/noise_hunt.hpp"
#include "core/geo/notation.hpp"
#include "core/headings/deviation_card.hpp"
#include "core/headings/handle.hpp"
#include "core/headings/heading_error.hpp"
#include "core/headings/needle.hpp"
#include "core/motion/vector.hpp"
#include "core/rig/rig_heading.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

inline constexpr std::array kNotations{Notation::Decimal, Notation::DegreesMinutes,
                                       Notation::DegreesMinutesSeconds, Notation::UtmUps,
                                       Notation::Mgrs};

// The rig's gear: a preset by its name, and the differences from it.
struct GearChoice {
  std::string preset = {};  // empty: the default
  std::optional<double> height_m = {};
  std::optional<double> cable_m = {};
  std::optional<int> splits = {};
  bool amplifier = true;           // has power, if the preset has one
  std::string pattern_table = {};  // a custom pattern instead of the preset's, in every band
  std::optional<gear::DecoderSet> decoders = {};  // of the TV; empty: the usual ones of the region
  bool operator==(const GearChoice&) const = default;
};

// The chosen gear; an unknown preset counts as the default.
gear::Gear gear_of(const GearChoice& choice);
// Whether both are the same preset, perhaps with other figures.
bool same_preset(const GearChoice& one, const GearChoice& other);

// The ceiling handle: where the antenna pointed, from the nose, at two readings; its stops and the
// reading for lowering, where known.
struct HandleChoice {
  double first_reading_deg = 0.0, first_angle_deg = 0.0;
  double second_reading_deg = 0.0, second_angle_deg = 0.0;
  std::optional<double> reach_from_deg = {}, reach_to_deg = {};
  std::optional<double> stow_deg = {};
  bool operator==(const HandleChoice&) const = default;
};
Result<Handle> handle_of(const HandleChoice& choice);

// The declination that an adjustable compass was last set for, east positive, -180 to 180.
struct CompassSetting {
  double east_deg = 0.0;
  bool operator==(const CompassSetting&) const = default;
};

// What the heading sensor turns with.
enum class SensorMount { Rig, Antenna };
template <>
inline constexpr std::array kStoredNames<SensorMount> = names({"rig", "antenna"});

// A network seen on a station that no table lists.
struct TickedNetwork {
  StationKey key = {};
  std::string network = {};
  bool operator==(const TickedNetwork&) const = default;
};

// The colors that the person chose: one look, or day and night by the sun's height at the stop.
enum class LookChoice { Day, Night, Red, Sun };
template <>
inline constexpr std::array kStoredNames<LookChoice> = names({"day", "night", "red", "sun"});

enum class TextSize { Usual, Larger, Largest };
template <>
inline constexpr std::array kStoredNames<TextSize> = names({"usual", "larger", "largest"});

template <>
inline constexpr std::array kStoredNames<Language> = names({"en", "es"});

// Kept from session to session.
struct Settings {
  LookChoice look = LookChoice::Day;
  bool dim = true;  // the backlight follows the look
  TextSize text_size = TextSize::Usual;
  Language language = Language::English;
  bool miles = true;
  bool left_handed = false;
  bool tone = true;              // on the roof, to turn by ear
  bool speech = false;           // says the turn and the alarm aloud
  bool channels_by_hand = true;  // the receiver lets them be entered
  PointingMethod pointing = PointingMethod::baseplate_compass;
  std::optional<HandleChoice> handle = {};  // once calibrated
  std::optional<CompassSetting> compass_set = {};
  std::optional<NeedleZone> needle = {};             // of the compass; empty: nobody has said
  std::optional<SensorMount> sensor_mount = {};      // empty: nobody has said
  std::vector<DrivenStretch> sensor_stretches = {};  // from which its deviation is learned
  std::vector<motion::Vector> tablet_points = {};    // uT, from which its own iron is learned
  Carrier carrier = Carrier::driven;
  std::string meter = {};   // that sends its readings, as in service::meter_source; empty: none
  std::string tablet = {};  // distinguishes this tablet's records
  Notation notation = Notation::Decimal;
  GearChoice gear = {};                               // in use
  std::vector<GearChoice> other_gears = {};           // that the rig has too, one of each preset
  std::vector<gear::ApplianceNoise> appliances = {};  // of the rig, as its noise was measured
  std::vector<std::string> pinned_networks = {};      // wanted wherever the rig stops
  std::vector<TickedNetwork> ticked_networks = {};
  std::string of_newer = {};  // settings of a newer version as JSON, to keep them
  bool operator==(const Settings&) const = default;

  // Calls `f` with each setting and its name in the file and in actions.
  template <class Self, class F>
  static void each(Self& self, F f) {
    f("look", self.look);
    f("dim", self.dim);
    f("text_size", self.text_size);
    f("language", self.language);
    f("miles", self.miles);
    f("left_handed", self.left_handed);
    f("tone", self.tone);
    f("speech", self.speech);
    f("channels_by_hand", self.channels_by_hand);
    f("notation", self.notation);
    f("gear", self.gear);
    f("other_gears", self.other_gears);
    f("appliances", self.appliances);
    f("pointing", self.pointing);
    f("handle", self.handle);
    f("compass_set", self.compass_set);
    f("needle", self.needle);
    f("sensor_mount", self.sensor_mount);
    f("sensor_stretches", self.sensor_stretches);
    f("tablet_points", self.tablet_points);
    f("carrier", self.carrier);
    f("meter", self.meter);
    f("tablet", self.tablet);
    f("pinned_networks", self.pinned_networks);
    f("ticked_networks", self.ticked_networks);
  }
};

// Moves a setting to its next value: a switch to the other, a choice to the one after it.
void next_setting(Settings& settings, std::string_view name);
// Gives a setting a value by its stored name, "on" or "off" for a switch. An unknown name or value
// changes nothing.
void choose_setting(Settings& settings, std::string_view name, std::string_view value);

// The gears of the rig, the lowest first: what needs no raising comes before what does. Presets of
// one height by name.
std::vector<GearChoice> rig_gears(const Settings& settings);
// Uses this gear. One of the rig's others changes places with the gear in use; any other replaces
// it.
void use_gear(Settings& settings, const GearChoice& choice);
// Adds the preset to the rig's other gears, or removes it; the gear in use stays.
void toggle_gear(Settings& settings, const std::string& preset);

// Pins or unpins a network, ignoring case.
bool is_pinned(const Settings& settings, const std::string& network);
void pin_network(Settings& settings, const std::string& network);
// Ticks or unticks a network of a station.
bool is_ticked(const Settings& settings, const TickedNetwork& ticked);
void tick_network(Settings& settings, const TickedNetwork& ticked);

}  // namespace mastwise
