#include "app/here/actions.hpp"
#include "app/here/draw.hpp"
#include "app/here/facts.hpp"
#include "app/shared/actions.hpp"
#include "app/shared/stored_names.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/form_page.hpp"
#include "app/ui/rig_symbol.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/standing_choice.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include <fmt/format.h>

// The sheets for the paper map and for the rig heading.
namespace mastwise::screens {
namespace {

using ui::Column;
using ui::Face;
using ui::FormPage;
using words::say;

const char* side_words(SunFrom side) {
  switch (side) {
    case SunFrom::nose:
      return say("Ahead");
    case SunFrom::right:
      return say("Right");
    case SunFrom::tail:
      return say("Behind");
    case SunFrom::left:
      return say("Left");
  }
  return "";
}

// A rig, and on a trailer the vehicle that tows it, straight or at an angle.
auto carrier_picture(Carrier carrier) {
  return [carrier](ui::Canvas& canvas, Rect room, ui::Color color) {
    ui::Theme theme{};
    theme.ink = color;
    theme.paper = color;
    const Point middle = room.center();
    const float scale = 0.30f;
    if (carrier == Carrier::driven) {
      ui::draw_rig(canvas, theme, middle, Turn::clockwise_deg(90.0), scale);
      return;
    }
    const double turned = carrier == Carrier::trailer ? 55.0 : 90.0;
    const Point hitch{middle.x + 8.0f, middle.y};
    const Rect trailer{middle.x - 44.0f, middle.y - 10.0f, middle.x, middle.y + 10.0f};
    canvas.fill(trailer, color, 3.0f);
    canvas.line({trailer.right, middle.y}, hitch, color, 3.0f);
    const Point tow = ui::around(hitch, 20.0f, turned);
    ui::draw_rig(canvas, theme, tow, Turn::clockwise_deg(turned), 0.2f);
  };
}

void draw_by_drive(Column& column, Ui& ui, Rect room, const Shared& shared) {
  column.heading(say("BY THE LAST DRIVE"));
  const auto& course = shared.course.last();
  column.line(
      course ? words::fill(say("The last straight: {length} at {degrees} true, ± {error}°"),
                           {{"length", words::height(course->length_m, shared.settings.miles)},
                            {"degrees", words::whole_degrees(course->course)},
                            {"error", fmt::format("{:.0f}", std::max(1.0, course->sigma_deg))}})
             : words::fill(say("No straight drive of {length} since."),
                           {{"length", words::height(20.0, shared.settings.miles)}}),
      Face::Text);
  if (column.button("nose forward", say("Drove in forward"), 0, 2, course.has_value())) {
    ui.emit(act::NoseFromCourse{.backed_in = false});
  }
  if (column.button("nose backed", say("Backed in"), 1, 2, course.has_value())) {
    ui.emit(act::NoseFromCourse{.backed_in = true});
  }
  column.space(Column::kGap);
  constexpr std::array kCarriers{Carrier::driven, Carrier::trailer_straight, Carrier::trailer};
  const std::array labels{say("Vehicle"), say("Trailer"), say("Angled")};
  std::vector<ui::Option> options;
  for (std::size_t i = 0; i < kCarriers.size(); ++i) {
    options.push_back(
        {std::string(kStoredNames<Carrier>[i]), labels[i], carrier_picture(kCarriers[i])});
  }
  constexpr float kHeight = 112.0f;
  const float top = column.bottom();
  const auto touched = ui::segmented(ui, "carrier", {room.left, top, room.right, top + kHeight},
                                     options, static_cast<std::size_t>(shared.settings.carrier));
  column.space(kHeight);
  if (touched) ui.emit(act::ChooseSetting{"carrier", options[*touched].key});
}

void draw_by_hand(Column& column, Ui& ui, Rect room, const Shared& shared) {
  const Findings& found = shared.findings;
  column.heading(found.nose ? say("NOW") : say("BY HAND"));
  if (found.nose) {
    const NoseFacts facts = nose_facts(shared);
    column.figure(facts.true_words);
    if (!facts.magnetic_words.empty()) column.plain(facts.magnetic_words, Face::TextBold);
    facts.warns ? column.warning(facts.origin) : column.line(facts.origin, Face::Text);
  }
  const auto& nose = shared.stop.nose;
  if (nose && nose->origin == Nose::Origin::ByHand) {
    column.line(say("Where was the compass read?"), Face::Text);
    const float top = column.bottom() + 8.0f;
    const float height = ui::standing_choice_height(ui, room.width(), shared.settings.miles);
    const auto touched = ui::standing_choice(ui, "read", {room.left, top, room.right, top + height},
                                             shared.settings.miles, nose->read_at);
    if (touched) ui.emit(act::NoseReadAt{*touched});
    column.space(height + 24.0f);
  }
  if (column.button("type nose", say("Type heading"), 0, 2, true, ui::ButtonLook::Filled)) {
    ui.emit(act::OpenKeypad{KeypadPurpose::Nose});
  }
  if (column.button("checks", say("Check the compass"), 1, 2)) {
    ui.emit(act::OpenSheet{Sheet::Checks});
  }
}

}  // namespace

void draw_paper_sheet(Ui& ui, const Shared& shared, const HereState& here) {
  const Rect view = draw_sheet_head(ui, say("On the paper map"), Sheet::Position);
  FormPage page(ui, "paper", view, shared.form, shared.settings.miles);
  Column left(ui, page.first());
  left.heading(say("SCALE"));
  page.fields(left, {Field::MapBar_mm, Field::MapBarLength});
  left.rule();
  left.heading(say("POSITION FROM A MAPPED PLACE"));
  page.fields(left, {Field::MapPlace, Field::MapDirection_deg, Field::MapLength_mm});
  draw_answer(left, here.from_map);
  if (left.button("use map place", say("The rig is there"), 0, 1,
                  here.from_map.place.has_value())) {
    ui.emit(act::UseMapPlace{.by_net = false});
  }
  left.rule();
  left.heading(say("RULER LINE FOR THE HEADING"));
  page.fields(left,
              {Field::SheetWidth_mm, Field::SheetHeight_mm, Field::StopRight_mm, Field::StopUp_mm});
  draw_answer(left, here.ruler);
  Column right(ui, page.second(left));
  right.heading(say("POSITION FROM GRID LINES"));
  page.fields(right, {Field::LeftMeridian_deg, Field::RightMeridian_deg, Field::MeridiansApart_mm,
                      Field::FromMeridian_mm, Field::LowerParallel_deg, Field::UpperParallel_deg,
                      Field::ParallelsApart_mm, Field::FromParallel_mm});
  draw_answer(right, here.from_net);
  if (right.button("use net place", say("The rig is there"), 0, 1,
                   here.from_net.place.has_value())) {
    ui.emit(act::UseMapPlace{.by_net = true});
  }
  page.end(right);
}

void draw_nose_sheet(Ui& ui, const Shared& shared) {
  const Rect view = draw_sheet_head(ui, say("Which way the nose points"));
  FormPage page(ui, "nose", view, shared.form, shared.settings.miles);
  Column left(ui, page.first());
  draw_by_hand(left, ui, page.first(), shared);
  left.rule();
  draw_by_drive(left, ui, page.first(), shared);
  Column right(ui, page.second(left));
  right.heading(say("BY THE HEADING SENSOR"));
  const auto sensor = sensor_says(shared.receiver.heading(shared.now), shared.findings);
  right.line(sensor ? words::fill(say("It points to {degrees} true."),
                                  {{"degrees", words::whole_degrees(*sensor)}})
                    : std::string(say("No sensor found.")),
             Face::Text);
  if (right.button("nose sensor", say("Sensor points along the nose"), 0, 1, sensor.has_value())) {
    ui.emit(act::NoseFromSensor{});
  }
  if (right.button("sensor card", say("Its deviation card"), 0, 1)) {
    ui.emit(act::OpenSheet{Sheet::Sensor});
  }
  right.rule();
  right.heading(say("BY THE SUN"));
  right.line(say("When a shadow falls along the rig or square to it: where is the sun?"),
             Face::Text);
  constexpr std::array kSides{SunFrom::nose, SunFrom::right, SunFrom::tail, SunFrom::left};
  constexpr std::array kKeys{"sun Ahead", "sun Right", "sun Behind", "sun Left"};
  for (std::size_t i = 0; i < kSides.size(); ++i) {
    if (right.button(kKeys[i], side_words(kSides[i]), static_cast<int>(i),
                     static_cast<int>(kSides.size()))) {
      ui.emit(act::NoseFromSun{kSides[i]});
    }
  }
  right.rule();
  right.heading(say("BY TWO RECEIVER POSITIONS"));
  right.line(say("Put the receiver in line with the rig's side, far behind it, and mark. Then far "
                 "ahead."),
             Face::Text);
  if (right.button("mark tail",
                   shared.stop.tail_mark ? say("Mark the tail again") : say("Mark the tail"), 0, 2,
                   shared.findings.position.has_value())) {
    ui.emit(act::MarkTail{});
  }
  if (right.button("nose points", say("Now at the nose"), 1, 2,
                   shared.stop.tail_mark.has_value())) {
    ui.emit(act::NoseFromPoints{});
  }
  right.rule();
  if (!shared.trouble.empty()) right.warning(words::sentence(shared.trouble));
  if (right.button("forget nose", say("Delete the heading"), 0, 1, shared.stop.nose.has_value())) {
    ui.emit(act::ForgetNose{});
  }
  page.end(right);
}

}  // namespace mastwise::screens
