#include "app/here/paper_map.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"
#include "core/geo/paper_map.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace mastwise {
namespace {

using words::fill;
using words::say;

std::string whole(double number) {
  return fmt::format("{:.0f}", number);
}

std::optional<Result<MapScale>> scale_of(const Form& form, bool miles) {
  const auto bar = numbers(form, Field::MapBar_mm, Field::MapBarLength);
  if (!bar) return std::nullopt;
  return MapScale::from_bar((*bar)[0], (*bar)[1] * words::distance_unit_m(miles));
}

FormAnswer place_answer(const MapPosition& found, bool miles) {
  return {.lines = {format_position(found.position, Notation::DegreesMinutes),
                    fill(say("± {distance} by the ruler, without the map's error"),
                         {{"distance", words::height(found.error_m, miles)}})},
          .place = found.position,
          .place_error_m = std::max(kTypedPosition_m, found.error_m)};
}

}  // namespace

FormAnswer place_from_map(const Form& form, bool miles) {
  const auto scale = scale_of(form, miles);
  const auto from = form.place(Field::MapPlace);
  const auto way = numbers(form, Field::MapDirection_deg, Field::MapLength_mm);
  if (scale && !*scale) return in_trouble(scale->error());
  FormAnswer answer;
  if (scale) {
    answer.lines.push_back(fill(say("1 : {ratio}; a millimeter is {distance}"),
                                {{"ratio", whole((*scale)->ratio())},
                                 {"distance", words::distance((*scale)->meters_per_mm(), miles)}}));
  }
  if (!scale || !from || !way) return answer;
  const auto found = from_named_place(*from, Bearing<True>::degrees((*way)[0]), (*way)[1], **scale);
  if (!found) return in_trouble(found.error());
  answer = place_answer(*found, miles);
  if (const std::string name = form.name(Field::MapPlace); !name.empty()) {
    answer.lines.push_back(
        fill(say("Measured from the middle of {name}: the map's dot may be {distance} off"),
             {{"name", name}, {"distance", words::distance(kDotOfTown_m, miles)}}));
    answer.place_error_m = std::hypot(answer.place_error_m, kDotOfTown_m);
  }
  return answer;
}

FormAnswer place_from_net(const Form& form, bool miles) {
  const auto across = numbers(form, Field::LeftMeridian_deg, Field::RightMeridian_deg,
                              Field::MeridiansApart_mm, Field::FromMeridian_mm);
  const auto up = numbers(form, Field::LowerParallel_deg, Field::UpperParallel_deg,
                          Field::ParallelsApart_mm, Field::FromParallel_mm);
  if (!across || !up) return {};
  const auto lines = [](const std::array<double, 4>& typed) {
    return BetweenLines{typed[0], typed[1], typed[2], typed[3]};
  };
  const auto found = from_graticule(lines(*across), lines(*up));
  return found ? place_answer(*found, miles) : in_trouble(found.error());
}

FormAnswer ruler_for_heading(const Shared& shared) {
  const auto scale = scale_of(shared.form, shared.settings.miles);
  const auto sheet = numbers(shared.form, Field::SheetWidth_mm, Field::SheetHeight_mm,
                             Field::StopRight_mm, Field::StopUp_mm);
  if (!scale || !*scale || !sheet || !shared.findings.card) return {};
  const auto ruler =
      ruler_line({.width_mm = (*sheet)[0],
                  .height_mm = (*sheet)[1],
                  .stop_right_mm = (*sheet)[2],
                  .stop_up_mm = (*sheet)[3]},
                 **scale, shared.findings.card->bearing_true, shared.findings.card->distance_m);
  if (!ruler) return in_trouble(ruler.error());
  FormAnswer answer;
  answer.lines.push_back(
      fill(say("{length} mm from here to the transmitter, {degrees}° right of the sheet's side "
               "edge, ± {error}°"),
           {{"length", whole(ruler->length_mm)},
            {"degrees", fmt::format("{:.1f}", ruler->from_upright.degrees())},
            {"error", fmt::format("{:.1f}", ruler->bearing_error_deg)}}));
  if (ruler->edge) {
    answer.lines.push_back(fill(
        say("The line leaves the sheet {right} mm from its left and {up} mm from its lower edge"),
        {{"right", whole(ruler->edge->right_mm)}, {"up", whole(ruler->edge->up_mm)}}));
  }
  return answer;
}

}  // namespace mastwise
