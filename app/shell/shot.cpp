#include "app/shell/shot.hpp"

#include "app/shell/interface.hpp"
#include "app/shell/painter.hpp"
#include "app/shell/runtime.hpp"
#include "platform/clock.hpp"
#include "platform/files.hpp"

namespace mastwise::shell {
namespace {

// The stop in the picture.
Stop stop_of(const Shot& shot, const Stop& practice) {
  Stop stop = practice;
  if (shot.at) stop = Stop{.source = PositionSource::ByHand, .by_hand = shot.at};
  if (shot.nose) stop.nose = Nose{shot.nose->nose(), Nose::Origin::ByHand};
  if (shot.target) stop.target = shot.target;
  return stop;
}

}  // namespace

Result<Done> draw_shot(Shot shot) {
  auto runtime =
      Runtime::start({.catalog_path = shot.catalog, .terrain_folder = shot.terrain_folder});
  if (!runtime) return runtime.error();
  Session& session = (*runtime)->session();
  const Monotonic now = platform::monotonic_now();
  session.act(act::Tick{now, shot.date});
  session.act(act::SetStop{stop_of(shot, (*runtime)->practice_stop())});
  const auto choose = [&](const char* setting, auto value) {
    const std::string name(kStoredNames<decltype(value)>[static_cast<std::size_t>(value)]);
    session.act(act::ChooseSetting{setting, name});
  };
  choose("look", shot.look);
  choose("language", shot.language);
  choose("text_size", shot.text_size);
  session.finish_errands();
  for (const Action& action : shot.acts) {
    session.act(action);
    session.finish_errands();
  }

  shot.window.offscreen = true;
  const auto window = GlWindow::open(shot.window);
  if (!window) return window.error();
  const auto interface =
      Interface::make(session, (*window)->metrics(), ui::fonts_of(service::fonts_folder()));
  if (!interface) return interface.error();
  const auto painter = Painter::make();
  if (!painter) return painter.error();
  // A page has a height only after drawing, and a prompt rests before it accepts touches.
  (*interface)->frame(now);
  for (int i = 0; i < shot.keys; ++i) {
    (*interface)->feed(touch::KeyEvent{touch::Key::Next, touch::KeyEvent::Kind::Down, now});
    (*interface)->frame(now);
  }
  (*painter)->paint((*interface)->frame(now + touch::kPromptRest), (*interface)->ground(),
                    (*interface)->bitmaps());
  return (*window)->save_png(shot.file, shot.eyes);
}

}  // namespace mastwise::shell
