#pragma once

#include "app/shared/names.hpp"
#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

// Numbers and places typed into the sheets for the paper map, the ceiling handle and the compass
// checks.
namespace mastwise {

enum class Field {
  // Paper map: its scale, and a place by direction and millimeters.
  MapBar_mm,
  MapBarLength,  // miles or kilometers, as in the settings
  MapPlace,
  MapDirection_deg,
  MapLength_mm,
  // Paper map: a place between two meridians and two parallels.
  LeftMeridian_deg,
  RightMeridian_deg,
  MeridiansApart_mm,
  FromMeridian_mm,
  LowerParallel_deg,
  UpperParallel_deg,
  ParallelsApart_mm,
  FromParallel_mm,
  // Paper map: where to lay the ruler for the heading.
  SheetWidth_mm,
  SheetHeight_mm,
  StopRight_mm,
  StopUp_mm,
  // Ceiling handle.
  FirstReading_deg,
  FirstAngle_deg,  // from the nose
  SecondReading_deg,
  SecondAngle_deg,
  ReachFrom_deg,
  ReachTo_deg,
  Stow_deg,
  HandleNow_deg,
  // Checks of the compass.
  ThereBearing_deg,
  BackBearing_deg,
  LandmarkPlace,
  CompassRead_deg,
  // Two ways to find one direction, true degrees, and the error of each.
  OneWay_deg,
  OneWayError_deg,
  OtherWay_deg,
  OtherWayError_deg,
  // A possible stop.
  AheadPlace,
};
template <>
inline constexpr std::array kStoredNames<Field> =
    names({"map_bar_mm",          "map_bar_length",     "map_place",          "map_direction_deg",
           "map_length_mm",       "left_meridian_deg",  "right_meridian_deg", "meridians_apart_mm",
           "from_meridian_mm",    "lower_parallel_deg", "upper_parallel_deg", "parallels_apart_mm",
           "from_parallel_mm",    "sheet_width_mm",     "sheet_height_mm",    "stop_right_mm",
           "stop_up_mm",          "first_reading_deg",  "first_angle_deg",    "second_reading_deg",
           "second_angle_deg",    "reach_from_deg",     "reach_to_deg",       "stow_deg",
           "handle_now_deg",      "there_bearing_deg",  "back_bearing_deg",   "landmark_place",
           "compass_read_deg",    "one_way_deg",        "one_way_error_deg",  "other_way_deg",
           "other_way_error_deg", "ahead_place"});
bool is_place(Field field);
// "scale bar on the sheet, mm".
std::string field_words(Field field, bool miles);

// The typed text, kept until the app closes.
struct Form {
  std::map<Field, double> numbers = {};
  std::map<Field, Position> places = {};
  std::map<Field, std::string> names = {};  // of places chosen by name
  std::optional<double> number(Field field) const;
  std::optional<Position> place(Field field) const;
  std::string name(Field field) const;  // empty: its position was typed
  void set_place(Field field, const Position& position, const std::string& name);
  bool operator==(const Form&) const = default;
};

// The result of a form: lines to read, an error, and a place to use.
struct FormAnswer {
  std::vector<std::string> lines = {};
  std::string trouble = {};
  std::optional<Position> place = {};
  double place_error_m = 0.0;
  bool operator==(const FormAnswer&) const = default;
};

// A number as typed; the error shows the character.
Result<double> read_number(const std::string& text);

// The numbers in the fields: all of them, or nothing.
template <class... Fields>
std::optional<std::array<double, sizeof...(Fields)>> numbers(const Form& form, Fields... fields) {
  const std::array found{form.number(fields)...};
  std::array<double, sizeof...(Fields)> values{};
  for (std::size_t i = 0; i < found.size(); ++i) {
    if (!found[i]) return std::nullopt;
    values[i] = *found[i];
  }
  return values;
}

inline FormAnswer in_trouble(const Error& error) {
  return {.trouble = error.message()};
}

}  // namespace mastwise
