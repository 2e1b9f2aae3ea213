#pragma once

#include "app/model/choices.hpp"
#include "core/geo/position.hpp"
#include "core/result.hpp"

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
  // Two ways to find one direction, true degrees, and the error of each.
  OneWay_deg,
  OneWayError_deg,
  OtherWay_deg,
  OtherWayError_deg,
  // A possible stop.
  AheadPlace,
};
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

struct Findings;
struct Model;

// The position by direction and millimeters from a named place; by grid lines; the ruler for the
// heading in use. Empty until all needed fields are typed.
FormAnswer place_from_map(const Form& form, bool miles);
FormAnswer place_from_net(const Form& form);
FormAnswer ruler_for_heading(const Model& model, const Findings& found);
FormAnswer reciprocal_check(const Form& form);
FormAnswer agreement_check(const Form& form);
FormAnswer handle_turn(const Model& model, const Findings& found);

// The handle as the form describes it; empty until both points are typed.
std::optional<HandleChoice> handle_from(const Form& form);

}  // namespace mastwise
