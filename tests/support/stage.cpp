#include "tests/support/stage.hpp"

#include "app/service/startup.hpp"
#include "app/shell/sdl_input.hpp"
#include "tests/support/assets.hpp"

#include <map>

#include <catch2/catch.hpp>
#include <imgui.h>

namespace mastwise::test {
namespace {

constexpr milliseconds kFrame{16};
// While nothing moves, the window's loop draws once a second.
constexpr milliseconds kQuietRound{250};
// The tablet's clock at the start of a stage.
constexpr UtcTime kMachineTime{std::chrono::sys_days(std::chrono::year(2026) / 7 / 2) +
                               std::chrono::hours(18)};

// Drawn once for each scale: drawing the letters takes longer than a view.
Result<std::shared_ptr<const ui::Fonts>> fonts_for(float px_per_unit, float letters) {
  static std::map<std::pair<float, float>, std::shared_ptr<const ui::Fonts>> drawn;
  auto& fonts = drawn[{px_per_unit, letters}];
  if (!fonts) {
    auto made = ui::Fonts::load(service::fonts_folder(), px_per_unit, letters);
    if (!made) return made;
    fonts = *std::move(made);
  }
  return fonts;
}

}  // namespace

Stage::Stage(const Screen& screen, std::string data_folder, bool first_start,
             const std::string& publishers_base)
    : clock_(kMachineTime) {
  REQUIRE(SDL_InitSubSystem(SDL_INIT_EVENTS) == 0);
  SDL_FlushEvents(SDL_FIRSTEVENT, SDL_LASTEVENT);
  if (data_folder.empty()) data_folder = own_folder_.emplace().path();
  auto started = shell::Runtime::start(
      {.catalog_path = data_folder + "/catalog",
       .terrain_folder = data_folder + "/terrain",
       .logbook_path = data_folder + "/logbook",
       .import_folders = {data_folder},
       .publishers_base = publishers_base,
       .places = [all = gazetteer()]() -> Result<places::Gazetteer> { return all; },
       .paper_folder = data_folder + "/cards",
       .built = std::chrono::floor<std::chrono::days>(kMachineTime)});
  if (!started) FAIL(started.error().message());
  runtime_ = *std::move(started);
  now_ = began_ = model().now;
  show_on(screen);
  if (model().sheet == Sheet::Start && !first_start) skip_first_start();
}

void Stage::show_on(const Screen& screen) {
  interface_.reset();
  const auto metrics = ui::metrics(screen.width_px, screen.height_px, screen.dots_per_inch);
  auto made = shell::Interface::make(session(), metrics, fonts_for);
  if (!made) FAIL(made.error().message());
  interface_ = *std::move(made);
  settle();
}

void Stage::skip_first_start() {
  const auto& on_board = model().findings.on_board;
  if (!on_board || on_board->count == 0) set(act::SetStop{practice_stop()});
  set(act::OpenSheet{Sheet::None});
}

Stage::~Stage() {
  interface_.reset();
  runtime_.reset();
  SDL_QuitSubSystem(SDL_INIT_EVENTS);
}

void Stage::set(const Action& action) {
  session().act(action);
  settle();
}

void Stage::round() {
  SDL_Event event;
  while (SDL_PollEvent(&event) != 0) {
    shell::give_input(event, *interface_, now_);
  }
  session().act(act::Tick{now_, clock_ + (now_ - began_)});
  session().take_answers();
  picture_ = interface_->frame(now_);
  texts_.reset();
}

const std::vector<PictureText>& Stage::texts() const {
  if (!texts_) texts_ = texts_of(*picture_);
  return *texts_;
}

void Stage::settle() {
  constexpr int kLongest = 1000;
  for (int rounds = 0; rounds < kLongest; ++rounds) {
    round();
    if (!session().finish_errands() && !moving()) return;
    now_ += kFrame;
  }
  FAIL("the picture never comes to rest");
}

void Stage::wait(milliseconds time) {
  const Monotonic until = now_ + time;
  while (now_ < until) {
    round();
    milliseconds pause = moving() ? kFrame : kQuietRound;
    if (const auto due = interface_->due()) pause = std::clamp(*due - now_, kFrame, pause);
    now_ += std::min(pause, until - now_);
  }
  settle();
}

void Stage::late_round(milliseconds time) {
  now_ += time;
  round();
}

void Stage::finger(Uint32 sdl_event, touch::Point place_px, SDL_FingerID id) {
  const ui::Metrics& size = interface_->metrics();
  SDL_Event event{};
  event.tfinger.type = sdl_event;
  event.tfinger.touchId = 1;
  event.tfinger.fingerId = id;
  event.tfinger.x = place_px.x / size.width_px;
  event.tfinger.y = place_px.y / size.height_px;
  event.tfinger.pressure = 1.0f;
  REQUIRE(SDL_PushEvent(&event) == 1);
}

const touch::Target& Stage::target(const std::string& name) const {
  std::string there;
  for (const touch::Target& one : targets().all()) there += "\"" + one.name + "\" ";
  INFO("wanted: \"" << name << "\"; there are: " << there);
  const touch::Target* found = targets().find(name);
  REQUIRE(found != nullptr);
  return *found;
}

touch::Point Stage::middle_of(const std::string& name) const {
  return target(name).visible_px().center();
}

void Stage::tap(const std::string& name) {
  INFO("tapping \"" << name << "\"");
  REQUIRE(target(name).enabled);
  constexpr milliseconds kTapTime{80};
  hold(name, kTapTime);
  ++taps_;
}

void Stage::hold(const std::string& name, milliseconds time) {
  const touch::Point place_px = middle_of(name);
  finger(SDL_FINGERDOWN, place_px);
  for (const Monotonic until = now_ + time; now_ < until; now_ += kFrame) round();
  finger(SDL_FINGERUP, place_px);
  settle();
}

void Stage::tap_at(touch::Point place_px) {
  finger(SDL_FINGERDOWN, place_px);
  round();
  now_ += kFrame;
  finger(SDL_FINGERUP, place_px);
  settle();
  ++taps_;
}

void Stage::confirm() {
  hold("confirm", touch::kHoldToConfirm + milliseconds(100));
  ++taps_;
}

void Stage::tap_keys(std::string_view text) {
  while (!text.empty()) {
    std::size_t bytes = 1;
    while (bytes < text.size() && (static_cast<unsigned char>(text[bytes]) & 0xC0) == 0x80) ++bytes;
    const std::string character(text.substr(0, bytes));
    tap(character == " " ? "key Space" : "key " + character);
    text.remove_prefix(bytes);
  }
}

void Stage::drag(touch::Point from_px, touch::Point to_px, milliseconds time) {
  finger(SDL_FINGERDOWN, from_px);
  const auto steps = static_cast<int>(time / kFrame);
  for (int step = 1; step <= steps; ++step) {
    const float share = static_cast<float>(step) / static_cast<float>(steps);
    round();
    now_ += kFrame;
    finger(SDL_FINGERMOTION, from_px + (to_px - from_px) * share);
  }
  round();
  finger(SDL_FINGERUP, to_px);
  round();
}

void Stage::key_event(Uint32 sdl_event, SDL_Keycode key, bool repeat, Uint16 modifiers) {
  SDL_Event event{};
  event.key.type = sdl_event;
  event.key.state = sdl_event == SDL_KEYDOWN ? SDL_PRESSED : SDL_RELEASED;
  event.key.repeat = repeat ? 1 : 0;
  event.key.keysym.sym = key;
  event.key.keysym.mod = modifiers;
  REQUIRE(SDL_PushEvent(&event) == 1);
}

void Stage::key(SDL_Keycode key, Uint16 modifiers) {
  constexpr milliseconds kPressTime{80};
  key_event(SDL_KEYDOWN, key, false, modifiers);
  for (const Monotonic until = now_ + kPressTime; now_ < until; now_ += kFrame) round();
  key_event(SDL_KEYUP, key, false, modifiers);
  settle();
}

// Systems repeat a held key after 0.5 s, 30 times a second.
void Stage::hold_key(SDL_Keycode key, milliseconds time) {
  constexpr milliseconds kFirstRepeat{500};
  key_event(SDL_KEYDOWN, key);
  const Monotonic began = now_;
  while (now_ < began + time) {
    round();
    now_ += kFrame;
    if (now_ >= began + kFirstRepeat) key_event(SDL_KEYDOWN, key, true);
  }
  round();
  key_event(SDL_KEYUP, key);
  settle();
}

void Stage::type(std::string_view text) {
  for (const char character : text) {
    SDL_Event event{};
    event.text.type = SDL_TEXTINPUT;
    event.text.text[0] = character;
    REQUIRE(SDL_PushEvent(&event) == 1);
    round();
  }
  settle();
}

void Stage::wheel(touch::Point place_px, float notches) {
  SDL_Event event{};
  event.wheel.type = SDL_MOUSEWHEEL;
  event.wheel.mouseX = static_cast<Sint32>(place_px.x);
  event.wheel.mouseY = static_cast<Sint32>(place_px.y);
  event.wheel.preciseY = notches;
  REQUIRE(SDL_PushEvent(&event) == 1);
  settle();
}

std::string Stage::focused() const {
  const touch::Target* target = interface_->focused();
  return target == nullptr ? std::string() : target->name;
}

void Stage::focus(const std::string& name) {
  constexpr int kMost = 400;
  for (int turns = 0; turns < kMost && focused() != name; ++turns) key(SDLK_TAB);
  INFO("wanted: \"" << name << "\"");
  REQUIRE(focused() == name);
}

void Stage::receive(std::string_view bytes) {
  session().act(act::ReceiverBytes{now_, std::string(bytes)});
}

bool Stage::shows(std::string_view text) const {
  for (const PictureText& piece : texts()) {
    if (piece.text == text) return true;
  }
  return false;
}

bool Stage::shows_within(std::string_view text) const {
  return all_text().find(text) != std::string::npos;
}

std::string Stage::all_text() const {
  std::string all;
  for (const PictureText& piece : texts()) all += piece.text + "\n";
  return all;
}

}  // namespace mastwise::test
