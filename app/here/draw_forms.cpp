#include "app/here/actions.hpp"
#include "app/here/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/form_page.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

// The sheets for the paper map and for the rig heading.
namespace mastwise::screens {
namespace {

using ui::Column;
using ui::FormPage;

const char* side_words(SunFrom side) {
  switch (side) {
    case SunFrom::nose:
      return "Ahead";
    case SunFrom::right:
      return "Right";
    case SunFrom::tail:
      return "Behind";
    case SunFrom::left:
      return "Left";
  }
  return "";
}

const char* carrier_words(Carrier carrier) {
  switch (carrier) {
    case Carrier::driven:
      return "Antenna on the vehicle";
    case Carrier::trailer_straight:
      return "On a trailer, hitched straight";
    case Carrier::trailer:
      return "On a trailer at an angle";
  }
  return "";
}

}  // namespace

void draw_paper_sheet(Ui& ui, const Shared& shared, const HereState& here) {
  const Rect view = draw_sheet_head(ui, "On the paper map");
  FormPage page(ui, "paper", view, shared.form, shared.settings.miles);
  Column left(ui, page.first());
  left.heading("SCALE");
  page.fields(left, {Field::MapBar_mm, Field::MapBarLength});
  left.rule();
  left.heading("POSITION FROM A MAPPED PLACE");
  page.fields(left, {Field::MapPlace, Field::MapDirection_deg, Field::MapLength_mm});
  draw_answer(left, here.from_map);
  if (left.button("use map place", "The rig is there", 0, 1, here.from_map.place.has_value())) {
    ui.emit(act::UseMapPlace{.by_net = false});
  }
  left.rule();
  left.heading("RULER LINE FOR THE HEADING");
  page.fields(left,
              {Field::SheetWidth_mm, Field::SheetHeight_mm, Field::StopRight_mm, Field::StopUp_mm});
  draw_answer(left, here.ruler);
  Column right(ui, page.second(left));
  right.heading("POSITION FROM GRID LINES");
  page.fields(right, {Field::LeftMeridian_deg, Field::RightMeridian_deg, Field::MeridiansApart_mm,
                      Field::FromMeridian_mm, Field::LowerParallel_deg, Field::UpperParallel_deg,
                      Field::ParallelsApart_mm, Field::FromParallel_mm});
  draw_answer(right, here.from_net);
  if (right.button("use net place", "The rig is there", 0, 1, here.from_net.place.has_value())) {
    ui.emit(act::UseMapPlace{.by_net = true});
  }
  page.end(right);
}

void draw_nose_sheet(Ui& ui, const Shared& shared) {
  const Rect view = draw_sheet_head(ui, "Rig heading");
  FormPage page(ui, "nose", view, shared.form, shared.settings.miles);
  Column left(ui, page.first());
  left.heading("BY THE LAST DRIVE");
  const auto& course = shared.course.last();
  left.line(course ? fmt::format("The last straight: {:.0f} m at {} true, ± {:.0f}°",
                                 course->length_m, words::whole_degrees(course->course),
                                 std::max(1.0, course->sigma_deg))
                   : "No straight drive of 20 m above 5 km/h since.");
  if (left.button("nose forward", "Drove in forward", 0, 2, course.has_value())) {
    ui.emit(act::NoseFromCourse{.backed_in = false});
  }
  if (left.button("nose backed", "Backed in", 1, 2, course.has_value())) {
    ui.emit(act::NoseFromCourse{.backed_in = true});
  }
  if (left.button("carrier", carrier_words(shared.settings.carrier), 0, 1)) {
    ui.emit(act::NextSetting{"carrier"});
  }
  left.rule();
  left.heading("BY THE HEADING SENSOR");
  left.line(shared.findings.facing
                ? "It points to " + words::whole_degrees(*shared.findings.facing) + " true."
                : "No sensor found.");
  if (left.button("nose sensor", "Sensor points along the nose", 0, 1,
                  shared.findings.facing.has_value())) {
    ui.emit(act::NoseFromSensor{});
  }
  Column right(ui, page.second(left));
  right.heading("BY THE SUN");
  right.line("When a shadow falls along the rig or square to it: where is the sun?");
  constexpr std::array kSides{SunFrom::nose, SunFrom::right, SunFrom::tail, SunFrom::left};
  for (std::size_t i = 0; i < kSides.size(); ++i) {
    if (right.button(std::string("sun ") + side_words(kSides[i]), side_words(kSides[i]),
                     static_cast<int>(i), static_cast<int>(kSides.size()))) {
      ui.emit(act::NoseFromSun{kSides[i]});
    }
  }
  right.rule();
  right.heading("BY TWO RECEIVER POSITIONS");
  right.line(
      "Put the receiver in line with the rig's side, far behind it, and mark. Then far ahead.");
  if (right.button("mark tail", shared.stop.tail_mark ? "Mark the tail again" : "Mark the tail", 0,
                   2, shared.findings.position.has_value())) {
    ui.emit(act::MarkTail{});
  }
  if (right.button("nose points", "Now at the nose", 1, 2, shared.stop.tail_mark.has_value())) {
    ui.emit(act::NoseFromPoints{});
  }
  right.rule();
  if (!shared.trouble.empty()) right.warning(words::sentence(shared.trouble));
  if (right.button("forget nose", "Delete the heading", 0, 1, shared.stop.nose.has_value())) {
    ui.emit(act::ForgetNose{});
  }
  page.end(right);
}

}  // namespace mastwise::screens
