#include "app/screens/column.hpp"
#include "app/screens/screens.hpp"
namespace mastwise::screens {
void draw_logbook(Ui& ui, Rect area, const Model&) {
  Column column(ui, area);
  column.figure("Logbook");
}
void draw_ahead(Ui& ui, Rect area, const Model&) {
  Column column(ui, area);
  column.figure("Ahead");
}
}  // namespace mastwise::screens
