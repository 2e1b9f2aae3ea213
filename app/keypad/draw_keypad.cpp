#include "app/keypad/actions.hpp"
#include "app/keypad/draw.hpp"
#include "app/keypad/draw_place_rows.hpp"
#include "app/keypad/keypad.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/places.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;
using words::say;

constexpr float kGap = 15.0f, kField = 72.0f, kHighestKey = 88.0f, kKeysWidth = 580.0f;

struct Key {
  std::string label;
  Action action;
};
using Row = std::vector<Key>;

Key writes(const std::string& text) {
  return {text, act::KeypadType{text}};
}

Row writing(std::initializer_list<const char*> texts) {
  Row row;
  for (const char* text : texts) row.push_back(writes(text));
  return row;
}

const Key kErase{"Erase", act::KeypadErase{}};
const Key kClear{"Clear", act::KeypadEraseAll{}};
const Key kNoKey{"", act::KeypadType{}};  // keeps the digit columns aligned
const Key kSpace{"Space", act::KeypadType{" "}};

std::vector<Row> letter_rows() {
  std::vector<Row> rows{
      writing({"A", "B", "C", "D", "E", "F", "G"}), writing({"H", "I", "J", "K", "L", "M", "N"}),
      writing({"O", "P", "Q", "R", "S", "T", "U"}), writing({"V", "W", "X", "Y", "Z", "-", "."})};
  rows.push_back({{"123", act::KeypadPage{}}, kSpace, kClear, kErase});
  return rows;
}

std::vector<Row> figure_rows(const Keypad& keypad) {
  const KeypadPurpose purpose = keypad.purpose;
  std::vector<Row> rows{writing({"7", "8", "9"}), writing({"4", "5", "6"}),
                        writing({"1", "2", "3"}), writing({".", "0"})};
  const auto append = [&](std::size_t row, std::initializer_list<Key> keys) {
    rows[row].insert(rows[row].end(), keys);
  };
  if (types_position(keypad)) {
    append(0, {writes("N"), writes("°"), kErase});
    append(1, {writes("S"), writes("′"), kClear});
    append(2, {writes("E"), writes("″"), {"ABC", act::KeypadPage{}}});
    append(3, {writes(","), writes("W"), writes("-"), kSpace});
  } else if (purpose == KeypadPurpose::Search || purpose == KeypadPurpose::Appliance) {
    append(0, {kErase});
    append(1, {kClear});
    append(2, {{"ABC", act::KeypadPage{}}});
    append(3, {writes("-"), kSpace});
  } else {
    append(0, {kErase});
    append(1, {kClear});
    append(2, {kNoKey});
    append(3, {purpose == KeypadPurpose::Field ? writes("-") : kNoKey, kNoKey});
  }
  return rows;
}

std::vector<Row> key_rows(const Keypad& keypad) {
  std::vector<Row> rows = keypad.letters ? letter_rows() : figure_rows(keypad);
  const bool search = keypad.purpose == KeypadPurpose::Search;
  Row last{{search ? "Done" : "Use it", act::KeypadAccept{}}};
  if (!search) last.insert(last.begin(), {"Cancel", act::KeypadClose{}});
  rows.push_back(std::move(last));
  return rows;
}

void draw_keys(Ui& ui, Rect area, const Keypad& keypad) {
  const std::vector<Row> rows = key_rows(keypad);
  const auto count = static_cast<float>(rows.size());
  const float height = std::min(kHighestKey, (area.height() - (count - 1.0f) * kGap) / count);
  float top = area.bottom - count * height - (count - 1.0f) * kGap;
  for (const Row& row : rows) {
    const auto keys = static_cast<float>(row.size());
    const float width = (area.width() - (keys - 1.0f) * kGap) / keys;
    float left = area.left;
    for (const Key& key : row) {
      const float key_left = left;
      left += width + kGap;
      if (key.label.empty()) continue;
      const bool accepts = key.action.is<act::KeypadAccept>();
      // A name needs a touch on one of the places found.
      const bool possible = !accepts || !types_name(keypad);
      if (ui.button("key " + key.label, {key_left, top, key_left + width, top + height},
                    say(key.label), accepts ? ButtonLook::Filled : ButtonLook::Plain, possible)) {
        ui.emit(key.action);
      }
    }
    top += height + kGap;
  }
}

std::string title(const Keypad& keypad, bool miles) {
  switch (keypad.purpose) {
    case KeypadPurpose::Position:
      return say("Position in any notation, or a town's name");
    case KeypadPurpose::Nose:
      return say("Heading of the rig's nose");
    case KeypadPurpose::Search:
      return say("Program, network, call sign or channel");
    case KeypadPurpose::Appliance:
      return say("What did you turn off?");
    case KeypadPurpose::Field:
      return words::say(field_words(keypad.field, miles));
  }
  return "";
}

// The typed text with a caret, or a mark under the wrong character.
void draw_field(Ui& ui, Rect field, const Keypad& keypad) {
  const ui::Theme& theme = ui.theme();
  ui.canvas().fill(field, theme.panel, 14.0f);
  ui.canvas().outline(field.inset(1.5f), theme.accent, 3.0f, 14.0f);
  const float left = field.left + 20.0f, baseline = field.center().y + 11.0f;
  ui.canvas().text({left, baseline}, keypad.text, Face::Cardinal, theme.ink);
  const std::string_view text = keypad.text;
  const std::size_t mark =
      keypad.error ? keypad.error->character.value_or(text.size()) : text.size();
  const float x =
      left + ui.canvas().text_width(text.substr(0, std::min(mark, text.size())), Face::Cardinal);
  if (keypad.error) {
    ui.canvas().line({x, baseline + 10.0f}, {x + 20.0f, baseline + 10.0f}, theme.warning, 5.0f);
  } else {
    ui.canvas().line({x + 3.0f, baseline - 28.0f}, {x + 3.0f, baseline + 6.0f}, theme.accent, 3.0f);
  }
}

// The typed position in every notation, so that a slip shows before use.
void draw_echo(Ui& ui, Rect area, const Shared& shared, const Keypad& keypad) {
  const auto position = parse_position(keypad.text);
  if (!position) {
    ui.paragraph({area.left, area.top + 24.0f}, area.width(), 30.0f,
                 say("Latitude first, in degrees, minutes and seconds as you have them, or a UTM "
                     "or MGRS grid reference. Or touch ABC and type the name of a town."),
                 Face::Text, ui.theme().second_ink);
    return;
  }
  float y = area.top + 24.0f;
  for (const Notation notation : kNotations) {
    ui::text_within(ui.canvas(), {area.left, y}, area.width(), format_position(*position, notation),
                    Face::Text, ui.theme().ink);
    y += 36.0f;
  }
  const places::NearPlace* near = near_place_of(shared, *position);
  if (near == nullptr) return;
  ui.paragraph({area.left, y + 8.0f}, area.width(), 30.0f,
               words::sentence(words::near_place(*near, shared.settings.miles)), Face::TextBold,
               ui.theme().ink);
}

void draw_position_typed(Ui& ui, Rect area, const Shared& shared, const Keypad& keypad) {
  if (types_name(keypad)) {
    draw_place_rows(ui, area, shared, keypad);
  } else {
    draw_echo(ui, area, shared, keypad);
  }
}

// The north from which the typed heading counts.
void draw_north(Ui& ui, Rect area, const Keypad& keypad, bool miles) {
  constexpr float kWide = 420.0f;
  const auto north = [](bool filled) {
    return [filled](ui::Canvas& canvas, Rect room, ui::Color color) {
      ui::kite(canvas, room.center(), 18.0f, color, filled);
    };
  };
  const std::array options{ui::Option{"magnetic", say("By compass"), north(false)},
                           ui::Option{"true", say("By map, true"), north(true)}};
  const float width = std::min(kWide, area.width());
  const Rect choice{area.left, area.top, area.left + width,
                    area.top + ui::choice_height(ui, options, width, 104.0f)};
  const std::size_t chosen = keypad.magnetic ? 0 : 1;
  const auto touched = ui::segmented(ui, "north", choice, options, chosen);
  if (touched && *touched != chosen) ui.emit(act::KeypadNorth{});
  if (!keypad.magnetic) return;
  constexpr double kClear_m = 5.0;
  ui.paragraph({area.left, choice.bottom + 40.0f}, area.width(), 32.0f,
               words::fill(say("Stand at least {distance} from the rig and any steel, in line "
                               "with its nose."),
                           {{"distance", words::height(kClear_m, miles)}}),
               Face::Text, ui.theme().second_ink);
}

void draw_beside(Ui& ui, Rect area, const Shared& shared, const Keypad& keypad) {
  if (keypad.error) {
    ui.paragraph({area.left, area.top + 24.0f}, area.width(), 30.0f, keypad.error->message(),
                 Face::TextBold, ui.theme().warning);
    return;
  }
  switch (keypad.purpose) {
    case KeypadPurpose::Position:
      return draw_position_typed(ui, area, shared, keypad);
    case KeypadPurpose::Search:
    case KeypadPurpose::Appliance:
      return;
    case KeypadPurpose::Nose:
      draw_north(ui, area, keypad, shared.settings.miles);
      return;
    case KeypadPurpose::Field:
      if (is_place(keypad.field)) draw_position_typed(ui, area, shared, keypad);
      return;
  }
}

}  // namespace

std::optional<Rect> draw_keypad(Ui& ui, const Shared& shared, const Keypad& keypad) {
  constexpr float kBelowTab = 16.0f, kHalfTab = 96.0f;
  Rect page = ui.screen().inset(ui::kMargin);
  const std::string asked = title(keypad, shared.settings.miles);
  // On a narrow screen the words reach below the mark of the practice area.
  const auto lines = ui.wrapped(asked, page.width(), Face::TextBold).size();
  const float end =
      lines > 1 ? page.right : page.left + ui.canvas().text_width(asked, Face::TextBold);
  if (shared.stop.practice && end > page.center().x - kHalfTab) page.top += kBelowTab;
  ui.paragraph({page.left, page.top + 22.0f}, page.width(), 29.0f, asked, Face::TextBold,
               ui.theme().second_ink);
  page.top += ui.line(29.0f, Face::TextBold) * static_cast<float>(lines - 1);
  const Rect field{page.left, page.top + 36.0f, page.right, page.top + 36.0f + kField};
  draw_field(ui, field, keypad);
  Rect beside{page.left, field.bottom + kGap, page.right, page.bottom};
  Rect keys = beside;
  if (ui.portrait()) {
    keys.top = beside.bottom = page.center().y;
    beside.bottom -= kGap;
  } else if (shared.settings.left_handed) {
    keys.right = keys.left + kKeysWidth;
    beside.left = keys.right + 2.0f * kGap;
  } else {
    keys.left = keys.right - kKeysWidth;
    beside.right = keys.left - 2.0f * kGap;
  }
  ui.back_is(keypad.purpose == KeypadPurpose::Search ? "key Done" : "key Cancel");
  draw_keys(ui, keys, keypad);
  draw_beside(ui, beside, shared, keypad);
  const bool found = keypad.purpose == KeypadPurpose::Search && !keypad.error;
  return found ? std::optional(beside) : std::nullopt;
}

}  // namespace mastwise::screens
