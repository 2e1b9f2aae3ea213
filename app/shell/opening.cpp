#include "app/shell/opening.hpp"

#include "app/service/startup.hpp"
#include "app/shell/interface.hpp"
#include "platform/frames.hpp"

#include <future>
#include <utility>

namespace mastwise::shell {
namespace {

struct Started {
  Result<std::unique_ptr<Runtime>> runtime;
  ui::Metrics metrics;
  std::shared_ptr<const ui::Fonts> fonts;  // for these metrics; null if they cannot be read
};

Started start(const RuntimeWish& wish, const ui::Metrics& screen) {
  auto runtime = Runtime::start(wish);
  if (!runtime) return {std::move(runtime), {}, nullptr};
  const ui::Metrics metrics = metrics_for((*runtime)->session().model().settings, screen);
  auto fonts = ui::Fonts::load(service::fonts_folder(), metrics.px_per_unit, metrics.letters);
  return {std::move(runtime), metrics, fonts ? *std::move(fonts) : nullptr};
}

// Hands out the ready letters once, because their texture belongs to one painter. After that it
// draws them anew.
ui::LoadFonts fonts_begun_with(const ui::Metrics& metrics, std::shared_ptr<const ui::Fonts> first) {
  auto begun = std::make_shared<std::shared_ptr<const ui::Fonts>>(std::move(first));
  return [=, draw = ui::fonts_of(service::fonts_folder())](
             float px_per_unit, float letters) -> Result<std::shared_ptr<const ui::Fonts>> {
    const auto there = std::exchange(*begun, nullptr);
    const bool fit = px_per_unit == metrics.px_per_unit && letters == metrics.letters;
    if (there && fit) return there;
    return draw(px_per_unit, letters);
  };
}

}  // namespace

Result<Opening> open_and_start(const WindowWish& window_wish, const RuntimeWish& runtime_wish) {
  // A page must not wait for its threads, which start only when the page is idle.
  const bool waits = !platform::in_browser();
  std::future<Started> rest;
  auto window = GlWindow::open(window_wish, [&](const ui::Metrics& expected) {
    if (!waits) return;
    rest = std::async(std::launch::async,
                      [&runtime_wish, expected] { return start(runtime_wish, expected); });
  });
  if (!window) return window.error();
  Started started = waits ? rest.get() : start(runtime_wish, (*window)->metrics());
  if (!started.runtime) return started.runtime.error();
  return Opening{*std::move(window), *std::move(started.runtime),
                 fonts_begun_with(started.metrics, std::move(started.fonts))};
}

}  // namespace mastwise::shell
