#include "app/parking/actions.hpp"
#include "app/parking/draw.hpp"
#include "app/parking/draw_ring.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/side_marks.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include <fmt/format.h>

// The half of Here that answers which way to park: what stands around, painted by thumb, against
// what the wanted stations need.
namespace mastwise::screens {
namespace {

using reception::SideKind;
using ui::Align;
using ui::Canvas;
using ui::Color;
using ui::Face;
using ui::Option;
using words::fill;
using words::say;

constexpr float kParkAct = 80.0f, kParkGap = 16.0f, kPalette = 108.0f;

// What the screen says, largest first.
struct ParkAnswer {
  std::string over = {};   // the question
  std::string title = {};  // its answer
  std::string under = {};  // the reason, or what to do
  bool warns = false;      // the reason is a warning
};

std::string count_text(std::size_t count) {
  return std::to_string(count);
}

const char* kind_word(SideKind kind) {
  switch (kind) {
    case SideKind::unmarked:
      break;
    case SideKind::open:
      return say("Open");
    case SideKind::trees:
      return say("Trees");
    case SideKind::rig:
      return say("Rig");
    case SideKind::hill:
      return say("Hill");
  }
  return "";
}

// The names of what is blocked, as many as can be told.
std::string blocked_names(const std::vector<WantedSight>& wanted) {
  std::vector<std::string> names;
  for (const WantedSight& station : wanted) {
    if (station.sight != Sight::blocked) continue;
    if (station.networks.empty()) names.push_back(station.title);
    names.insert(names.end(), station.networks.begin(), station.networks.end());
  }
  if (names.empty()) return {};
  if (names.size() == 1) return names.front();
  return fill(say("{name} and {number} more"),
              {{"name", names.front()}, {"number", count_text(names.size() - 1)}});
}

// What blocks the first blocked one: an obstacle painted, or a neighbor expected.
std::string blocked_words(const Shared& shared, const std::vector<WantedSight>& wanted) {
  const auto blocked = std::find_if(wanted.begin(), wanted.end(), [](const WantedSight& one) {
    return one.sight == Sight::blocked;
  });
  if (blocked == wanted.end()) return {};
  const std::string names = blocked_names(wanted);
  const auto& ring = shared.findings.ring;
  const auto weaken = [&](const char* phrase) { return fill(say(phrase), {{"names", names}}); };
  switch (ring.sides[ring.side_toward(blocked->bearing)].kind) {
    case SideKind::unmarked:
      return weaken("A neighbor there would weaken {names}");
    case SideKind::open:
      break;
    case SideKind::trees:
      return weaken("Trees you painted weaken {names}");
    case SideKind::rig:
      return weaken("The rig you painted weakens {names}");
    case SideKind::hill:
      return weaken("The hill you painted weakens {names}");
  }
  return weaken("What stands beside weakens {names}");
}

std::string of_all(const char* phrase, std::size_t count, std::size_t all) {
  return fill(say(phrase), {{"number", count_text(count)}, {"all", count_text(all)}});
}

ParkAnswer without_stations(const Shared& shared) {
  if (!shared.findings.position) {
    return {.over = say("Which way to park"),
            .title = say("Where are you?"),
            .under = say("Set the position first.")};
  }
  if (!shared.stations || shared.stations->measured < shared.stations->all) {
    return {.over = say("Which way to park"), .title = say("Looking for stations")};
  }
  if (!shared.stations->trouble.empty()) {
    return {.over = say("Which way to park"),
            .title = say("Not known"),
            .under = words::sentence(shared.stations->trouble),
            .warns = true};
  }
  if (shared.stations->rows.empty()) {
    return {.over = say("Which way to park"),
            .title = say("No stations here"),
            .under = say("Import stations, or look farther away.")};
  }
  return {.over = say("Which way to park"),
          .title = say("No sure network"),
          .under = say("Pin what you want under Stations.")};
}

ParkAnswer answer_of(const Shared& shared, const ParkingState& parking) {
  const ParkVerdict& verdict = parking.verdict;
  if (verdict.wanted == 0) return without_stations(shared);
  ParkAnswer answer{.over = verdict.wanted == 1
                                ? std::string(say("Which way to park for 1 network"))
                                : fill(say("Which way to park for {number} networks"),
                                       {{"number", count_text(verdict.wanted)}})};
  const bool painted = !shared.findings.ring.blank();
  if (!painted && verdict.blocked() == 0) {
    answer.title = say("Paint what you see");
    answer.under = say("Networks come in through the colored side.");
    return answer;
  }
  if (verdict.better) {
    const std::string nose = words::whole_degrees(verdict.better->nose());
    answer.title = fill(say("Nose to {nose} true"), {{"nose", nose}});
    answer.under = of_all("As parked, {number} of {all} have something in the way.",
                          verdict.blocked(), verdict.wanted);
    return answer;
  }
  const bool settled = verdict.unseen == 0 && shared.findings.nose.has_value();
  answer.title = of_all(settled ? "Stay: {number} of {all} clear" : "{number} of {all} clear",
                        verdict.clear, verdict.wanted);
  if (verdict.blocked() > 0) {
    answer.under = blocked_words(shared, parking.wanted);
    answer.warns = true;
  } else if (verdict.unseen > 0) {
    answer.under = say("Paint the dotted side that the color crosses.");
  }
  return answer;
}

// The largest face in which the title fits; the largest ones have no accents, but degrees.
Face title_face(const Canvas& canvas, const std::string& title, float width) {
  std::string letters = title;
  if (const std::size_t degree = letters.find("°"); degree != std::string::npos) {
    letters.erase(degree, std::string_view("°").size());
  }
  const bool plain = std::all_of(letters.begin(), letters.end(),
                                 [](char c) { return static_cast<unsigned char>(c) < 0x80; });
  for (const Face face : {Face::Big, Face::Second}) {
    if (plain && canvas.text_width(title, face) <= width) return face;
  }
  return canvas.text_width(title, Face::Matter) <= width ? Face::Matter : Face::Cardinal;
}

constexpr float kParkHead = 136.0f;  // of the answer

void draw_park_answer(Ui& ui, Rect area, const ParkAnswer& answer) {
  const ui::Theme& theme = ui.theme();
  Canvas& canvas = ui.canvas();
  ui::text_within(canvas, {area.left, area.top + 26.0f}, area.width(), answer.over, Face::Text,
                  theme.second_ink);
  const Face face = title_face(canvas, answer.title, area.width());
  ui::text_within(canvas, {area.left, area.top + (face == Face::Big ? 88.0f : 80.0f)}, area.width(),
                  answer.title, face, theme.ink);
  ui::text_within(canvas, {area.left, area.top + 126.0f}, area.width(), answer.under, Face::Text,
                  answer.warns ? theme.warning : theme.second_ink);
}

constexpr std::array kPaints{SideKind::open, SideKind::trees, SideKind::hill, SideKind::rig};

void draw_palette(Ui& ui, Rect room, const ParkingState& parking) {
  constexpr float kLabel = 34.0f, kMost = 98.0f;
  const float height = std::min(room.height() - kLabel, 4.0f * kMost);
  const float top = room.center().y - (height + kLabel) / 2.0f + kLabel;
  ui.canvas().text({room.center().x, top - 12.0f}, say("Paint"), Face::Text, ui.theme().second_ink,
                   Align::Center);
  std::vector<Option> options;
  for (const SideKind kind : kPaints) {
    const bool chosen = kind == parking.brush.kind;
    const Color ground = chosen ? ui.theme().ink : ui.theme().panel;
    options.push_back({std::string(to_text(kind)), kind_word(kind),
                       [kind, ground](Canvas& canvas, Rect picture, Color color) {
                         ui::draw_side_picture(canvas, picture, kind, color, ground);
                       }});
  }
  const auto chosen = static_cast<std::size_t>(
      std::find(kPaints.begin(), kPaints.end(), parking.brush.kind) - kPaints.begin());
  const auto touched =
      ui::segmented(ui, "paint", {room.left, top, room.right, top + height}, options, chosen);
  if (touched) ui.emit(act::ChooseBrush{kPaints[*touched]});
}

// How far and how high what is painted is; for open ground a word on how to paint.
void draw_shape(Ui& ui, Rect room, const ParkingState& parking) {
  const Brush& brush = parking.brush;
  if (!brush.side().blocks() || parking.stroke.empty()) {
    const std::string how =
        fill(say("Wipe a side to paint {what}."), {{"what", say(to_text(brush.kind))}});
    const float share = ui.share_within(room, how, Face::Text, 0.0f);
    const float below = ui.paragraph({room.left, room.top + 30.0f}, room.width(), 32.0f, how,
                                     Face::Text, ui.theme().second_ink, Align::Left, share);
    if (below < room.bottom + 8.0f) {
      ui.canvas().text({room.left, below}, say("Dotted: not painted yet."), Face::Text,
                       ui.theme().second_ink);
    }
    return;
  }
  const float width = (room.width() - kParkGap) / 2.0f;
  const std::array reach{Option{"near", say("Near")}, Option{"far", say("Far")}};
  const std::array height{Option{"low", say("Low")}, Option{"high", say("High")}};
  const auto far = ui::segmented(ui, "reach", {room.left, room.top, room.left + width, room.bottom},
                                 reach, brush.far ? 1 : 0);
  const auto high =
      ui::segmented(ui, "height", {room.right - width, room.top, room.right, room.bottom}, height,
                    brush.high ? 1 : 0);
  if (far) ui.emit(act::ShapeBrush{*far == 1, brush.high});
  if (high) ui.emit(act::ShapeBrush{brush.far, *high == 1});
}

// The last row: what the paint is like, and the way on under the thumb.
void draw_park_foot(Ui& ui, Rect row, const Shared& shared, const ParkingState& parking) {
  const float act = row.width() > 600.0f ? 300.0f : 228.0f;
  const bool left_handed = shared.settings.left_handed;
  const Rect button = left_handed ? Rect{row.left, row.top, row.left + act, row.bottom}
                                  : Rect{row.right - act, row.top, row.right, row.bottom};
  const Rect shape = left_handed ? Rect{button.right + kParkGap, row.top, row.right, row.bottom}
                                 : Rect{row.left, row.top, button.left - kParkGap, row.bottom};
  draw_shape(ui, shape, parking);
  if (ui.button("see stations", button, say("See stations"), ui::ButtonLook::Filled)) {
    ui.emit(act::Show{Place::Stations});
  }
}

}  // namespace

void draw_park(Ui& ui, Rect area, const Shared& shared, const ParkingState& parking) {
  const ParkAnswer answer = answer_of(shared, parking);
  const Rect foot{area.left, area.bottom - kParkAct, area.right, area.bottom};
  Rect head = area, picture = area;
  if (ui.portrait()) {
    head.top = foot.top - kParkGap - kParkHead;
    picture.bottom = head.top - kParkGap;
  } else {
    picture.top = area.top + kParkHead + 8.0f;
    picture.bottom = foot.top - kParkGap;
  }
  draw_park_answer(ui, head, answer);
  Rect palette = picture;
  if (shared.settings.left_handed && !ui.portrait()) {
    palette.right = palette.left + kPalette;
    picture.left = palette.right + kParkGap;
  } else {
    palette.left = palette.right - kPalette;
    picture.right = palette.left - kParkGap;
  }
  draw_ring(ui, picture, shared, parking);
  draw_palette(ui, palette, parking);
  draw_park_foot(ui, foot, shared, parking);
}

}  // namespace mastwise::screens
