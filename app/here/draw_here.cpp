#include "app/here/actions.hpp"
#include "app/here/draw.hpp"
#include "app/here/facts.hpp"
#include "app/here/here_rooms.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/onward.hpp"
#include "app/ui/rig_symbol.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/slip.hpp"
#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/places.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"
#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

// The half of Here that shows what is known: where, which way the nose points, the antenna.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Canvas;
using ui::Color;
using ui::Face;
using words::fill;
using words::say;

constexpr float kHereLine = 34.0f;
constexpr float kApartUnits = 15.5f;  // 2 mm between targets

constexpr float kNarrow = 92.0f;  // the least width of the drawings
constexpr float kSlip = 84.0f;    // of the coordinates

class Facts {
 public:
  Facts(Ui& ui, Rect area, const Shared& shared)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        shared_(shared),
        found_(shared.findings),
        area_(area) {}

  void draw();

 private:
  // The next block, with a rule above it.
  Rect next(float height, bool ruled);
  void text(Point at, const std::string& words, Face face, Color color, float right) const {
    ui::text_within(canvas_, at, right - at.x, words, face, color);
  }
  // The largest face of what matters in which the words fit.
  Face face_for(const std::string& words, float width) const {
    for (const Face face : {Face::Matter, Face::Cardinal, Face::Value}) {
      if (canvas_.text_width(words, face) <= width) return face;
    }
    return Face::TextBold;
  }
  Color alarm(const char* name) const { return ui::warning_on_row(theme_, ui_.pressed(name)); }
  Color quiet(const char* name) const { return ui::second_ink_on_row(theme_, ui_.pressed(name)); }
  float words_left(Rect row) const { return row.left + pictures_; }
  static float words_right(Rect row) { return row.right - ui::kChevron; }

  void place(Rect row);
  void position(Rect row);
  void coordinates(Rect row);
  void credit();
  void scatter(Point center, float radius) const;
  void nose(Rect row);
  void nose_picture(Rect row) const;
  float unknown_nose_height() const;
  void antenna(Rect row);
  void lobes(Point center, float radius) const;
  void settings(Rect row);
  void earlier(Rect row);
  void lost_pins(Rect row);

  Ui& ui_;
  Canvas& canvas_;
  const ui::Theme& theme_;
  const Shared& shared_;
  const Findings& found_;
  Rect area_;
  float y_ = 0.0f;
  float pictures_ = 152.0f;  // the width of the drawings
};

Rect Facts::next(float height, bool ruled) {
  const Rect row{area_.left, y_, area_.right, y_ + height};
  if (ruled) canvas_.line({row.left, row.top}, {row.right, row.top}, theme_.rule, 2.0f);
  y_ = row.bottom;
  return row;
}

// The near town, large.
void Facts::place(Rect row) {
  const places::NearPlace* near =
      found_.position ? near_place_of(shared_, *found_.position) : nullptr;
  std::string over = say("Position"), name = say("Unknown");
  if (near != nullptr) {
    over = words::near_what(*near, shared_.settings.miles);
    name = words::place(near->place);
  } else if (found_.position) {
    over = say("No town known near");
    name = octants_words(*found_.position);
  }
  constexpr float kAct = 140.0f;
  float right = row.right;
  // While the position is one by hand: the way back to the receiver's.
  if (shared_.stop.source == PositionSource::ByHand && shared_.receiver.fix(shared_.now).good()) {
    right -= kAct + 16.0f;
    if (ui_.button("use receiver", {row.right - kAct, row.top, row.right, row.top + 68.0f},
                   say("Use GPS"), ui::ButtonLook::Plain)) {
      ui_.emit(act::UseReceiver{});
    }
  }
  text({row.left, row.top + 26.0f}, over, Face::Text, theme_.second_ink, right);
  text({row.left, row.top + 72.0f + 0.6f * canvas_.em_grown(Face::Text)}, name,
       face_for(name, right - row.left), theme_.ink, right);
}

// Each dot a position of the receiver since the rig stands, around their mean; the dotted ring says
// how wide it is.
void Facts::scatter(Point center, float radius) const {
  canvas_.disc(center, radius, theme_.panel);
  canvas_.circle(center, radius, theme_.rule, 2.0f);
  const bool by_hand = shared_.stop.source == PositionSource::ByHand;
  const auto offsets = shared_.parked.scatter();
  if (by_hand || offsets.empty()) {
    // A nail on the map, or nothing.
    if (!found_.position) return;
    canvas_.line(center, {center.x, center.y + 0.42f * radius}, theme_.ink, 3.5f);
    canvas_.disc({center.x, center.y - 0.08f * radius}, 0.2f * radius, theme_.accent);
    return;
  }
  const double ring_m = scatter_ring_m(offsets, shared_.settings.miles);
  const float ring = 0.80f * radius;
  for (int degrees = 0; degrees < 360; degrees += 9) {
    canvas_.disc(ui::around(center, ring, degrees), 1.8f, theme_.accent);
  }
  const float scale = ring / static_cast<float>(ring_m);
  for (const auto& offset : offsets) {
    const Point off{static_cast<float>(offset.east_m) * scale,
                    -static_cast<float>(offset.north_m) * scale};
    if (touch::length(off) < radius - 4.0f) canvas_.disc(center + off, 2.6f, theme_.second_ink);
  }
  canvas_.disc(center, 7.0f, theme_.accent);
  const std::string size = words::height(ring_m, shared_.settings.miles);
  const float half = canvas_.text_width(size, Face::Text) / 2.0f + 6.0f;
  const float top = center.y + ring - 15.0f;
  canvas_.fill({center.x - half, top, center.x + half, top + 30.0f}, theme_.panel, 4.0f);
  canvas_.text({center.x, top + 24.0f}, size, Face::Text, theme_.second_ink, Align::Center);
}

void Facts::position(Rect row) {
  Rect known = row;
  known.bottom -= kSlip;
  known.bottom -= kApartUnits;
  if (ui::onward(ui_, "position", known, "facts")) ui_.emit(act::OpenSheet{Sheet::Position});
  const PositionFacts facts = position_facts(shared_);
  const float radius = std::min(0.45f * pictures_, (known.height() - 12.0f) / 2.0f);
  scatter({known.left + radius + 2.0f, known.center().y}, radius);
  const float left = words_left(known), right = words_right(known);
  const std::vector<std::string> warnings = clock_warnings(shared_);
  const std::vector<std::string>& lines = warnings.empty() ? facts.lines : warnings;
  const Color ink = facts.warns ? alarm("position") : theme_.ink;
  const Color line_ink = warnings.empty() ? quiet("position") : alarm("position");
  float y = known.top + (known.height() < 110.0f ? 32.0f : 42.0f);
  text({left, y}, facts.title, Face::Cardinal, ink, right);
  const float step = ui_.line(kHereLine - 3.0f, Face::Text), lowest = known.bottom - 2.0f;
  for (const std::string& line : lines) {
    const auto parts = ui_.wrapped(line, right - left, Face::Text);
    for (std::size_t i = 0; i < parts.size() && y + step <= lowest; ++i) {
      y += step;
      // The last row that has room takes the rest, in smaller letters or with an ellipsis.
      const bool rest = y + step > lowest && i + 1 < parts.size();
      const std::string_view words = rest ? std::string_view(line).substr(static_cast<std::size_t>(
                                                parts[i].data() - line.data()))
                                          : parts[i];
      text({left, y}, std::string(words), Face::Text, line_ink, right);
    }
  }
  coordinates({row.left, row.bottom - kSlip, row.right, row.bottom - kApartUnits});
}

// The position as a value to edit.
void Facts::coordinates(Rect row) {
  const std::string words = found_.position
                                ? format_position(*found_.position, shared_.settings.notation)
                                : std::string(say("Type position"));
  if (ui::slip(ui_, "type position", row, {}, words)) {
    ui_.emit(act::OpenKeypad{KeypadPurpose::Position});
  }
}

// The rig nose up, the straight that it drove in on, and both norths turned as they are.
void Facts::nose_picture(Rect row) const {
  const float scale = 0.58f * row.height() / ui::kRigLength;
  const Point center{row.left + 36.0f * scale + 4.0f, row.center().y - 6.0f};
  const float right = center.x + 36.0f * scale;
  using Origin = Nose::Origin;
  const auto& nose = shared_.stop.nose;
  if (found_.nose && nose &&
      (nose->origin == Origin::LastCourse || nose->origin == Origin::BackedIn)) {
    const float tail = center.y + 80.0f * scale + 5.0f;
    for (const float side : {-22.0f, 22.0f}) {
      for (float y = tail; y + 8.0f < row.bottom - 6.0f; y += 14.0f) {
        canvas_.line({center.x + side * scale, y}, {center.x + side * scale, y + 8.0f},
                     theme_.second_ink, 3.0f);
      }
    }
  }
  ui::draw_rig(canvas_, theme_, center, found_.nose ? std::optional(Turn()) : std::nullopt, scale);
  // In a narrow column the picture of the sides alone shows the norths.
  if (!found_.nose || pictures_ <= kNarrow) return;
  constexpr float kHalf = 10.0f, kTrue = 11.0f, kMagnetic = 29.0f;
  const Point rose{(right + words_left(row)) / 2.0f - 8.0f, center.y};
  const double north_deg = -found_.nose->nose().degrees();
  ui::kite(canvas_, ui::around(rose, kTrue, north_deg), kHalf, theme_.ink, true, north_deg);
  if (!found_.field) return;
  const double magnetic_deg = north_deg + found_.field->declination.east_deg();
  ui::kite(canvas_, ui::around(rose, kMagnetic, magnetic_deg), kHalf, theme_.ink, false,
           magnetic_deg);
}

void Facts::nose(Rect row) {
  if (ui::onward(ui_, "nose", row, "facts")) ui_.emit(act::OpenSheet{Sheet::Nose});
  nose_picture(row);
  const float left = words_left(row), right = words_right(row);
  const NoseFacts facts = nose_facts(shared_);
  if (!found_.nose) {
    text({left, row.top + 50.0f}, say("Nose unknown"), Face::Cardinal, theme_.ink, right);
    float y = row.top + 50.0f;
    for (const std::string_view part : ui_.wrapped(facts.origin, right - left, Face::Text)) {
      y += ui_.line(kHereLine - 2.0f, Face::Text);
      canvas_.text({left, y}, part, Face::Text, facts.warns ? alarm("nose") : quiet("nose"));
    }
    return;
  }
  constexpr float kMark = 14.0f, kAfter = 38.0f;
  float y = row.top + 50.0f;
  ui::kite(canvas_, {left + kMark, y - 15.0f}, kMark, theme_.ink, true);
  text({left + kAfter, y}, facts.true_words, face_for(facts.true_words, right - left - kAfter),
       theme_.ink, right);
  if (!facts.magnetic_words.empty()) {
    y += 43.0f + canvas_.em_grown(Face::Value);
    ui::kite(canvas_, {left + kMark, y - 10.0f}, kMark - 1.0f, theme_.ink, false);
    const bool fits =
        canvas_.text_width(facts.magnetic_words, Face::Value) <= right - left - kAfter;
    text({left + kAfter, y}, facts.magnetic_words, fits ? Face::Value : Face::TextBold, theme_.ink,
         right);
  }
  text({left, y + 37.0f + canvas_.em_grown(Face::Text)}, facts.origin, Face::Text,
       facts.warns ? alarm("nose") : quiet("nose"), right);
}

float Facts::unknown_nose_height() const {
  const std::string origin = nose_facts(shared_).origin;
  const float room = words_right(area_) - words_left(area_);
  const auto lines = static_cast<float>(ui_.wrapped(origin, room, Face::Text).size());
  return 50.0f + ui_.line(kHereLine - 2.0f, Face::Text) * lines + 14.0f;
}

// The antenna's pattern in UHF from above, its axis to the right.
void Facts::lobes(Point center, float radius) const {
  const auto pattern = gear_of(shared_.settings.gear).antenna.uhf.pattern;
  std::vector<Point> lobe;
  for (int degrees = 0; degrees < 360; degrees += 4) {
    const double field = std::pow(10.0, pattern.relative_db(Turn::clockwise_deg(degrees)) / 20.0);
    lobe.push_back(ui::around(center, radius * static_cast<float>(field), degrees + 90.0));
  }
  canvas_.fan(center, lobe, theme_.lobe);
  canvas_.polyline(lobe, theme_.accent, 2.5f, true);
  canvas_.fill(
      {center.x - 5.0f, center.y - 0.46f * radius, center.x + 5.0f, center.y + 0.46f * radius},
      theme_.ink, 3.0f);
}

void Facts::antenna(Rect row) {
  if (ui::onward(ui_, "gear", row, "facts")) ui_.emit(act::OpenSheet{Sheet::Gear});
  const float reach = std::min({58.0f, 0.42f * row.height(), 0.46f * pictures_});
  lobes({row.left + reach + 2.0f, row.center().y}, reach);
  const float left = words_left(row), right = words_right(row);
  const bool low = row.height() - 3.0f * canvas_.em_grown(Face::Text) < 120.0f;
  const float line = ui_.line(low ? 31.0f : kHereLine - 1.0f, Face::Text);
  float y = row.top + (low ? 33.0f : 40.0f);
  text({left, y}, found_.antenna_up ? say("Antenna up") : say("Antenna down"), Face::Value,
       found_.antenna_up ? alarm("gear") : theme_.ink, right);
  const std::string name = say(std::string_view(gear_of(shared_.settings.gear).name));
  auto lines = ui_.wrapped(name, right - left, Face::Text);
  // On a low screen the name has one line, else two at most.
  if (low) lines = {name};
  if (lines.size() > 2) {
    lines = {lines.front(), std::string_view(name).substr(lines.front().size() + 1)};
  }
  for (const std::string_view words : lines) {
    y += line;
    text({left, y}, std::string(words), Face::Text, quiet("gear"), right);
  }
  text({left, y + line}, around_words(shared_), Face::Text, quiet("gear"), right);
}

void Facts::settings(Rect row) {
  if (ui::onward(ui_, "settings", row, "facts")) ui_.emit(act::OpenSheet{Sheet::Settings});
  canvas_.text({row.left, row.center().y + 10.0f}, say("Settings"), Face::Value, theme_.ink);
}

// What the license of the place names asks for, or why there are none.
void Facts::credit() {
  const bool none = shared_.places && !shared_.places->trouble.empty();
  const std::string words = none ? std::string(say("No place names: ")) + shared_.places->trouble
                                 : std::string(words::places_source());
  const float below = ui_.paragraph({area_.left, y_ + 20.0f}, area_.width(), 23.0f, words,
                                    Face::Fine, theme_.second_ink);
  y_ = below - 16.0f;
}

// The stop of the last run, where the rig no longer is.
void Facts::earlier(Rect row) {
  const double away_m =
      found_.position ? path_between(shared_.earlier->at, *found_.position).distance_m : 0.0;
  constexpr float kAct = 176.0f;
  const std::string words = words::earlier_stop(found_.earlier_day, away_m, shared_.settings.miles);
  ui_.paragraph({row.left, row.top + 34.0f}, row.width() - kAct - 16.0f, 30.0f, words, Face::Text,
                theme_.ink);
  if (ui_.button("use earlier", {row.right - kAct, row.top + 10.0f, row.right, row.top + 82.0f},
                 say("Use it here"), ui::ButtonLook::Plain)) {
    ui_.emit(act::UseEarlierStop{});
  }
}

// Pinned stations that are gone from the tables; Stations says what to do.
void Facts::lost_pins(Rect row) {
  if (ui::onward(ui_, "lost pins", row, "facts")) ui_.emit(act::Show{Place::Stations});
  std::vector<std::string> names;
  for (const LostPin& lost : shared_.stations->lost_pins) {
    if (is_pinned(shared_.stop, lost.pin.key)) names.push_back(lost.pin.call_sign);
  }
  const std::string words = fill(say("Pinned but gone: {stations}"),
                                 {{"stations", fmt::format("{}", fmt::join(names, ", "))}});
  text({row.left, row.center().y + 9.0f}, words, Face::TextBold, alarm("lost pins"),
       words_right(row));
}

void Facts::draw() {
  constexpr float kEarlier = 94.0f, kLost = 70.0f, kCredit = 48.0f;
  const bool has_earlier = shared_.earlier && shared_.earlier->elsewhere;
  const bool has_lost = shared_.stations && any_lost_pin(shared_.stop, *shared_.stations);
  const bool beside = ui_.portrait() && area_.width() >= 700.0f;
  const auto whole = [&](const HereRooms& rooms) {
    const float left = rooms.place + rooms.position + rooms.settings;
    const float right = rooms.nose + rooms.antenna;
    return beside ? std::max(left, right + kCredit) : left + right;
  };
  const float room = area_.height() - (has_earlier ? kEarlier : 0.0f) - (has_lost ? kLost : 0.0f);
  const float by = canvas_.em_grown(Face::Text);
  const HereRooms wide = grown_rooms(kHereWide, by);
  HereRooms rooms = room >= whole(wide) ? wide : grown_rooms(beside ? kHereBeside : kHereTight, by);
  const float top = ui_.begin_page("here", area_);
  const Rect whole_area = area_;
  if (beside) area_.right = area_.center().x - 16.0f;
  if (area_.width() < 400.0f) pictures_ = area_.width() < 370.0f ? kNarrow : 126.0f;
  if (!found_.nose) rooms.nose = std::max(rooms.nose, unknown_nose_height());
  y_ = top;
  if (has_earlier) earlier(next(kEarlier, false));
  if (has_lost) lost_pins(next(kLost, has_earlier));
  place(next(rooms.place, has_earlier || has_lost));
  position(next(rooms.position, false));
  if (beside) settings(next(rooms.settings, true));
  const float first = y_;
  if (beside) {
    y_ = top;
    area_ = {whole_area.center().x + 16.0f, whole_area.top, whole_area.right, whole_area.bottom};
  }
  nose(next(rooms.nose, !beside));
  antenna(next(rooms.antenna, true));
  if (!beside) settings(next(rooms.settings, true));
  credit();
  ui_.end_page("here", top, std::max(first, y_));
}

}  // namespace

void draw_here(Ui& ui, Rect area, const Shared& shared) {
  Facts(ui, area, shared).draw();
}

}  // namespace mastwise::screens
