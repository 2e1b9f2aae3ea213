#include "app/stations/actions.hpp"
#include "app/stations/draw.hpp"
#include "app/ui/column.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"

#include <algorithm>

// The networks of a station that no table lists: the person who sees its picture ticks them.
namespace mastwise::screens {
namespace {

using ui::Column;

using ui::ButtonLook;
using ui::Face;
using words::fill;
using words::say;

constexpr float kButton = Column::kButton, kBetweenTicks = Column::kGap;

void draw_network(Ui& ui, Rect rect, const std::string& network, const Station& station,
                  const Settings& settings) {
  const TickedNetwork ticked{key_of(station), network};
  const bool by_hand = is_ticked(settings, ticked);
  const bool there = carries(station, network);
  // Only an import changes a network from a table.
  if (ui.button("carries " + network, rect, network, there ? ButtonLook::Filled : ButtonLook::Plain,
                by_hand || !there)) {
    ui.emit(act::TickNetwork{ticked});
  }
}

}  // namespace

void draw_carries_sheet(Ui& ui, const Shared& shared, const StationsState& list) {
  const StationRow* row = shared.stop.target && shared.stations
                              ? find_row(*shared.stations, key_of(*shared.stop.target))
                              : nullptr;
  const Rect view = draw_sheet_head(
      ui, row == nullptr ? std::string(say("No station chosen"))
                         : fill(say("On {station}"), {{"station", words::title(row->station)}}));
  if (row == nullptr) return;
  Rect page = view;
  page.top = ui.begin_page("carries", view);
  const float top =
      ui.paragraph({page.left, page.top + 24.0f}, page.width(), 28.0f,
                   fill(say("Touch a network that you see there. Imported data stays unchanged. "
                            "Now: {networks}."),
                        {{"networks", words::carries(row->station)}}),
                   Face::Text, ui.theme().second_ink) -
      8.0f;
  const std::size_t columns = ui.portrait() ? 2 : 3;
  const auto of = static_cast<float>(columns);
  const float width = (page.width() - (of - 1.0f) * kBetweenTicks) / of;
  const auto& networks = list.networks_around;
  for (std::size_t i = 0; i < networks.size(); ++i) {
    const float left = page.left + static_cast<float>(i % columns) * (width + kBetweenTicks);
    const float y = top + static_cast<float>(i / columns) * (kButton + kBetweenTicks);
    draw_network(ui, {left, y, left + width, y + kButton}, networks[i], row->station,
                 shared.settings);
  }
  const std::size_t lines = (networks.size() + columns - 1) / columns;
  ui.end_page("carries", page.top, top + static_cast<float>(lines) * (kButton + kBetweenTicks));
}

}  // namespace mastwise::screens
