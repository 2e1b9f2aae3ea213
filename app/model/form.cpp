#include "app/model/form.hpp"

#include "app/model/model.hpp"
#include "app/words/checks.hpp"
#include "app/words/headings.hpp"
#include "app/words/units.hpp"
#include "core/geo/paper_map.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/headings/handle.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include <fmt/format.h>

namespace mastwise {
namespace {

// All of them, or nothing.
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

FormAnswer in_trouble(const Error& error) {
  return {.trouble = error.message()};
}

std::optional<Result<MapScale>> scale_of(const Form& form, bool miles) {
  const auto bar = numbers(form, Field::MapBar_mm, Field::MapBarLength);
  if (!bar) return std::nullopt;
  return MapScale::from_bar((*bar)[0], (*bar)[1] * words::distance_unit_m(miles));
}

FormAnswer place_answer(const MapPosition& found) {
  return {.lines = {format_position(found.position, Notation::DegreesMinutes),
                    fmt::format("± {:.0f} m by the ruler, without the map's error", found.error_m)},
          .place = found.position,
          .place_error_m = std::max(kTypedPosition_m, found.error_m)};
}

}  // namespace

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
  if (trouble == std::errc{} && stopped == end) return value;
  return Error{.what = "not a number",
               .remedy = "type one such as 12.5",
               .character = static_cast<std::size_t>(stopped - text.data())};
}

FormAnswer place_from_map(const Form& form, bool miles) {
  const auto scale = scale_of(form, miles);
  const auto from = form.place(Field::MapPlace);
  const auto way = numbers(form, Field::MapDirection_deg, Field::MapLength_mm);
  if (scale && !*scale) return in_trouble(scale->error());
  FormAnswer answer;
  if (scale) {
    answer.lines.push_back(fmt::format("1 : {:.0f}; a millimeter is {}", (*scale)->ratio(),
                                       words::distance((*scale)->meters_per_mm(), miles)));
  }
  if (!scale || !from || !way) return answer;
  const auto found = from_named_place(*from, Bearing<True>::degrees((*way)[0]), (*way)[1], **scale);
  if (!found) return in_trouble(found.error());
  answer = place_answer(*found);
  if (const std::string name = form.name(Field::MapPlace); !name.empty()) {
    answer.lines.push_back("Measured from the middle of " + name + ": the map's dot may be " +
                           words::distance(kDotOfTown_m, miles) + " off");
    answer.place_error_m = std::hypot(answer.place_error_m, kDotOfTown_m);
  }
  return answer;
}

FormAnswer place_from_net(const Form& form) {
  const auto across = numbers(form, Field::LeftMeridian_deg, Field::RightMeridian_deg,
                              Field::MeridiansApart_mm, Field::FromMeridian_mm);
  const auto up = numbers(form, Field::LowerParallel_deg, Field::UpperParallel_deg,
                          Field::ParallelsApart_mm, Field::FromParallel_mm);
  if (!across || !up) return {};
  const auto lines = [](const std::array<double, 4>& typed) {
    return BetweenLines{typed[0], typed[1], typed[2], typed[3]};
  };
  const auto found = from_graticule(lines(*across), lines(*up));
  return found ? place_answer(*found) : in_trouble(found.error());
}

FormAnswer ruler_for_heading(const Model& model, const Findings& found) {
  const auto scale = scale_of(model.form, model.settings.miles);
  const auto sheet = numbers(model.form, Field::SheetWidth_mm, Field::SheetHeight_mm,
                             Field::StopRight_mm, Field::StopUp_mm);
  if (!scale || !*scale || !sheet || !found.card) return {};
  const auto ruler = ruler_line({.width_mm = (*sheet)[0],
                                 .height_mm = (*sheet)[1],
                                 .stop_right_mm = (*sheet)[2],
                                 .stop_up_mm = (*sheet)[3]},
                                **scale, found.card->bearing_true, found.card->distance_m);
  if (!ruler) return in_trouble(ruler.error());
  FormAnswer answer;
  answer.lines.push_back(
      fmt::format("{:.0f} mm from here to the transmitter, {:.1f}° right of the "
                  "sheet's side edge, ± {:.1f}°",
                  ruler->length_mm, ruler->from_upright.degrees(), ruler->bearing_error_deg));
  if (ruler->edge) {
    answer.lines.push_back(fmt::format(
        "The line leaves the sheet {:.0f} mm from its left and {:.0f} mm from its lower edge",
        ruler->edge->right_mm, ruler->edge->up_mm));
  }
  return answer;
}

FormAnswer reciprocal_check(const Form& form) {
  const auto both = numbers(form, Field::ThereBearing_deg, Field::BackBearing_deg);
  if (!both) return {};
  return {.lines = {words::reciprocal(check_reciprocal(Bearing<Magnetic>::degrees((*both)[0]),
                                                       Bearing<Magnetic>::degrees((*both)[1])))}};
}

FormAnswer agreement_check(const Form& form) {
  const auto typed = numbers(form, Field::OneWay_deg, Field::OneWayError_deg, Field::OtherWay_deg,
                             Field::OtherWayError_deg);
  if (!typed) return {};
  const auto [one, one_error, other, other_error] = *typed;
  const auto agreement = compare_headings(Bearing<True>::degrees(one), one_error,
                                          Bearing<True>::degrees(other), other_error);
  if (!agreement) return in_trouble(agreement.error());
  return {.lines = {words::agreement(*agreement)}};
}

std::optional<HandleChoice> handle_from(const Form& form) {
  const auto points = numbers(form, Field::FirstReading_deg, Field::FirstAngle_deg,
                              Field::SecondReading_deg, Field::SecondAngle_deg);
  if (!points) return std::nullopt;
  return HandleChoice{.first_reading_deg = (*points)[0],
                      .first_angle_deg = (*points)[1],
                      .second_reading_deg = (*points)[2],
                      .second_angle_deg = (*points)[3],
                      .reach_from_deg = form.number(Field::ReachFrom_deg),
                      .reach_to_deg = form.number(Field::ReachTo_deg),
                      .stow_deg = form.number(Field::Stow_deg)};
}

FormAnswer handle_turn(const Model& model, const Findings& found) {
  const auto typed = handle_from(model.form);
  const auto choice = typed ? typed : model.settings.handle;
  if (!choice) return {};
  const auto handle = handle_of(*choice);
  if (!handle) return in_trouble(handle.error());
  FormAnswer answer{
      .lines = {fmt::format("{}; zero error {:.1f}°",
                            choice == model.settings.handle ? "Saved" : "Not saved yet",
                            handle->sigma_deg())}};
  const auto now = model.form.number(Field::HandleNow_deg);
  if (found.card && found.card->rig_angle) {
    const NearestAim aim = handle->nearest(*found.card->rig_angle);
    answer.lines.push_back(fmt::format("Station at {:.0f} on the handle", aim.reading.dial_deg()));
    if (now) {
      const auto turn = handle->turn_to(*found.card->rig_angle, HandleReading::dial_deg(*now));
      if (!turn) return in_trouble(turn.error());
      answer.lines.push_back(words::handle_turn(*turn));
    }
  } else {
    answer.lines.push_back("Set the rig heading to get the turn to a station");
  }
  if (now && choice->stow_deg) {
    const auto stow = handle->turn_to_stow(HandleReading::dial_deg(*now));
    if (stow) answer.lines.push_back("Before lowering: " + words::handle_turn(*stow));
  }
  return answer;
}

}  // namespace mastwise
