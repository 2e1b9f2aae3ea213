#include "app/aim/draw_answer.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"

namespace mastwise::screens {

void draw_no_heading(ui::Ui& ui, ui::Rect area, const Shared& shared) {
  using ui::Face;
  using words::say;
  const bool station = shared.stop.target.has_value();
  const ui::Theme& theme = ui.theme();
  const char* question = station ? say("Where is the rig?") : say("Which station?");
  const bool wide =
      ui.canvas().usual_share(Face::Cardinal) * ui.canvas().text_width(question, Face::Cardinal) >
      area.width();
  ui::text_within(ui.canvas(), {area.left, area.top + 38.0f}, area.width(), question,
                  wide ? Face::TextBold : Face::Cardinal, theme.ink);
  const float y = ui.paragraph({area.left, area.top + 84.0f}, area.width(), 32.0f,
                               station ? say("Set the position to see the heading.")
                                       : say("Pick one from the list to see its heading."),
                               Face::Text, theme.ink);
  const ui::Rect act{area.left, y, area.left + 280.0f, y + 80.0f};
  if (ui.button("find", act, station ? say("Set the position") : say("Pick a station"),
                ui::ButtonLook::Filled)) {
    ui.emit(act::Show{station ? Place::Here : Place::Stations});
  }
}

}  // namespace mastwise::screens
