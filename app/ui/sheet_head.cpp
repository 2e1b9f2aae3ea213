#include "app/ui/sheet_head.hpp"

#include "app/shared/actions.hpp"
#include "app/ui/column.hpp"
#include "app/ui/guide_mark.hpp"
#include "app/ui/layout.hpp"
#include "app/words/language.hpp"

namespace mastwise::ui {

Rect draw_sheet_head(Ui& ui, const std::string& title, Sheet back, Guide guide) {
  const Rect page = ui.screen().inset(kMargin);
  ui.canvas().text({page.left, page.top + 44.0f}, title, Face::Cardinal, ui.theme().ink);
  const Rect close{page.right - 176.0f, page.top, page.right, page.top + Column::kButton};
  ui.back_is("close sheet");
  if (ui.button("close sheet", close, words::say("Done"), ButtonLook::Filled)) {
    ui.emit(act::OpenSheet{back});
  }
  if (guide != Guide::None) {
    const float right = close.left - Column::kGap;
    guide_button(ui, guide, {right - kGuideMark, close.top, right, close.bottom});
  }
  return {page.left, close.bottom + Column::kGap, page.right, page.bottom};
}

}  // namespace mastwise::ui
