#include "app/shared/form.hpp"

#include <charconv>
#include <cmath>

namespace mastwise {
bool is_place(Field field) {
  return field == Field::MapPlace || field == Field::LandmarkPlace || field == Field::AheadPlace;
}

std::string field_words(Field field, bool miles) {
  switch (field) {
    case Field::MapBar_mm:
      return "Scale bar on the sheet, mm";
    case Field::MapBarLength:
      return miles ? "Scale bar length, miles" : "Scale bar length, km";
    case Field::MapPlace:
      return "Mapped place, its position";
    case Field::MapDirection_deg:
      return "Direction from there, degrees";
    case Field::MapLength_mm:
      return "Distance from there, mm";
    case Field::LeftMeridian_deg:
      return "Meridian left of here, degrees";
    case Field::RightMeridian_deg:
      return "Meridian right of here, degrees";
    case Field::MeridiansApart_mm:
      return "Between the two, mm";
    case Field::FromMeridian_mm:
      return "From the left line to here, mm";
    case Field::LowerParallel_deg:
      return "Parallel below here, degrees";
    case Field::UpperParallel_deg:
      return "Parallel above here, degrees";
    case Field::ParallelsApart_mm:
      return "Between the two, mm";
    case Field::FromParallel_mm:
      return "From the lower line to here, mm";
    case Field::SheetWidth_mm:
      return "Sheet width, mm";
    case Field::SheetHeight_mm:
      return "Sheet height, mm";
    case Field::StopRight_mm:
      return "From its left edge to here, mm";
    case Field::StopUp_mm:
      return "From its lower edge to here, mm";
    case Field::FirstReading_deg:
      return "First: handle at, degrees";
    case Field::FirstAngle_deg:
      return "First: antenna from the nose, degrees";
    case Field::SecondReading_deg:
      return "Second: handle at, degrees";
    case Field::SecondAngle_deg:
      return "Second: antenna from the nose";
    case Field::ReachFrom_deg:
      return "Stops: from, degrees (optional)";
    case Field::ReachTo_deg:
      return "Stops: to, degrees (optional)";
    case Field::Stow_deg:
      return "Reading for lowering (optional)";
    case Field::HandleNow_deg:
      return "Handle now, degrees";
    case Field::ThereBearing_deg:
      return "From here to the other spot, degrees";
    case Field::BackBearing_deg:
      return "From there back to here, degrees";
    case Field::LandmarkPlace:
      return "A landmark in sight, its position";
    case Field::CompassRead_deg:
      return "The compass reads, degrees";
    case Field::OneWay_deg:
      return "First way, degrees";
    case Field::OneWayError_deg:
      return "Its error, degrees";
    case Field::OtherWay_deg:
      return "Second way, degrees";
    case Field::OtherWayError_deg:
      return "Its error, degrees";
    case Field::AheadPlace:
      return "Possible stop, its position";
  }
  return "";
}

std::optional<double> Form::number(Field field) const {
  const auto found = numbers.find(field);
  return found == numbers.end() ? std::nullopt : std::optional(found->second);
}

std::optional<Position> Form::place(Field field) const {
  const auto found = places.find(field);
  return found == places.end() ? std::nullopt : std::optional(found->second);
}

std::string Form::name(Field field) const {
  const auto found = names.find(field);
  return found == names.end() ? std::string() : found->second;
}

void Form::set_place(Field field, const Position& position, const std::string& name) {
  places.insert_or_assign(field, position);
  names.erase(field);
  if (!name.empty()) names[field] = name;
}

Result<double> read_number(const std::string& text) {
  double value = 0.0;
  const char* end = text.data() + text.size();
  const auto [stopped, trouble] =
      std::from_chars(text.data(), end, value, std::chars_format::fixed);
  if (trouble == std::errc{} && stopped == end && std::isfinite(value)) return value;
  return Error{.what = "not a number",
               .remedy = "type one such as 12.5",
               .character = static_cast<std::size_t>(stopped - text.data())};
}

}  // namespace mastwise
