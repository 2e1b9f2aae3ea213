#include "app/shell/window_loop.hpp"

#include "app/shell/interface.hpp"
#include "app/shell/meter_line.hpp"
#include "app/shell/opening.hpp"
#include "app/shell/painter.hpp"
#include "app/shell/power_watch.hpp"
#include "app/shell/receiver_line.hpp"
#include "app/shell/recording.hpp"
#include "app/shell/sdl_input.hpp"
#include "app/shell/sound_desk.hpp"
#include "app/shell/tablet_line.hpp"
#include "platform/backlight.hpp"
#include "platform/clock.hpp"
#include "platform/frames.hpp"
#include "platform/screen.hpp"

#include <algorithm>
#include <memory>
#include <optional>
#include <utility>

namespace mastwise::shell {
namespace {

// Wakes the loop from another thread.
void wake_loop() {
  SDL_Event event{};
  event.type = SDL_USEREVENT;
  SDL_PushEvent(&event);
}

// How long the loop may sleep: until something is due, or a figure on the screen gets old.
constexpr milliseconds kFiguresGrowOld{1000};
constexpr milliseconds kNothingChanges{10'000};
// Poll intervals for drivers that cannot wait for events.
constexpr milliseconds kPollEvery{40};
constexpr milliseconds kPollSeldom{160};     // without events for
constexpr milliseconds kQuietAfter{10'000};  // this long

class Loop {
 public:
  Loop(GlWindow& window, Session& session, ui::LoadFonts load_fonts, ReceiverLine& receiver,
       MeterLine& meter)
      : window_(window),
        session_(session),
        load_fonts_(std::move(load_fonts)),
        receiver_(receiver),
        meter_(meter) {}

  Result<Done> begin();
  // Waits for what is next if it may, and does it. False once the window has closed.
  Result<bool> step(platform::Wait wait);

 private:
  Result<Done> begin_interface();
  bool listens() const {
    const Model& model = session_.model();
    return model.link.state == Link::State::Open ||
           model.peak.line_link.state == Link::State::Open ||
           model.tablet_link.state == Link::State::Open || model.sheet == Sheet::Meter ||
           model.sheet == Sheet::Tablet;
  }
  milliseconds longest_sleep(Monotonic now) const;
  bool wait(SDL_Event& event, milliseconds longest) const;
  void take(const SDL_Event& event, Monotonic now);
  void draw(Monotonic now);
  void keep_awake();
  void dress_surroundings();
  void dim();

  GlWindow& window_;
  Session& session_;
  ui::LoadFonts load_fonts_;
  ReceiverLine& receiver_;
  MeterLine& meter_;
  TabletLine tablet_{wake_loop};
  std::unique_ptr<Interface> interface_;
  std::unique_ptr<Painter> painter_;
  SoundDesk sound_{wake_loop};
  PowerWatch power_{SDL_GetPowerInfo};
  platform::Backlight light_ = platform::Backlight::in();
  ui::Look lit_for_ = ui::Look::Day;
  bool dirty_ = true;
  bool resized_ = false;
  bool running_ = true;
  platform::SideButtons offered_ = platform::SideButtons::none;
  std::optional<bool> dark_around_ = {};
  Monotonic stepped_{};
  Monotonic drawn_{};
  Monotonic heard_{};  // time of the last event by a person
};

Result<Done> Loop::begin_interface() {
  painter_.reset();
  interface_.reset();
  auto made = Interface::make(session_, window_.metrics(), load_fonts_);
  if (!made) return made.error();
  interface_ = *std::move(made);
  auto painter = Painter::make();
  if (!painter) return painter.error();
  painter_ = *std::move(painter);
  dirty_ = true;
  return Done{};
}

milliseconds Loop::longest_sleep(Monotonic now) const {
  if (dirty_) return milliseconds(0);
  const Model& model = session_.model();
  const bool ages = listens() || model.safety.drive == safety::Drive::Alarm ||
                    model.unsaved.records > 0 || model.now < model.undo_shown + kUndoFresh ||
                    model.safety.undo || model.safety.unsaved || model.findings.position_stale;
  milliseconds longest = ages ? kFiguresGrowOld : kNothingChanges;
  if (const auto due = interface_->due()) {
    longest = std::clamp(*due - now, milliseconds(0), longest);
  }
  return longest;
}

bool Loop::wait(SDL_Event& event, milliseconds longest) const {
  if (!window_.driver_polls()) {
    return SDL_WaitEventTimeout(&event, static_cast<int>(longest.count())) != 0;
  }
  const Monotonic until = platform::monotonic_now() + longest;
  while (SDL_PollEvent(&event) == 0) {
    const Monotonic now = platform::monotonic_now();
    if (now >= until) return false;
    const milliseconds pause = now - heard_ < kQuietAfter ? kPollEvery : kPollSeldom;
    SDL_Delay(static_cast<Uint32>(std::min(until - now, pause).count()));
  }
  return true;
}

void Loop::take(const SDL_Event& event, Monotonic now) {
  if (event.type == SDL_QUIT) running_ = false;
  if (event.type == SDL_WINDOWEVENT) {
    resized_ |= event.window.event == SDL_WINDOWEVENT_SIZE_CHANGED;
    dirty_ = true;
  }
  if (!give_input(event, *interface_, now)) return;
  dirty_ = true;
  heard_ = now;
}

void Loop::draw(Monotonic now) {
  painter_->paint(interface_->frame(now), interface_->ground(), interface_->bitmaps());
  window_.present();
  drawn_ = now;
  dirty_ = interface_->moving();
}

// On the roof nobody has a free hand to wake a dark screen.
void Loop::keep_awake() {
  const bool may_sleep = SDL_IsScreenSaverEnabled() == SDL_TRUE;
  if (session_.model().safety.roof == !may_sleep) return;
  platform::keep_screen_awake(may_sleep);
  if (may_sleep) {
    SDL_DisableScreenSaver();
  } else {
    SDL_EnableScreenSaver();
  }
}

platform::SideButtons side_buttons(Sheet sheet) {
  if (sheet == Sheet::Import || sheet == Sheet::LogbookFiles) return platform::SideButtons::files;
  const bool receiver = sheet == Sheet::Position || sheet == Sheet::Meter;
  return receiver ? platform::SideButtons::receiver : platform::SideButtons::none;
}

void Loop::dress_surroundings() {
  const Model& model = session_.model();
  const auto wanted = side_buttons(model.sheet);
  if (std::exchange(offered_, wanted) != wanted) platform::offer(wanted);
  const bool dark = model.findings.look != ui::Look::Day;
  if (std::exchange(dark_around_, dark) != dark) platform::darken_surroundings(dark);
}

// So much of the backlight at most (common practice, no source).
double most_light(ui::Look look) {
  return look == ui::Look::Night ? 0.4 : 0.1;
}

void Loop::dim() {
  const Model& model = session_.model();
  const ui::Look look = model.settings.dim ? model.findings.look : ui::Look::Day;
  if (look == lit_for_) return;
  lit_for_ = look;
  if (look == ui::Look::Day) {
    light_.restore();
  } else {
    light_.at_most(most_light(look));
  }
}

Result<Done> Loop::begin() {
  if (light_.found()) session_.act(act::BacklightFound{});
  if (platform::in_browser()) session_.act(act::InBrowser{});
  if (const auto begun = begin_interface(); !begun) return begun;
  draw(platform::monotonic_now());  // no worker has started yet
  return Done{};
}

Result<bool> Loop::step(platform::Wait may_wait) {
  SDL_Event event;
  const milliseconds longest = longest_sleep(platform::monotonic_now());
  const bool any = may_wait == platform::Wait::never
                       ? SDL_PollEvent(&event) != 0
                       : wait(event, std::min(longest, sound_.due().value_or(longest)));
  if (any) {
    do take(event, platform::monotonic_now());
    while (SDL_PollEvent(&event) != 0);
  }
  const Monotonic now = platform::monotonic_now();
  if (may_wait == platform::Wait::never && !any && now - stepped_ < std::min(longest, kPollEvery)) {
    return running_;
  }
  stepped_ = now;
  session_.act(act::Tick{now, platform::utc_now()});
  if (power_.unplugged(now)) session_.act(act::Unplugged{});
  dirty_ |= receiver_.give_to(session_);
  dirty_ |= meter_.give_to(session_);
  dirty_ |= tablet_.give_to(session_);
  dirty_ |= session_.take_answers();
  dirty_ |= interface_->due() && now >= *interface_->due();
  dirty_ |= now - drawn_ >= longest_sleep(now);
  if (std::exchange(resized_, false) && window_.metrics() != interface_->screen()) {
    if (const auto begun = begin_interface(); !begun) return begun.error();
  }
  sound_.follow(session_.model());
  if (sound_.voiceless() != session_.model().voiceless) {
    session_.act(act::VoiceAnswered{!sound_.voiceless()});
    dirty_ = true;
  }
  keep_awake();
  dress_surroundings();
  dim();
  if (dirty_) draw(now);
  return running_;
}

// All that the window needs while it is open, in this order: the last uses the ones before it.
struct OpenWindow {
  Opening opening = {};
  std::optional<Recorder> recorder = {};
  std::optional<MeterLine> meter = {};
  std::optional<ReceiverLine> receiver = {};
  std::optional<Loop> loop = {};
};

}  // namespace

Result<Done> run_window(const WindowOptions& options) {
  auto opening = open_and_start(options.window, {.catalog_path = options.catalog_path,
                                                 .terrain_folder = options.terrain_folder,
                                                 .logbook_path = options.logbook_path,
                                                 .paper_folder = options.paper_folder,
                                                 .wake = wake_loop});
  if (!opening) return opening.error();
  const auto open = std::make_shared<OpenWindow>();
  open->opening = *std::move(opening);
  Session& session = open->opening.runtime->session();
  if (options.record) {
    auto begun = Recorder::begin(*options.record);
    if (!begun) return begun.error();
    open->recorder = *std::move(begun);
    session.record_to(
        [&recorder = *open->recorder](const Action& action) { recorder.record(action); });
  }
  if (!options.pattern_table.empty()) {
    GearChoice gear = session.model().settings.gear;
    gear.pattern_table = options.pattern_table;
    session.act(act::ChooseGear{gear});
  }
  if (options.meter) {
    session.act(act::ConnectMeter{*options.meter == "none" ? std::string() : *options.meter});
  }
  MeterLine& meter = open->meter.emplace(wake_loop);
  meter.give_to(session);  // it opens its device before the receiver is searched
  open->receiver.emplace(options.device, wake_loop, [&meter] { return meter.in_use(); });
  Loop& loop = open->loop.emplace(*open->opening.window, session,
                                  std::move(open->opening.load_fonts), *open->receiver, meter);
  if (const auto begun = loop.begin(); !begun) return begun;
  const auto ended = std::make_shared<Result<Done>>(Done{});
  platform::run_steps([open, ended](platform::Wait wait) {
    const auto goes_on = open->loop->step(wait);
    if (!goes_on) *ended = goes_on.error();
    return goes_on && *goes_on;
  });
  return *ended;
}

}  // namespace mastwise::shell
