#include "app/cli/arguments.hpp"
#include "app/service/startup.hpp"
#include "app/shell/verbs.hpp"
#include "app/shell/window_loop.hpp"
#include "platform/files.hpp"

#include <memory>

namespace mastwise::cli {
namespace {

struct Options {
  std::string size, pattern, device, meter, catalog, terrain, record;
  std::optional<float> dots_per_inch;
  bool fullscreen = false;
};

Result<Done> open_window(const Options& options) {
  const auto folder = platform::data_folder();
  if (!folder) return folder.error();
  const auto catalog = catalog_path(options.catalog);
  if (!catalog) return catalog.error();
  const auto terrain = options.terrain.empty() ? service::terrain_folder() : options.terrain;
  if (!terrain) return terrain.error();
  shell::WindowOptions window{.catalog_path = *catalog,
                              .terrain_folder = *terrain,
                              .logbook_path = *folder + "/logbook",
                              .paper_folder = *folder + "/cards"};
  if (!options.size.empty()) {
    const auto size = size_argument(options.size);
    if (!size) return size.error();
    window.window.width_px = size->width_px;
    window.window.height_px = size->height_px;
  }
  window.window.fullscreen = options.fullscreen;
  window.window.dots_per_inch = options.dots_per_inch;
  const auto pattern = pattern_argument(options.pattern);
  if (!pattern) return pattern.error();
  window.pattern_table = *pattern;
  if (!options.device.empty()) window.device = options.device;
  if (!options.meter.empty()) window.meter = options.meter;
  if (!options.record.empty()) window.record = options.record;
  return shell::run_window(window);
}

}  // namespace

void add_window(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<Options>();
  program.add_option("--size", options->size, "window size in pixels (default: 1280x800)");
  program
      .add_option("--dpi", options->dots_per_inch, "dots per inch, if the system reports it wrong")
      ->check(CLI::Range(50.0f, 600.0f));
  program.add_flag("--fullscreen", options->fullscreen, "use the whole screen");
  program.add_option(
      "--device", options->device,
      "the receiver: a serial device, HOST:PORT, gpsd, gpsd://HOST:PORT, or a log file");
  program.add_option("--meter", options->meter,
                     "a signal meter, saved with the settings: a serial device, tcp://HOST:PORT, "
                     "dvb:ADAPTER, or none");
  program.add_option("--catalog", options->catalog, "catalog file to use instead of yours");
  program.add_option("--terrain", options->terrain,
                     "folder of elevation tiles to use instead of yours");
  program.add_option("--pattern", options->pattern,
                     "custom antenna pattern, saved with the gear: a table of angle_deg and db");
  program.add_option("--record", options->record, "write the session's actions to this file");
  chosen = [options] { return open_window(*options); };
}

}  // namespace mastwise::cli
