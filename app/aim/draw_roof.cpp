#include "app/aim/aimed.hpp"
#include "app/aim/draw.hpp"
#include "app/aim/draw_roof_dial.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/guide_mark.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/chances.hpp"
#include "app/words/headings.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

// For work on the roof, in gloves and sun: the turn owns half of the screen, nothing is under 34
// units, targets are 15 mm.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Face;
using words::say;

constexpr float kAct = 15.0f * ui::kUnitsPerMm + 4.0f;
constexpr std::array kWordFaces{Face::Answer, Face::Big, Face::Second, Face::Matter};

// The largest face in which the words fit the width.
Face largest(const ui::Canvas& canvas, std::string_view words, float width) {
  for (const Face face : kWordFaces) {
    if (canvas.text_width(words, face) <= width) return face;
  }
  return Face::Cardinal;
}

// The half with the answer.
class AnswerHalf {
 public:
  AnswerHalf(Ui& ui, Rect area, const Shared& shared, const std::optional<Aimed>& pointing)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        area_(area),
        shared_(shared),
        pointing_(pointing) {}

  void draw();

 private:
  bool good() const { return pointing_ && pointing_->state == Aimed::State::Good; }
  Rect head();
  void to_turn(Rect rect);
  void hold_there(Rect rect);
  void from_nose(Rect rect);
  void without_sensor(Rect rect);
  void words(Point baseline, const char* text, float width) {
    constexpr float kSide = 12.0f;
    const Face face = largest(canvas_, text, width - 2.0f * kSide);
    canvas_.text(baseline, text, face, theme_.ink, Align::Center);
  }

  Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_;
  const Shared& shared_;
  const std::optional<Aimed>& pointing_;
};

Rect AnswerHalf::head() {
  constexpr float kSide = 12.0f;
  const Rect page{area_.left + kSide, area_.top + ui::kMargin, area_.right - kSide,
                  area_.bottom - ui::kMargin};
  ui::guide_button(ui_, Guide::Roof, {area_.left, area_.top, area_.left + kAct, area_.top + kAct});
  const float left = area_.left + kAct;
  float room = page.right - kSide - left;
  if (shared_.stop.practice) {
    const char* mark = say("PRACTICE");
    canvas_.text({page.right - kSide, page.top + 32.0f}, mark, Face::Cardinal,
                 good() ? theme_.ink : theme_.warning, Align::Right);
    room -= canvas_.text_width(mark, Face::Cardinal) + 24.0f;
  }
  if (shared_.stop.target) {
    const std::string title =
        ui::shortened(canvas_, words::title(*shared_.stop.target), Face::Cardinal, room);
    canvas_.text({left, page.top + 32.0f}, title, Face::Cardinal, theme_.ink);
  }
  return {page.left, page.top + 60.0f, page.right, page.bottom};
}

// An arrow, the words and the figure, spread over the height.
void AnswerHalf::to_turn(Rect rect) {
  constexpr float kFigure = 184.0f, kWords = 92.0f, kDescent = 30.0f, kLeastGaps = 60.0f;
  const bool right = pointing_->turn.clockwise_deg() >= 0.0;
  const float room = rect.height() - kFigure - kWords - kDescent;
  const float arrow = std::min(0.34f * rect.width(), room - kLeastGaps);
  const float gap = (room - arrow) / 3.0f;
  const float middle = rect.center().x;
  draw_turn_arrow(ui_, {rect.left + 24.0f, rect.top, rect.right - 24.0f, rect.top + arrow}, right);
  const float y = rect.top + arrow + gap + kWords;
  words({middle, y}, right ? say("Turn right") : say("Turn left"), rect.width());
  const std::string figure = words::whole_degrees(pointing_->turn.size_deg());
  canvas_.text({middle, y + kDescent + gap + kFigure}, figure, Face::Roof, theme_.ink,
               Align::Center);
}

void AnswerHalf::hold_there(Rect rect) {
  const std::optional<Slack>& slack = shared_.findings.slack;
  const bool any = slack && slack->all_round();
  const float scale = std::min(0.34f * rect.height(), 220.0f);
  draw_tolerance_scale(ui_, {rect.left + 16.0f, rect.top, rect.right - 16.0f, rect.top + scale},
                       *pointing_, slack);
  const float middle = rect.center().x;
  const float y = rect.top + scale + 0.4f * (rect.height() - scale);
  words({middle, y}, any ? say("Any heading") : say("Hold there"), rect.width());
  if (any) return;
  const long left_deg = std::lround(pointing_->turn.size_deg());
  if (pointing_->state == Aimed::State::Best) {
    ui_.paragraph({middle, y + 70.0f}, rect.width(), 42.0f,
                  say("As exact as this sensor is. Peak by the meter."), Face::Cardinal, theme_.ink,
                  Align::Center);
  } else if (left_deg > 0) {
    const char* phrase = pointing_->turn.clockwise_deg() >= 0.0 ? say("{degrees}° right is best")
                                                                : say("{degrees}° left is best");
    const std::string best = words::fill(phrase, {{"degrees", fmt::format("{}", left_deg)}});
    canvas_.text({middle, y + 86.0f}, best, largest(canvas_, best, 0.8f * rect.width()), theme_.ink,
                 Align::Center);
  }
}

// On the roof a needle gives no answer: there the rig's nose is the mark.
void AnswerHalf::from_nose(Rect rect) {
  const float middle = rect.center().x;
  const auto& rig = shared_.findings.card->rig_angle;
  const float y = ui_.paragraph({middle, rect.top + 60.0f}, rect.width(), 52.0f,
                                say("No compass up here: steel turns the needle."), Face::Matter,
                                theme_.warning, Align::Center);
  if (!rig) {
    ui_.paragraph({middle, y + 40.0f}, rect.width(), 52.0f,
                  say("Let someone on the ground sight along the line, or set the rig heading."),
                  Face::Matter, theme_.ink, Align::Center);
    return;
  }
  const double turn_deg = Turn::clockwise_deg(rig->clockwise_deg()).clockwise_deg();
  const float figure = std::max(rect.center().y + 120.0f, y + 190.0f);
  canvas_.text({middle, figure}, words::whole_degrees(std::fabs(turn_deg)), Face::Roof, theme_.ink,
               Align::Center);
  words({middle, figure + 84.0f},
        turn_deg < 0.0 ? say("left of the nose") : say("right of the nose"), rect.width());
}

void AnswerHalf::without_sensor(Rect rect) {
  const Findings& found = shared_.findings;
  const float middle = rect.center().x;
  if (!found.card) {
    ui_.paragraph({middle, rect.center().y - 40.0f}, rect.width(), 56.0f,
                  shared_.stop.target ? say("Set the rig's position") : say("Choose a station"),
                  Face::Matter, theme_.ink, Align::Center);
    return;
  }
  from_nose(rect);
}

void AnswerHalf::draw() {
  canvas_.fill(area_, good() ? theme_.lobe : theme_.panel);
  const Rect rect = head();
  if (!pointing_) return without_sensor(rect);
  if (pointing_->state == Aimed::State::Off) return to_turn(rect);
  hold_there(rect);
}

// The other half: numbers, dial, acts.
class FactsHalf {
 public:
  FactsHalf(Ui& ui, Rect area, const Shared& shared, const std::optional<Aimed>& pointing)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        area_(area),
        shared_(shared),
        found_(shared.findings),
        pointing_(pointing) {}

  void draw();

 private:
  float target_number();
  float from_nose();
  void acts();
  bool act(const std::string& name, Rect rect, const char* label, ui::ButtonLook look);
  void tone_choice(Rect rect);

  Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_;
  const Shared& shared_;
  const Findings& found_;
  const std::optional<Aimed>& pointing_;
};

// The target on a compass, and where the antenna points now. Returns the free top.
float FactsHalf::target_number() {
  canvas_.text({area_.left, area_.top + 30.0f}, say("Target on your compass"), Face::Cardinal,
               theme_.second_ink);
  float y = area_.top + 138.0f;
  const std::string figure = words::whole_degrees(found_.card->bearing_magnetic);
  canvas_.text({area_.left, y}, figure, Face::Answer, theme_.ink);
  const float beside = area_.left + canvas_.text_width(figure, Face::Answer) + 40.0f;
  ui::kite(canvas_, {beside, y - 62.0f}, 22.0f, theme_.ink, false);
  const char* north = found_.corrected ? say("corrected") : say("magnetic");
  if (beside + 28.0f + canvas_.text_width(north, Face::Cardinal) <= area_.right) {
    canvas_.text({beside + 28.0f, y - 50.0f}, north, Face::Cardinal, theme_.ink);
  }
  const auto now = on_compass_here(shared_, *found_.facing);
  if (now) {
    const std::string words =
        words::fill(say("now {heading} ± {doubt}°"),
                    {{"heading", words::whole_degrees(*now)},
                     {"doubt", fmt::format("{:.0f}", std::ceil(pointing_->doubt_deg))}});
    const bool fits = beside - 16.0f + canvas_.text_width(words, Face::Cardinal) <= area_.right;
    if (!fits) y += 46.0f;
    canvas_.text({fits ? beside - 16.0f : area_.left, y}, words, Face::Cardinal, theme_.ink);
  }
  return y + 20.0f;
}

// The way from the nose in words of the rig's sides.
float FactsHalf::from_nose() {
  float y = area_.top + 56.0f;
  if (!found_.card) return area_.top;
  if (!found_.card->rig_angle) {
    canvas_.text({area_.left, y}, say("Nose not known"), Face::Matter, theme_.ink);
    return ui_.paragraph({area_.left, y + 52.0f}, area_.width(), 42.0f,
                         say("Set the rig heading, under Here."), Face::Cardinal,
                         theme_.second_ink) -
           20.0f;
  }
  const std::string sides = words::sentence(words::rig_sides(*found_.card->rig_angle));
  const std::size_t comma = std::min(sides.find(", "), sides.size());
  const std::string hour = sides.substr(0, comma);
  const bool big = canvas_.text_width(hour, Face::Big) <= area_.width();
  canvas_.text({area_.left, y}, hour, big ? Face::Big : Face::Matter, theme_.ink);
  y += 52.0f;
  if (comma < sides.size()) {
    y = ui_.paragraph({area_.left, y}, area_.width(), 40.0f, sides.substr(comma + 2),
                      Face::Cardinal, theme_.ink);
  }
  std::string angle = words::from_nose(*found_.card->rig_angle);
  // "straight ahead" needs no nose.
  if (angle.front() >= '0' && angle.front() <= '9') {
    angle = words::fill(say("{angle} of the nose"), {{"angle", angle}});
  }
  y = ui_.paragraph({area_.left, y}, area_.width(), 40.0f, angle, Face::Cardinal,
                    theme_.second_ink);
  return y - 26.0f;
}

bool FactsHalf::act(const std::string& name, Rect rect, const char* label, ui::ButtonLook look) {
  const bool tapped = ui_.touchable(name, rect);
  const bool filled = (look == ui::ButtonLook::Filled) != ui_.pressed(name);
  canvas_.fill(rect, filled ? theme_.accent : theme_.panel, 14.0f);
  if (!filled) canvas_.outline(rect.inset(1.5f), theme_.accent, 3.0f, 14.0f);
  canvas_.text({rect.center().x, rect.center().y + 12.0f}, label, Face::Cardinal,
               filled ? theme_.on_accent : theme_.accent, Align::Center,
               canvas_.size_within(rect.width() - 8.0f, label, Face::Cardinal));
  return tapped;
}

// Off or on, each with its mark over the word.
void FactsHalf::tone_choice(Rect rect) {
  const auto picture = [](const char* word, bool sounds) {
    return [word, sounds](ui::Canvas& canvas, Rect part, ui::Color color) {
      const Point mark{part.center().x - 12.0f, part.top + 22.0f};
      canvas.disc(mark, 9.0f, color);
      for (const float radius : {20.0f, 32.0f}) {
        if (sounds) canvas.arc(mark, radius, 50.0f, 130.0f, color, 5.0f);
      }
      if (!sounds) {
        const Point cross = mark + Point{28.0f, 0.0f};
        canvas.line(cross + Point{-9.0f, -9.0f}, cross + Point{9.0f, 9.0f}, color, 5.0f);
        canvas.line(cross + Point{-9.0f, 9.0f}, cross + Point{9.0f, -9.0f}, color, 5.0f);
      }
      canvas.text({part.center().x, part.bottom - 6.0f}, word, Face::Cardinal, color, Align::Center,
                  canvas.size_within(part.width() + 12.0f, word, Face::Cardinal));
    };
  };
  const std::array options{ui::Option{"off", "", picture(say("Quiet"), false)},
                           ui::Option{"on", "", picture(say("Tone"), true)}};
  const bool on = shared_.settings.tone;
  const auto touched = ui::segmented(ui_, "tone", rect, options, on ? 1 : 0);
  if (touched && (*touched == 1) != on) ui_.emit(act::NextSetting{"tone"});
}

void FactsHalf::acts() {
  constexpr float kGap = 15.0f;
  const bool wind = found_.antenna_up, tone = pointing_.has_value();
  const float parts = 1.0f + (wind ? 1.0f : 0.0f) + (tone ? 2.0f : 0.0f);
  const float gaps = kGap * ((wind ? 1.0f : 0.0f) + (tone ? 1.0f : 0.0f));
  const float part = (area_.width() - gaps) / parts;
  float x = area_.left;
  const auto next = [&](float width) {
    const Rect rect{x, area_.bottom - kAct, x + width, area_.bottom};
    x += width + kGap;
    return rect;
  };
  if (tone) tone_choice(next(2.0f * part));
  if (wind && act("weather", next(part), say("Wind"), ui::ButtonLook::Plain)) {
    ui_.emit(act::Ask{Asking::Weather});
  }
  ui_.back_is("leave roof");
  if (act("leave roof", next(part), say("Back"), ui::ButtonLook::Filled)) {
    ui_.emit(act::LeaveRoof{});
  }
}

void FactsHalf::draw() {
  acts();
  Rect dial = area_;
  dial.bottom -= kAct + 16.0f;
  // An upright screen has the numbers beside the dial.
  if (ui_.portrait()) dial.left = area_.right = area_.center().x;
  const float top = pointing_ ? target_number() : from_nose();
  if (!ui_.portrait()) dial.top = top;
  draw_roof_dial(ui_, dial, shared_, pointing_);
}

}  // namespace

void draw_roof(Ui& ui, const Shared& shared, const AimState&) {
  const Rect screen = ui.screen();
  const std::optional<Aimed> pointing = aimed(shared);
  constexpr float kWide = 0.545f, kHigh = 0.54f;
  Rect answer = screen, facts = screen;
  if (ui.portrait()) {
    answer.bottom = facts.top = kHigh * screen.height();
  } else if (shared.settings.left_handed) {
    answer.left = facts.right = (1.0f - kWide) * screen.width();
  } else {
    answer.right = facts.left = kWide * screen.width();
  }
  AnswerHalf(ui, answer, shared, pointing).draw();
  if (!ui.portrait()) {
    const float edge = shared.settings.left_handed ? answer.left : answer.right;
    ui.canvas().line({edge, screen.top}, {edge, screen.bottom}, ui.theme().rule, 2.0f);
  }
  constexpr float kInset = 20.0f;
  FactsHalf(ui, facts.inset(kInset), shared, pointing).draw();
}

}  // namespace mastwise::screens
