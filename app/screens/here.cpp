#include "app/screens/screens.hpp"
#include "app/words.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kButton = 72.0f, kGap = 16.0f;

// A column of facts with their acts, from the top down.
class Column {
 public:
  Column(Ui& ui, Rect area) : ui_(ui), theme_(ui.theme()), area_(area), y_(area.top) {}

  void heading(const char* words) {
    y_ += 20.0f;
    ui_.canvas().text({area_.left, y_}, words, Face::WordBold, theme_.second_ink);
  }
  void figure(const std::string& words) {
    y_ += 46.0f;
    const bool wide = ui_.canvas().text_width(words, Face::Cardinal) > area_.width();
    ui_.canvas().text({area_.left, y_}, words, wide ? Face::Value : Face::Cardinal, theme_.ink);
  }
  void line(const std::string& words, Face face = Face::Word) {
    colour_line(words, face, theme_.second_ink);
  }
  void warning(const std::string& words) { colour_line(words, Face::WordBold, theme_.warning); }
  void rule() {
    y_ += 20.0f;
    ui_.canvas().line({area_.left, y_}, {area_.right, y_}, theme_.rule, 2.0f);
    y_ += 16.0f;
  }
  float bottom() const { return y_; }
  // One row of `count` buttons of equal width; the `index`-th.
  bool button(const char* name, const char* label, int index, int count, bool enabled = true,
              ButtonLook look = ButtonLook::Plain) {
    const auto of = static_cast<float>(count);
    const float width = (area_.width() - (of - 1.0f) * kGap) / of;
    const float left = area_.left + static_cast<float>(index) * (width + kGap);
    if (index == 0) y_ += kGap;
    const Rect rect{left, y_, left + width, y_ + kButton};
    if (index + 1 == count) y_ += kButton;
    return ui_.button(name, rect, label, look, enabled);
  }

 private:
  void colour_line(const std::string& words, Face face, ui::Colour colour) {
    y_ = ui_.paragraph({area_.left, y_ + 32.0f}, area_.width(), 28.0f, words, face, colour) - 28.0f;
  }

  Ui& ui_;
  const ui::Theme& theme_;
  Rect area_;
  float y_;
};

std::string fix_words(const Model& model, const nmea::Fix& fix) {
  std::string words = nmea::name_of(fix.quality);
  if (fix.satellites) words += fmt::format(", {} satellites", *fix.satellites);
  if (fix.hdop) words += fmt::format(", HDOP {:.1f}", *fix.hdop);
  if (fix.age) words += fmt::format(", {} old", words::age(*fix.age));
  if (const auto parked = model.parked.result(); parked && parked->scatter_m) {
    words += fmt::format("; mean of {}, scatter {:.1f} m", parked->count, *parked->scatter_m);
  }
  return words;
}

void draw_source(Column& column, const Model& model) {
  if (model.stop.source == PositionSource::ByHand) {
    column.line(model.stop.practice ? "The practice area's stop" : "Typed by hand");
    return;
  }
  const nmea::Fix fix = model.receiver.fix(model.now);
  if (fix.good()) {
    column.line(fix_words(model, fix));
    return;
  }
  column.warning(nmea::explain(fix));
  if (model.findings.position && fix.age) {
    column.line(fmt::format("Shown is where the rig was {} ago.", words::age(*fix.age)));
  }
}

// The same place in the other notations: what a map, a ranger or a friend may use.
void draw_echo(Column& column, const Model& model) {
  if (!model.findings.position) return;
  for (const Notation notation : kNotations) {
    if (notation == model.settings.notation) continue;
    column.line(format_position(*model.findings.position, notation));
  }
}

void draw_position(Column& column, Ui& ui, const Model& model) {
  column.heading("WHERE THE RIG STANDS");
  const auto& position = model.findings.position;
  column.figure(position ? format_position(*position, model.settings.notation) : "Not known yet");
  draw_echo(column, model);
  draw_source(column, model);
  column.line(words::link(model.link), Face::Small);
  const bool by_hand = model.stop.source == PositionSource::ByHand;
  if (column.button("type position", "Type position", 0, 2)) {
    ui.emit(act::OpenKeypad{KeypadPurpose::Position});
  }
  if (column.button("use receiver", "Use receiver", 1, 2, by_hand)) ui.emit(act::UseReceiver{});
  const std::string notation = words::notation(model.settings.notation);
  if (column.button("notation", notation.c_str(), 0, 1, position.has_value())) {
    ui.emit(act::NextNotation{});
  }
}

const char* origin_words(Nose::Origin origin) {
  switch (origin) {
    case Nose::Origin::ByHand:
      return "Typed by hand";
    case Nose::Origin::LastCourse:
      return "From the last straight course, driven forward";
    case Nose::Origin::BackedIn:
      return "From the last straight course, backed in";
  }
  return "";
}

void draw_nose(Column& column, Ui& ui, const Model& model) {
  column.heading("WHERE THE NOSE POINTS");
  const Findings& found = model.findings;
  if (found.nose) {
    std::string words = words::whole_degrees(found.nose->nose()) + " true";
    if (found.field) {
      words += ", " +
               words::whole_degrees(to_magnetic(found.nose->nose(), found.field->declination)) +
               " magnetic";
    }
    column.figure(words);
    column.line(origin_words(model.stop.nose->origin));
  } else {
    column.figure("Not known yet");
    column.line(model.stop.nose ? "Typed from the compass; needs the position"
                                : "Needed only for angles from the nose");
  }
  if (column.button("type nose", "Type heading", 0, 2)) {
    ui.emit(act::OpenKeypad{KeypadPurpose::Nose});
  }
  if (column.button("forget nose", "Forget", 1, 2, model.stop.nose.has_value())) {
    ui.emit(act::ForgetNose{});
  }
  const bool course = model.course.last().has_value();
  if (column.button("nose forward", "Drove in forward", 0, 2, course)) {
    ui.emit(act::NoseFromCourse{.backed_in = false});
  }
  if (column.button("nose backed", "Backed in", 1, 2, course)) {
    ui.emit(act::NoseFromCourse{.backed_in = true});
  }
}

void draw_needle(Column& column, const Model& model) {
  const Findings& found = model.findings;
  column.heading("DATE AND NEEDLE");
  const auto& trusted = model.receiver.date();
  column.line(words::date(found.date) + (found.date_origin == Findings::DateOrigin::Receiver
                                             ? ", from the receiver"
                                             : ", from this machine's clock"));
  if (trusted && trusted->weeks_shifted != 0) {
    column.warning(fmt::format("The receiver's date was {} weeks {}; repaired.",
                               std::abs(trusted->weeks_shifted),
                               trusted->weeks_shifted > 0 ? "behind" : "ahead"));
  }
  if (found.field) {
    column.line(fmt::format("The needle points {} of true north, ± {:.1f}°",
                            words::declination(found.field->declination),
                            found.field->declination_sigma_deg));
    if (found.field->beyond_model_end) {
      column.warning("The magnetic model has ended: the compass number drifts off.");
    }
  }
}

void draw_reception(Column& column, Ui& ui, const Model& model) {
  column.heading("THE ANTENNA");
  const gear::Gear gear = gear_of(model.settings.gear);
  column.line(gear.name);
  column.line("Around it: " + words::surroundings(model.stop.surroundings));
  if (column.button("gear", "Gear", 0, 2)) ui.emit(act::OpenSheet{Sheet::Gear});
  if (column.button("surroundings", "Surroundings", 1, 2)) {
    ui.emit(act::OpenSheet{Sheet::Surroundings});
  }
}

void draw_settings(Column& column, Ui& ui, const Model& model) {
  if (column.button("units", model.settings.miles ? "Miles" : "Kilometres", 0, 3)) {
    ui.emit(act::SwitchUnits{});
  }
  if (column.button("hand", model.settings.left_handed ? "Left thumb" : "Right thumb", 1, 3)) {
    ui.emit(act::SwitchHand{});
  }
  if (column.button("practice", model.stop.practice ? "End practice" : "Practice", 2, 3)) {
    ui.emit(act::SwitchPractice{});
  }
}

}  // namespace

void draw_here(Ui& ui, Rect area, const Model& model) {
  constexpr float kBetween = 48.0f;
  Rect page = area;
  page.top = ui.begin_page("here", area);
  Rect first = page, second = page;
  if (!ui.portrait()) {
    first.right = page.centre().x - kBetween / 2.0f;
    second.left = page.centre().x + kBetween / 2.0f;
  }
  Column left(ui, first);
  draw_position(left, ui, model);
  left.rule();
  draw_needle(left, model);
  if (ui.portrait()) {
    left.rule();
    second.top = left.bottom();
  }
  Column right(ui, second);
  draw_nose(right, ui, model);
  right.rule();
  draw_reception(right, ui, model);
  right.rule();
  draw_settings(right, ui, model);
  ui.end_page("here", page.top, std::max(left.bottom(), right.bottom()));
}

}  // namespace mastwise::screens
