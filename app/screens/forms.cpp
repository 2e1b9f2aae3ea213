#include "app/model/stored_names.hpp"
#include "app/screens/column.hpp"
#include "app/screens/screens.hpp"
#include "app/screens/sheet_head.hpp"
#include "app/words/checks.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"
#include "core/headings/compass_checks.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>

#include <fmt/format.h>

// Forms with numbers to type and their results: the paper map, the ceiling handle, the compass
// checks.
namespace mastwise::screens {
namespace {

using ui::ButtonLook;
using ui::Face;

// Two columns where the screen is wide.
class FormPage {
 public:
  FormPage(Ui& ui, const char* name, Rect view, const Model& model)
      : ui_(ui),
        name_(name),
        model_(model),
        top_(ui.begin_page(name, view)),
        first_(view),
        second_(view) {
    first_.top = second_.top = top_;
    if (!ui.portrait()) {
      constexpr float kBetween = 48.0f;
      first_.right = view.center().x - kBetween / 2.0f;
      second_.left = view.center().x + kBetween / 2.0f;
    }
  }
  Rect first() const { return first_; }
  // Beside the first column, or below it where the screen is upright.
  Rect second(const Column& above) {
    bottom_ = std::max(bottom_, above.bottom());
    if (ui_.portrait()) second_.top = above.bottom() + 32.0f;
    return second_;
  }
  void end(const Column& last) {
    ui_.end_page(name_, top_, std::max(bottom_, last.bottom()) + 16.0f);
  }

  // A field with its value and the action that edits it.
  void field(Column& column, Field field) {
    const auto number = model_.form.number(field);
    const auto place = model_.form.place(field);
    const std::string value = number  ? fmt::format("{:g}", *number)
                              : place ? place_words(field, *place)
                                      : std::string("type");
    const std::string label = field_words(field, model_.settings.miles);
    if (column.field(
            "field " + std::string(kStoredNames<Field>.at(static_cast<std::size_t>(field))), label,
            value, number || place)) {
      ui_.emit(act::OpenField{field});
    }
  }
  void fields(Column& column, std::initializer_list<Field> all) {
    for (const Field one : all) field(column, one);
  }

 private:
  std::string place_words(Field field, const Position& place) const {
    const std::string name = model_.form.name(field);
    return name.empty() ? format_position(place, Notation::Decimal) : name;
  }

  Ui& ui_;
  const char* name_;
  const Model& model_;
  float top_;
  Rect first_, second_;
  float bottom_ = 0.0f;
};

void draw_answer(Column& column, const FormAnswer& answer) {
  if (!answer.trouble.empty()) column.warning(words::sentence(answer.trouble));
  for (const std::string& line : answer.lines) column.plain(line, Face::WordBold);
}

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

void draw_paper_sheet(Ui& ui, const Model& model) {
  const Rect view = draw_sheet_head(ui, "On the paper map");
  FormPage page(ui, "paper", view, model);
  Column left(ui, page.first());
  left.heading("SCALE");
  page.fields(left, {Field::MapBar_mm, Field::MapBarLength});
  left.rule();
  left.heading("POSITION FROM A MAPPED PLACE");
  page.fields(left, {Field::MapPlace, Field::MapDirection_deg, Field::MapLength_mm});
  draw_answer(left, model.findings.from_map);
  if (left.button("use map place", "The rig is there", 0, 1,
                  model.findings.from_map.place.has_value())) {
    ui.emit(act::UseMapPlace{.by_net = false});
  }
  left.rule();
  left.heading("RULER LINE FOR THE HEADING");
  page.fields(left,
              {Field::SheetWidth_mm, Field::SheetHeight_mm, Field::StopRight_mm, Field::StopUp_mm});
  draw_answer(left, model.findings.ruler);
  Column right(ui, page.second(left));
  right.heading("POSITION FROM GRID LINES");
  page.fields(right, {Field::LeftMeridian_deg, Field::RightMeridian_deg, Field::MeridiansApart_mm,
                      Field::FromMeridian_mm, Field::LowerParallel_deg, Field::UpperParallel_deg,
                      Field::ParallelsApart_mm, Field::FromParallel_mm});
  draw_answer(right, model.findings.from_net);
  if (right.button("use net place", "The rig is there", 0, 1,
                   model.findings.from_net.place.has_value())) {
    ui.emit(act::UseMapPlace{.by_net = true});
  }
  page.end(right);
}

void draw_handle_sheet(Ui& ui, const Model& model) {
  const Rect view = draw_sheet_head(ui, "Ceiling handle");
  FormPage page(ui, "handle", view, model);
  Column left(ui, page.first());
  left.heading("CALIBRATE WITH TWO POINTS");
  left.line(
      "Turn the antenna clockwise, seen from below, to two directions 30 to 150 degrees apart. "
      "Type the handle's reading at each.");
  page.fields(left, {Field::FirstReading_deg, Field::FirstAngle_deg, Field::SecondReading_deg,
                     Field::SecondAngle_deg});
  left.rule();
  page.fields(left, {Field::ReachFrom_deg, Field::ReachTo_deg, Field::Stow_deg});
  Column right(ui, page.second(left));
  right.heading("THE TURN");
  page.field(right, Field::HandleNow_deg);
  draw_answer(right, model.findings.handle);
  const Findings& found = model.findings;
  if (found.handle_check) {
    right.plain(words::handle_check(*found.handle_check, found.handle_corrected));
  }
  const bool fresh = handle_from(model.form).has_value() && model.findings.handle.trouble.empty();
  if (right.button("keep handle", "Save this handle", 0, 2, fresh, ButtonLook::Filled)) {
    ui.emit(act::KeepHandle{});
  }
  if (right.button("forget handle", "Delete it", 1, 2, model.settings.handle.has_value())) {
    ui.emit(act::ForgetHandle{});
  }
  right.line("Clockwise from below is counterclockwise on Mastwise's dial.");
  page.end(right);
}

void draw_checks_sheet(Ui& ui, const Model& model) {
  const Rect view = draw_sheet_head(ui, "Can the compass be trusted?");
  FormPage page(ui, "checks", view, model);
  Column left(ui, page.first());
  left.heading("THERE AND BACK");
  left.line("Two spots in sight of each other: read the bearing from each to the other.");
  page.fields(left, {Field::ThereBearing_deg, Field::BackBearing_deg});
  draw_answer(left, model.findings.reciprocal);
  left.rule();
  left.heading("A LANDMARK");
  left.line("Its position lets you aim by an angle from it.");
  page.field(left, Field::LandmarkPlace);
  left.rule();
  left.heading("TWO WAYS, ONE DIRECTION");
  left.line("Compare two headings, such as by compass and by sun, both from the same north.");
  page.fields(left, {Field::OneWay_deg, Field::OneWayError_deg, Field::OtherWay_deg,
                     Field::OtherWayError_deg});
  draw_answer(left, model.findings.agreement);
  Column right(ui, page.second(left));
  right.heading("KEEP THE COMPASS AWAY FROM");
  for (const KeepAway& keep : keep_away_distances()) {
    const bool miles = model.settings.miles;
    std::string distance = words::height(keep.least_m, miles);
    if (keep.better_m) distance += ", better " + words::height(*keep.better_m, miles);
    right.pair(words::sentence(words::needle_pull(keep.from)), distance);
  }
  right.line("From field manuals: common practice, no source.", Face::Small);
  right.rule();
  right.heading("A STRONG STATION");
  const Findings& found = model.findings;
  right.line(found.compass_check
                 ? words::compass_check(*found.compass_check, found.corrected)
                 : "Peak on a strong station and save the sweep: it corrects every other heading "
                   "at this stop.");
  if (right.button("forget correction", "Delete the correction", 0, 1,
                   !model.stop.strong_stations.empty())) {
    ui.emit(act::ForgetCorrection{});
  }
  page.end(right);
}

void draw_nose_sheet(Ui& ui, const Model& model) {
  const Rect view = draw_sheet_head(ui, "Rig heading");
  FormPage page(ui, "nose", view, model);
  Column left(ui, page.first());
  left.heading("BY THE LAST DRIVE");
  const auto& course = model.course.last();
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
  if (left.button("carrier", carrier_words(model.settings.carrier), 0, 1)) {
    ui.emit(act::NextCarrier{});
  }
  left.rule();
  left.heading("BY THE HEADING SENSOR");
  left.line(model.findings.facing
                ? "It points to " + words::whole_degrees(*model.findings.facing) + " true."
                : "No sensor found.");
  if (left.button("nose sensor", "Sensor points along the nose", 0, 1,
                  model.findings.facing.has_value())) {
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
  if (right.button("mark tail", model.stop.tail_mark ? "Mark the tail again" : "Mark the tail", 0,
                   2, model.findings.position.has_value())) {
    ui.emit(act::MarkTail{});
  }
  if (right.button("nose points", "Now at the nose", 1, 2, model.stop.tail_mark.has_value())) {
    ui.emit(act::NoseFromPoints{});
  }
  right.rule();
  if (!model.trouble.empty()) right.warning(words::sentence(model.trouble));
  if (right.button("forget nose", "Delete the heading", 0, 1, model.stop.nose.has_value())) {
    ui.emit(act::ForgetNose{});
  }
  page.end(right);
}

}  // namespace mastwise::screens
