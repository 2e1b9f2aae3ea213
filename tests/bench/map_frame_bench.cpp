#include "core/catalog/catalog.hpp"
#include "core/import/import_csv.hpp"
#include "tests/bench/invented_stations.hpp"
#include "tests/bench/offscreen.hpp"

#include <filesystem>

// The cost of a map frame during a drag, with 10,000 stations, as a multiple of an empty frame of
// the same window; and the time for its sheet.

using namespace mastwise;
using namespace mastwise::bench;

namespace {

constexpr std::size_t kStations = 10'000;

void fill_catalog(const std::string& path) {
  std::filesystem::remove(path);
  auto catalog = Catalog::open(path);
  const auto table = read_station_csv(invented_csv(kStations), {"invented", "2026-01-01"});
  if (!catalog || !table || !catalog->replace_source(*table)) {
    fmt::print(stderr, "cannot make the catalog: {}\n", path);
    std::exit(1);
  }
}

void bench_map(shell::GlWindow& window, const std::string& catalog) {
  // From the middle of the stations, the map of the whole continent.
  const Stop stop{.source = PositionSource::ByHand, .by_hand = *Position::at_deg(38.0, -96.0)};
  Offscreen program =
      start_program(window.metrics(), {.catalog_path = catalog},
                    {act::SetStop{stop}, act::Show{Place::Map}, act::MoveMap{{.scale = 1e-9}}});
  shell::Session& session = program.runtime->session();
  const std::size_t shown =
      session.model().map.sheet ? session.model().map.sheet->stations.size() : 0;
  Monotonic now = session.model().now;
  const double empty_ms = median_ms([&](int) { draw_empty(window); });
  std::vector<double> code_ms;
  const double dragged_ms = median_ms([&](int i) {
    session.act(act::MoveMap{{.drag = {i % 2 == 0 ? 3.0 : -3.0, 1.0}, .turn_deg = 0.5}});
    now += milliseconds(16);
    const auto began = Clock::now();
    ImDrawData* picture = program.interface->frame(now);
    code_ms.push_back(ms_since(began));
    program.painter->paint(picture, program.interface->ground(), program.interface->bitmaps());
    finish_frame(window);
  });
  fmt::print("empty frame: {:.2f} ms\n", empty_ms);
  fmt::print("frame of the dragged map, {} stations: {:.2f} ms, {:.2f} times an empty one\n", shown,
             dragged_ms, dragged_ms / empty_ms);
  fmt::print("interface code of it: {:.2f} ms\n", median(std::move(code_ms)));
}

}  // namespace

int main() {
  const std::string catalog =
      std::filesystem::temp_directory_path().string() + "/mastwise_map_bench_catalog";
  fill_catalog(catalog);
  const auto window = need(shell::GlWindow::open({.offscreen = true}));
  bench_map(*window, catalog);
  std::filesystem::remove(catalog);
  return 0;
}
