#include "app/data/actions.hpp"
#include "app/data/draw_import.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/onward.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/ahead.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"

// The routes, tracks and places of a file, one of which becomes the way ahead.
namespace mastwise::screens::import {
namespace {

using ui::Face;
using ui::Rect;
using ui::Ui;
using words::fill;
using words::say;

const char* kind_of_route(RouteChoice::Kind kind) {
  switch (kind) {
    case RouteChoice::Kind::Route:
      return say("Route: {stops} stops, {length}");
    case RouteChoice::Kind::Track:
      return say("Track: {stops} stops along it, {length}");
    case RouteChoice::Kind::Places:
      break;
  }
  return say("{stops} places");
}

void draw_choice(Ui& ui, Rect row, const RouteChoice& choice, std::size_t index, bool miles) {
  const ui::Theme& theme = ui.theme();
  const std::string name = "route " + std::to_string(index);
  if (ui::onward(ui, name, row, "routes")) {
    ui.emit(act::PlacesFromFile{choice.stops});
    ui.emit(act::OpenSheet{Sheet::None});
    ui.emit(act::Show{Place::Ahead});
  }
  const float room = row.width() - ui::kChevron - 16.0f;
  const std::string title = choice.name.empty() ? std::string(say("Without a name")) : choice.name;
  ui.canvas().text({row.left + 8.0f, row.top + 36.0f},
                   ui::shortened(ui.canvas(), title, Face::TextBold, room), Face::TextBold,
                   theme.ink);
  const std::string about =
      fill(kind_of_route(choice.kind), {{"stops", std::to_string(choice.stops.size())},
                                        {"length", words::along(choice.length_km, miles)}});
  ui.canvas().text({row.left + 8.0f, row.top + 68.0f},
                   ui::shortened(ui.canvas(), about, Face::Text, room), Face::Text,
                   second_ink_on_row(theme, ui.pressed(name)));
  ui.canvas().line({row.left, row.bottom}, {row.right, row.bottom}, theme.rule, 1.5f);
}

}  // namespace

void draw_routes(Ui& ui, const Shared& shared, const Intake& data) {
  const auto head = draw_head(ui, say("Choose a way"), "routes back", "Back");
  if (head.tapped) ui.emit(act::OpenIntakeFolder{data.question.folder});
  const ui::Theme& theme = ui.theme();
  const Rect view = head.room;
  const float top = ui.begin_page("routes", view);
  float y = top;
  const auto line = [&](const std::string& words, ui::Color color) {
    y = ui.paragraph({view.left, y + 28.0f}, view.width(), 30.0f, words, Face::Text, color) - 8.0f;
  };
  const auto& answer = data.answer;
  const bool known = answer && answer->question.step == IntakeStep::Route &&
                     answer->question.path == data.question.path;
  if (!known) line(say("Reading"), theme.ink);
  if (known && !answer->trouble.empty()) line(words::sentence(answer->trouble), theme.warning);
  if (known && answer->route) {
    line(say("Its stops take the place of those under Ahead. Undo brings them back."), theme.ink);
    constexpr float kRow = 84.0f;
    y += 8.0f;
    for (std::size_t i = 0; i < answer->route->choices.size(); ++i) {
      draw_choice(ui, {view.left, y, view.right, y + kRow}, answer->route->choices[i], i,
                  shared.settings.miles);
      y += kRow;
    }
    for (const std::string& remark : answer->route->remarks) {
      line(words::sentence(remark), theme.second_ink);
    }
  }
  ui.end_page("routes", top, y + 16.0f);
}

}  // namespace mastwise::screens::import
