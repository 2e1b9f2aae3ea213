#include "app/screens/sheet_head.hpp"

#include "app/model/action.hpp"
#include "app/screens/column.hpp"
#include "app/ui/layout.hpp"

namespace mastwise::screens {

ui::Rect draw_sheet_head(ui::Ui& ui, const std::string& title) {
  const ui::Rect page = ui.screen().inset(ui::kMargin);
  ui.canvas().text({page.left, page.top + 44.0f}, title, ui::Face::Cardinal, ui.theme().ink);
  const ui::Rect close{page.right - 176.0f, page.top, page.right, page.top + Column::kButton};
  if (ui.button("close sheet", close, "Done", ui::ButtonLook::Filled)) {
    ui.emit(act::OpenSheet{Sheet::None});
  }
  return {page.left, close.bottom + Column::kGap, page.right, page.bottom};
}

}  // namespace mastwise::screens
