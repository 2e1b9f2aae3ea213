#include "app/keypad/draw_place_rows.hpp"

#include "app/keypad/actions.hpp"
#include "app/keypad/update.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/places.hpp"
#include "app/words/units.hpp"

#include <string>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using ui::Face;
using ui::Rect;
using ui::Ui;

constexpr float kRow = 84.0f;

// "60,870".
std::string grouped(std::uint32_t number) {
  constexpr std::uint32_t kGroup = 1000;
  if (number < kGroup) return fmt::format("{}", number);
  return grouped(number / kGroup) + fmt::format(",{:03}", number % kGroup);
}

// The population and distance, which distinguish places of the same name.
std::string about(const places::FoundPlace& found, bool miles) {
  using words::fill, words::say;
  const std::string people =
      found.place.population
          ? fill(say("{number} people"), {{"number", grouped(*found.place.population)}})
          : std::string(say("population unknown"));
  if (!found.way) return people;
  return fill(say("{people}, {distance} {octant} of here"),
              {{"people", people},
               {"distance", words::distance(found.way->distance_m, miles)},
               {"octant", words::octant(found.way->bearing)}});
}

void draw_row(Ui& ui, Rect row, const std::string& name, const places::FoundPlace& found,
              bool miles) {
  constexpr float kInset = 16.0f;
  const ui::Theme& theme = ui.theme();
  if (ui.touchable(name, row, true, "places found")) ui.emit(act::TakePlace{found.place});
  const bool lit = ui.pressed(name);
  if (lit) ui.canvas().fill(row.inset(2.0f), theme.lobe, 10.0f);
  const std::string title = words::place(found.place);
  const bool wide = ui.canvas().text_width(title, Face::Value) > row.width() - 2.0f * kInset;
  ui.canvas().text({row.left + kInset, row.top + 38.0f}, title, wide ? Face::TextBold : Face::Value,
                   theme.ink);
  ui::text_within(ui.canvas(), {row.left + kInset, row.top + 68.0f}, row.width() - 2.0f * kInset,
                  about(found, miles), Face::Text, second_ink_on_row(theme, lit));
  ui.canvas().line({row.left, row.bottom}, {row.right, row.bottom}, theme.rule, 1.5f);
}

std::string state_words(const Shared& shared, const Keypad& keypad) {
  const auto* found = places_found(keypad, shared);
  if (found == nullptr) return words::say("Searching places.");
  if (!shared.places->trouble.empty()) return shared.places->trouble;
  if (!found->empty()) return words::say("Touch the right place.");
  if (shared.places->question.typed != keypad.text) return words::say("Searching places.");
  return words::say("No match. Try fewer letters, or add the state: BEND OR");
}

}  // namespace

void draw_place_rows(Ui& ui, Rect view, const Shared& shared, const Keypad& keypad) {
  constexpr float kFoot = 34.0f, kLine = 24.0f;
  const ui::Theme& theme = ui.theme();
  view.top = ui.paragraph({view.left, view.top + 20.0f}, view.width(), kLine,
                          state_words(shared, keypad), Face::Text, theme.second_ink) -
             8.0f;
  const std::string source(words::places_source());
  const float further = ui.line(kLine, Face::Fine) *
                        static_cast<float>(ui.wrapped(source, view.width(), Face::Fine).size() - 1);
  ui.paragraph({view.left, view.bottom - 6.0f - further}, view.width(), kLine, source, Face::Fine,
               theme.second_ink);
  view.bottom -= kFoot + further;
  ui.canvas().line({view.left, view.top}, {view.right, view.top}, theme.rule, 1.5f);
  const auto* found = places_found(keypad, shared);
  if (found == nullptr) return;
  const float offset =
      ui.begin_scroll("places found", view, kRow * static_cast<float>(found->size()));
  for (std::size_t i = 0; i < found->size(); ++i) {
    const float top = view.top + kRow * static_cast<float>(i) - offset;
    if (!ui.in_reach(top, top + kRow)) continue;
    draw_row(ui, {view.left, top, view.right, top + kRow}, fmt::format("place {}", i + 1),
             (*found)[i], shared.settings.miles);
  }
  ui.end_scroll();
}

}  // namespace mastwise::screens
