#include "app/ui/sheet_head.hpp"

#include "app/shared/actions.hpp"
#include "app/ui/column.hpp"
#include "app/ui/guide_mark.hpp"
#include "app/ui/layout.hpp"
#include "app/words/language.hpp"

namespace mastwise::ui {

namespace {

// On one line where it has room, else smaller, else on two.
void draw_title(Ui& ui, Rect room, const std::string& title) {
  Canvas& canvas = ui.canvas();
  for (const Face face : {Face::Cardinal, Face::Value}) {
    if (canvas.text_width(title, face) > room.width()) continue;
    canvas.text({room.left, room.top + 44.0f}, title, face, ui.theme().ink);
    return;
  }
  ui.paragraph({room.left, room.top + 30.0f}, room.width(), 31.0f, title, Face::TextBold,
               ui.theme().ink);
}

}  // namespace

Rect draw_sheet_head(Ui& ui, const std::string& title, Sheet back, Guide guide) {
  const Rect page = ui.screen().inset(kMargin);
  const Rect close{page.right - 176.0f, page.top, page.right, page.top + Column::kButton};
  ui.back_is("close sheet");
  if (ui.button("close sheet", close, words::say("Done"), ButtonLook::Filled)) {
    ui.emit(act::OpenSheet{back});
  }
  float right = close.left - Column::kGap;
  if (guide != Guide::None) {
    guide_button(ui, guide, {right - kGuideMark, close.top, right, close.bottom});
    right -= kGuideMark;
  }
  draw_title(ui, {page.left, page.top, right, close.bottom}, title);
  return {page.left, close.bottom + Column::kGap, page.right, page.bottom};
}

}  // namespace mastwise::ui
