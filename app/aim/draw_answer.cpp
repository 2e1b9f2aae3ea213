#include "app/aim/draw_answer.hpp"

#include "app/aim/draw_doubts.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/onward.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/standing_choice.hpp"
#include "app/words/chances.hpp"
#include "app/words/headings.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/reasons.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Color;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;
using words::fill;
using words::say;

// Draws the answer from the top down; keeps the next free baseline.
class Answer {
 public:
  Answer(Ui& ui, Rect area, const Shared& shared, const AimState& aim)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        area_(area),
        shared_(shared),
        found_(shared.findings),
        aim_(aim),
        miles_(shared.settings.miles),
        y_(area.top) {}

  void draw();

 private:
  void title(const AimCard& card);
  void number(const AimCard& card);
  void said(const Saying* way, const AimCard& card);
  void no_compass();
  std::string where_read() const;
  void aside();
  void live_turn();
  void draw_mistake(float arm, bool right);
  void mistake(const NorthMistake& mistake, const AimCard& card);
  std::vector<std::string> reason(const reception::Reason& why, std::size_t most) const;
  void draw_reason(const std::vector<std::string>& lines, float baseline, ui::Color color);
  void chance();
  void doubts();
  void rule() { canvas_.line({area_.left, y_}, {area_.right, y_}, theme_.rule, 2.0f); }
  std::string fitted(const std::string& words, Face face, float width) const {
    return ui::shortened(canvas_, words, face, width);
  }

  Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_;
  const Shared& shared_;
  const Findings& found_;
  const AimState& aim_;
  bool miles_;
  float y_;
};

void Answer::title(const AimCard& card) {
  const Station& station = *shared_.stop.target;
  const std::string far = words::distance(card.distance_m, miles_);
  const float room = area_.width() - canvas_.text_width(far, Face::Text) - 16.0f;
  ui::text_within(canvas_, {area_.left, y_ + 32.0f}, room, words::title(station), Face::Cardinal,
                  theme_.ink);
  canvas_.text({area_.right, y_ + 32.0f}, far, Face::Text, theme_.ink, Align::Right);
  const std::string what = words::carries(station) + ", RF " + to_text(station.rf_channel);
  ui::text_within(canvas_, {area_.left, y_ + 66.0f}, area_.width(), what, Face::Text,
                  theme_.second_ink);
  y_ += 78.0f;
}

// The number in the chosen way's words; a touch shows all ways.
void Answer::number(const AimCard& card) {
  const Rect touched{area_.left, y_ + 12.0f, area_.right, y_ + 138.0f};
  if (ui_.touchable("ways", touched)) ui_.emit(act::OpenSheet{Sheet::Ways});
  if (ui_.pressed("ways")) canvas_.fill(touched, theme_.lobe, 10.0f);
  said(chosen_saying(shared_, aim_), card);
  y_ += 152.0f;
}

// Where the compass is read. Until somebody says so, the error is the usual one.
std::string Answer::where_read() const {
  const auto& standing = shared_.stop.standing;
  return standing ? ui::standing_words(*standing, miles_) : say("Stand where?");
}

// Beside so much steel a needle gives no answer: where it does, and the best other way.
void Answer::no_compass() {
  ui::text_within(canvas_, {area_.left, y_ + 30.0f}, area_.width(),
                  shared_.stop.standing == Standing::on_roof ? say("No compass on the roof")
                                                             : say("No compass by the rig"),
                  Face::TextBold, theme_.warning);
  const Saying* best = best_way(aim_.ways, true);
  // Up to five lines in the height of the number: these letters do not grow.
  const float share = canvas_.usual_share(Face::Text);
  const auto line = [&](float y, std::string_view words, Face face, float x,
                        Align align = Align::Left) {
    canvas_.text({x, y}, words, face, theme_.ink, align, share);
  };
  const float below =
      ui_.paragraph({area_.left, y_ + 66.0f}, area_.width(), 31.0f,
                    fill(say("Walk {distance} off with it."),
                         {{"distance", words::height(from_rig_m(Standing::well_clear), miles_)}}),
                    Face::TextBold, theme_.ink, Align::Left, share);
  if (best == nullptr) return;
  // Its name, in two lines at most.
  const float room = (area_.width() - 76.0f) / share;
  const std::string title = words::way_title(best->kind);
  const std::size_t first = ui_.wrapped(title, room, Face::Text).front().size();
  line(below + 6.0f, title.substr(0, first), Face::Text, area_.left);
  if (first < title.size()) {
    line(below + 36.0f, fitted(title.substr(first + 1), Face::Text, room), Face::Text, area_.left);
  }
  line(below + 6.0f,
       fill(say("± {degrees}°"),
            {{"degrees", std::to_string(std::lround(std::ceil(best->sigma_deg)))}}),
       Face::TextBold, area_.right, Align::Right);
}

void Answer::said(const Saying* way, const AimCard& card) {
  const std::string error =
      fill(say("± {degrees}°"),
           {{"degrees", std::to_string(std::lround(std::ceil(found_.heading_error_deg)))}});
  const float label = y_ + 30.0f, figure = y_ + 135.0f;
  const auto line = [&](const std::string& north, bool mark, bool filled, const std::string& of) {
    float x = area_.left;
    if (mark) {
      ui::kite(canvas_, {x + 12.0f, label - 9.0f}, 15.0f, theme_.ink, filled);
      x += 36.0f;
    }
    const std::string words = north + " " + error;
    const float share =
        ui::share_of_both(canvas_, area_.right - x, {words, Face::TextBold}, {of, Face::Text});
    canvas_.text({x, label}, words, Face::TextBold, theme_.ink, Align::Left, share);
    x += share * canvas_.text_width(words, Face::TextBold) + 14.0f;
    ui::text_within(canvas_, {area_.right, label}, area_.right - x, of, Face::Text,
                    theme_.second_ink, Align::Right);
  };
  const auto big = [&](const std::string& number) {
    canvas_.text({area_.left, figure}, number, Face::Answer, theme_.ink);
    return area_.left + canvas_.text_width(number, Face::Answer) + 20.0f;
  };
  const bool by_compass = way == nullptr || std::holds_alternative<Bearing<Magnetic>>(way->said_as);
  const auto& standing = shared_.stop.standing;
  if (by_compass && standing && refuses_compass(*standing)) {
    no_compass();
  } else if (by_compass) {
    line(found_.corrected ? say("corrected") : say("magnetic"), true, false, where_read());
    big(words::whole_degrees(card.bearing_magnetic));
  } else if (const auto* set = std::get_if<OnSetCompass>(&way->said_as)) {
    const std::string setting = words::set_declination(set->declination);
    line(
        say("set compass"), true, true,
        aim_.ring_turn ? fill(say("turn its ring to {setting}"), {{"setting", setting}}) : setting);
    big(words::whole_degrees(set->reads));
  } else if (const auto* rig = std::get_if<RigAngle>(&way->said_as)) {
    line(say("from the nose"), false, false, "");
    const double turn_deg = Turn::clockwise_deg(rig->clockwise_deg()).clockwise_deg();
    const float beside = big(words::whole_degrees(std::fabs(turn_deg)));
    canvas_.text({beside, figure - 44.0f}, turn_deg < 0.0 ? say("left") : say("right"),
                 Face::Cardinal, theme_.ink);
    const std::string hour = words::sentence(words::rig_sides(*rig));
    ui::text_within(canvas_, {beside, figure - 8.0f}, area_.right - beside,
                    hour.substr(0, hour.find(',')), Face::Text, theme_.ink);
  } else {
    line("", false, false, "");
    ui_.paragraph({area_.left, label + 34.0f}, area_.width(), 31.0f,
                  words::sentence(words::brief_heading(way->said_as, miles_, *found_.zone.clocks)),
                  Face::TextBold, theme_.ink);
  }
}

// Beside the number: the turn while a sensor speaks, else the classic mistake as a picture.
void Answer::aside() {
  rule();
  if (found_.turn && found_.facing && found_.field) {
    live_turn();
  } else if (aim_.mistake && std::lround(aim_.mistake->off.size_deg()) != 0) {
    mistake(*aim_.mistake, *found_.card);
  } else {
    ui::kite(canvas_, {area_.left + 12.0f, y_ + 38.0f}, 15.0f, theme_.ink, true);
    canvas_.text({area_.left + 36.0f, y_ + 47.0f},
                 words::whole_degrees(found_.card->bearing_true) + " " + say("true"),
                 Face::TextBold, theme_.ink);
  }
  y_ += 88.0f;
}

void Answer::live_turn() {
  const std::string size = words::whole_degrees(found_.turn->size_deg());
  canvas_.text({area_.left, y_ + 68.0f}, size, Face::Big, theme_.ink);
  const float beside = area_.left + std::max(150.0f, canvas_.text_width(size, Face::Big) + 16.0f);
  const std::string turn = words::turn(*found_.turn);
  if (canvas_.usual_share(Face::TextBold) * canvas_.text_width(turn, Face::TextBold) >
      area_.right - beside) {
    ui_.paragraph({beside, y_ + 40.0f}, area_.right - beside, 30.0f, turn, Face::TextBold,
                  theme_.ink);
    return;
  }
  ui::text_within(canvas_, {beside, y_ + 40.0f}, area_.right - beside, turn, Face::TextBold,
                  theme_.ink);
  const auto facing = to_magnetic(*found_.facing, found_.field->declination);
  const float room = area_.right - beside;
  const std::string degrees = words::whole_degrees(facing);
  const std::string whole = fill(say("now {degrees} magnetic"), {{"degrees", degrees}});
  const std::string words = canvas_.text_width(whole, Face::Text) <= room
                                ? whole
                                : fill(say("now {degrees}"), {{"degrees", degrees}});
  ui::text_within(canvas_, {beside, y_ + 72.0f}, room, words, Face::Text, theme_.second_ink);
}

// The heading as an arrow of that length, and dashed where the map's number leads on a compass.
void Answer::draw_mistake(float arm, bool right) {
  const Point pivot{area_.left + 8.0f, y_ + 48.0f};
  const float rise = right ? -14.0f : 14.0f;
  const Point heading{pivot.x + arm, pivot.y + rise}, wrong{pivot.x + arm - 6.0f, pivot.y - rise};
  canvas_.disc(pivot, 6.0f, theme_.ink);
  canvas_.line(pivot, heading, theme_.ink, 4.0f);
  const std::array head{Point{heading.x + 12.0f, heading.y + 0.1f * rise},
                        Point{heading.x - 5.0f, heading.y - 8.0f},
                        Point{heading.x - 5.0f, heading.y + 8.0f}};
  canvas_.polygon(head, theme_.ink);
  for (float from = 0.08f; from < 1.0f; from += 0.16f) {
    const float to = std::min(1.0f, from + 0.09f);
    canvas_.line({pivot.x + from * (wrong.x - pivot.x), pivot.y + from * (wrong.y - pivot.y)},
                 {pivot.x + to * (wrong.x - pivot.x), pivot.y + to * (wrong.y - pivot.y)},
                 theme_.warning, 3.5f);
  }
}

// The heading, and where the map's number leads on a plain compass. Where the column is narrow the
// picture makes room for the words, or goes.
void Answer::mistake(const NorthMistake& mistake, const AimCard& card) {
  constexpr float kArm = 124.0f, kShortArm = 74.0f, kBeside = 28.0f;
  const bool right = mistake.off.clockwise_deg() > 0.0;
  const std::string number = words::plain_degrees(mistake.heading.degrees());
  const auto degrees = std::to_string(std::lround(mistake.off.size_deg()));
  const auto width_of = [&](const std::string& words) {
    return canvas_.text_width(words, Face::Text);
  };
  std::string effect = fill(right ? say("{number} on a compass: {degrees}° right")
                                  : say("{number} on a compass: {degrees}° left"),
                            {{"number", number}, {"degrees", degrees}});
  const float room = area_.width() - 8.0f - kBeside;
  if (width_of(effect) > room - kArm) {
    effect =
        fill(right ? say("{number} aims {degrees}° right") : say("{number} aims {degrees}° left"),
             {{"number", number}, {"degrees", degrees}});
  }
  const float arm = width_of(effect) > room - kArm ? kShortArm : kArm;
  const bool drawn = width_of(effect) <= room - arm;
  if (drawn) draw_mistake(arm, right);
  const float text = drawn ? area_.left + 8.0f + arm + kBeside : area_.left;
  ui::kite(canvas_, {text + 11.0f, y_ + 25.0f}, 13.0f, theme_.ink, true);
  canvas_.text({text + 32.0f, y_ + 34.0f},
               words::whole_degrees(card.bearing_true) + " " + say("true"), Face::TextBold,
               theme_.ink);
  ui::text_within(canvas_, {text, y_ + 68.0f}, area_.right - text, effect, Face::Text,
                  theme_.warning);
}

constexpr float kReasonLine = 30.0f, kMoreReasons = 32.0f;

// A reason in as many lines at most, else shortened on one, where its cost stays.
std::vector<std::string> Answer::reason(const reception::Reason& why, std::size_t most) const {
  const words::Brief brief = words::brief(why, miles_);
  const std::string cost = brief.cost.empty() ? "" : " " + brief.cost;
  const std::string whole = brief.what + cost;
  // Large letters shrink before words are cut.
  const float widest = area_.width() / canvas_.usual_share(Face::Text);
  for (const float width : {area_.width(), widest}) {
    const auto lines = ui_.wrapped(whole, width, Face::Text);
    if (lines.size() <= most) return {lines.begin(), lines.end()};
  }
  const float room = widest - canvas_.text_width(cost, Face::Text);
  return {fitted(brief.what, Face::Text, room) + cost};
}

void Answer::draw_reason(const std::vector<std::string>& lines, float baseline, ui::Color color) {
  float share = 1.0f;  // the same for all
  for (const std::string& line : lines) {
    share = std::min(share, canvas_.size_within(area_.width(), line, Face::Text));
  }
  for (const std::string& line : lines) {
    canvas_.text({area_.left, baseline}, line, Face::Text, color, Align::Left, share);
    baseline += ui_.line(kReasonLine, Face::Text);
  }
}

// The chance and the dearest reason; a touch shows the path.
void Answer::chance() {
  if (!found_.outlook) return;
  const reception::Outlook& outlook = *found_.outlook;
  rule();
  const bool counted = outlook.chance_percent.has_value();
  const std::size_t most = y_ + 126.0f + kReasonLine <= area_.bottom ? 2 : 1;
  const auto first =
      found_.reasons.empty() ? std::vector<std::string>() : reason(found_.reasons.front(), most);
  const float further = first.size() > 1 ? ui_.line(kReasonLine, Face::Text) : 0.0f;
  const Rect row{area_.left, y_ + 2.0f, area_.right, y_ + 118.0f + further};
  if (ui::onward(ui_, "why", row)) ui_.emit(act::OpenSheet{Sheet::Path});
  const bool lit = ui_.pressed("why");
  const float end = area_.right - ui::kChevron;
  const std::string number = words::chance_number(outlook);
  float x = area_.left;
  canvas_.text({x, y_ + 52.0f}, number, Face::Second, theme_.ink);
  if (!number.empty()) x += canvas_.text_width(number, Face::Second) + 16.0f;
  const std::string word = words::chance_word(outlook);
  const float least = canvas_.usual_share(Face::Value) * canvas_.text_width(word, Face::Value);
  ui::text_within(canvas_, {x, y_ + 52.0f}, end - x, word,
                  least <= end - x ? Face::Value : Face::Text, theme_.ink);
  if (counted) {
    ui::draw_chance_mark(ui_, {area_.left, y_ + 64.0f, end, y_ + 84.0f},
                         reception::chance_word(*outlook.chance_percent));
  }
  draw_reason(first, y_ + (counted ? 112.0f : 86.0f), second_ink_on_row(theme_, lit));
  y_ += 126.0f + further;
  // Further reasons where there is room and nothing to warn of.
  if (!heading_doubts(shared_, aim_).empty()) return;
  for (std::size_t i = 1; i < found_.reasons.size() && y_ + 22.0f < area_.bottom; ++i) {
    const auto lines = reason(found_.reasons[i], y_ + 22.0f + kReasonLine < area_.bottom ? 2 : 1);
    draw_reason(lines, y_ + 18.0f, theme_.second_ink);
    y_ += kMoreReasons + ui_.line(kReasonLine, Face::Text) * static_cast<float>(lines.size() - 1);
  }
}

// As many as there is room for; the first always.
void Answer::doubts() {
  constexpr float kLine = 29.0f;
  for (const std::string& words : heading_doubts(shared_, aim_)) {
    const std::size_t lines = ui_.wrapped(words, area_.width(), Face::TextBold).size();
    if (y_ + ui_.line(kLine, Face::TextBold) * static_cast<float>(lines) > area_.bottom + 8.0f)
      return;
    y_ = ui_.paragraph({area_.left, y_ + 26.0f}, area_.width(), kLine, words, Face::TextBold,
                       theme_.warning) -
         22.0f;
  }
}

void Answer::draw() {
  const AimCard& card = *found_.card;
  const Rect whole = area_;
  // An upright screen has width for two columns, but not the height for one. The first has the row
  // of ways, whose parts must be wide enough to touch.
  constexpr float kWays = 340.0f, kBetween = 32.0f;
  const float first_width = std::max(kWays, 0.5f * whole.width() - ui::kMargin);
  if (ui_.portrait()) area_.right = whole.left + first_width;
  title(card);
  draw_way_row(ui_, {area_.left, y_, area_.right, y_ + 72.0f}, shared_);
  y_ += 76.0f;
  number(card);
  if (ui_.portrait()) {
    area_ = {area_.right + kBetween, whole.top, whole.right, whole.bottom};
    y_ = area_.top;
  }
  // Doubts of the heading come before its pictures where both do not fit.
  constexpr float kAside = 88.0f, kChance = 126.0f, kDoubt = 62.0f;
  const bool doubted = !heading_doubts(shared_, aim_).empty();
  if (!doubted || found_.turn || y_ + kAside + kChance + kDoubt <= area_.bottom) aside();
  chance();
  doubts();
}

}  // namespace

void draw_answer(Ui& ui, Rect area, const Shared& shared, const AimState& aim) {
  if (shared.findings.card) {
    Answer(ui, area, shared, aim).draw();
  } else {
    draw_no_heading(ui, area, shared);
  }
}

}  // namespace mastwise::screens
