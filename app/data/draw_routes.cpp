#include "app/data/actions.hpp"
#include "app/data/draw_import.hpp"
#include "app/shared/actions.hpp"
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
  const std::string name = "route " + std::to_string(index);
  const std::string title = choice.name.empty() ? std::string(say("Without a name")) : choice.name;
  const std::string about =
      fill(kind_of_route(choice.kind), {{"stops", std::to_string(choice.stops.size())},
                                        {"length", words::along(choice.length_km, miles)}});
  if (row_onward(ui, name, row, "routes", title, about)) {
    ui.emit(act::PlacesFromFile{choice.stops});
    ui.emit(act::OpenSheet{Sheet::None});
    ui.emit(act::Show{Place::Ahead});
  }
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
