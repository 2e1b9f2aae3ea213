#include "app/shell/interface.hpp"

#include "app/session/screens.hpp"
#include "app/words/glossary.hpp"
#include "app/words/language.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <imgui.h>

namespace mastwise::shell {
namespace {

// After a pause the first step of a motion is that of one frame, not of the pause.
float seconds_between(std::optional<Monotonic> before, Monotonic now) {
  constexpr float kLongestStep = 1.0f / 30.0f;
  if (!before) return 0.0f;
  const float seconds = std::chrono::duration<float>(now - *before).count();
  return std::clamp(seconds, 0.0f, kLongestStep);
}

}  // namespace

ui::Metrics metrics_for(const Settings& settings, const ui::Metrics& screen) {
  constexpr std::array kFactors{1.0f, 1.3f, 1.6f};
  return ui::enlarged(screen, kFactors[static_cast<std::size_t>(settings.text_size)]);
}

Interface::Interface(Session& session, const ui::Metrics& metrics, ui::LoadFonts load_fonts,
                     std::shared_ptr<const ui::Fonts> fonts)
    : session_(session),
      screen_(metrics),
      metrics_(metrics_for(session.model().settings, metrics)),
      load_fonts_(std::move(load_fonts)),
      fonts_(std::move(fonts)),
      context_(ImGui::CreateContext(&fonts_->atlas())),
      recognizer_(metrics.px_per_mm),
      targets_(metrics.px_per_mm) {}

Result<std::unique_ptr<Interface>> Interface::make(Session& session, const ui::Metrics& metrics,
                                                   ui::LoadFonts load_fonts) {
  auto fonts = [&] {
    const ui::Metrics larger = metrics_for(session.model().settings, metrics);
    return load_fonts(larger.px_per_unit, larger.letters);
  }();
  if (!fonts) return fonts.error();
  std::unique_ptr<Interface> made(
      new Interface(session, metrics, std::move(load_fonts), *std::move(fonts)));
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  ImGui::GetStyle().CircleTessellationMaxError = 0.1f;  // pixels: a dial is round
  io.DisplaySize = {metrics.width_px, metrics.height_px};
  io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
  made->follow_language();
  return made;
}

// The letters are drawn anew for another text size.
void Interface::follow_text_size() {
  const ui::Metrics wanted = metrics_for(session_.model().settings, screen_);
  if (wanted == metrics_) return;
  metrics_ = wanted;
  auto fonts = load_fonts_(metrics_.px_per_unit, metrics_.letters);
  if (!fonts) {
    session_.act(act::Trouble{fonts.error().message()});
    return;
  }
  fonts_ = *std::move(fonts);
  ImGui::GetIO().Fonts = &fonts_->atlas();
}

// The model's words are made again in another language.
void Interface::follow_language() {
  const Language wanted = session_.model().settings.language;
  if (wanted == words::language()) return;
  words::use_language(wanted);
  session_.derive_again();
}

Interface::~Interface() {
  words::use_language(Language::English);
  ImGui::DestroyContext(context_);
}

// Stops the list that glides under a finger; false if none does.
bool Interface::hold_glide(touch::Point place_px) {
  bool held = false;
  for (auto& [name, list] : motion_.lists) {
    if (!list.scroll.moving() || !list.view_px.contains(place_px)) continue;
    list.scroll.stop();
    held = true;
  }
  return held;
}

// A finger that comes down on a gliding list only stops it, even if it has lifted since.
void Interface::hold_glides(std::vector<touch::Gesture>& gestures) {
  if (const auto press = recognizer_.press(); press && hold_glide(press->start_px)) holding_ = true;
  const auto only_holds = [this](const touch::Gesture& gesture) {
    return gesture.kind == touch::Gesture::Kind::Tap && hold_glide(gesture.start_px);
  };
  gestures.erase(std::remove_if(gestures.begin(), gestures.end(), only_holds), gestures.end());
}

// Not over what needs an answer.
bool Interface::may_explain() const {
  const SafetyState& safety = session_.model().safety;
  return safety.asking == Asking::Nothing && safety.drive == safety::Drive::Parked;
}

// A word of the trade under a finger that is held on it is explained.
void Interface::explain_held(const std::vector<touch::Gesture>& gestures) {
  if (!may_explain()) return;
  for (const touch::Gesture& gesture : gestures) {
    if (gesture.kind != touch::Gesture::Kind::LongPress ||
        gesture.phase != touch::Gesture::Phase::Begin) {
      continue;
    }
    const touch::Point place{gesture.start_px.x / metrics_.px_per_unit,
                             gesture.start_px.y / metrics_.px_per_unit};
    for (const ui::DrawnText& text : texts_) {
      if (!text.rect.contains(place)) continue;
      const std::string term = words::term_in(text.text);
      if (!term.empty()) session_.act(act::Explain{term});
    }
  }
}

// The same for a key that is held: a word on the focused target, else the first of the screen.
void Interface::explain_focused(const std::string& name) {
  if (!may_explain()) return;
  const touch::Target* target = focused();
  std::string elsewhere, here;
  for (const ui::DrawnText& text : texts_) {
    const std::string term = words::term_in(text.text);
    if (term.empty()) continue;
    const touch::Point middle_px = text.rect.center() * metrics_.px_per_unit;
    const bool on_target =
        target != nullptr && target->name == name && target->visible_px().contains(middle_px);
    std::string& found = on_target ? here : elsewhere;
    if (found.empty()) found = term;
  }
  const std::string& term = here.empty() ? elsewhere : here;
  if (!term.empty()) session_.act(act::Explain{term});
}

bool Interface::began_before_prompt(Monotonic began) const {
  return std::any_of(motion_.prompts.begin(), motion_.prompts.end(),
                     [&](const auto& prompt) { return began < prompt.second.hold.drawn(); });
}

void Interface::feed(const touch::PointerEvent& event) {
  if (event.kind == touch::PointerEvent::Kind::Down) keys_.hide();
  recognizer_.feed(event);
}

void Interface::cancel_touches(Monotonic now) {
  recognizer_.cancel_all(now);
  keys_.cancel();
}

std::optional<Monotonic> Interface::due() const {
  const auto finger = recognizer_.long_press_due(), key = keys_.hold_due();
  if (finger && key) return std::min(*finger, *key);
  return finger ? finger : key;
}

// Text cannot reach what a cover hides.
bool Interface::may_type() const {
  const Model& model = session_.model();
  return may_explain() && !model.safety.roof && model.explained.empty();
}

bool Interface::types() const {
  return may_type() && session_.model().keypad.has_value();
}

void Interface::type(const std::string& text) {
  if (!may_type()) return;
  if (!session_.model().keypad) {
    const bool searches =
        session_.model().place == Place::Stations && session_.model().sheet == Sheet::None;
    if (!searches || text == " ") return;
    session_.act(act::OpenKeypad{KeypadPurpose::Search});
  }
  session_.act(act::KeypadType{text});
  // Return then takes what was typed.
  keys_.wish_for({"key Use it", "key Done", "place 1"});
}

void Interface::erase() {
  if (types()) session_.act(act::KeypadErase{});
}

// A wheel where nothing scrolls moves the focus: so do the knobs of head units.
void Interface::turn_knob(std::vector<touch::Gesture>& gestures) {
  const auto scrolls = [&](touch::Point place) {
    const bool list = std::any_of(motion_.lists.begin(), motion_.lists.end(), [&](const auto& one) {
      return one.second.scroll.greatest_px() > 0.0f && one.second.view_px.contains(place);
    });
    const auto there = targets_.focusable();
    return list || std::any_of(there.begin(), there.end(), [&](const touch::Target* target) {
             return target->for_keys == touch::Target::ForKeys::Field &&
                    target->rect_px.contains(place);
           });
  };
  for (const touch::Gesture& gesture : gestures) {
    if (gesture.kind != touch::Gesture::Kind::Wheel || scrolls(gesture.start_px)) continue;
    const touch::Key key = gesture.notches < 0.0f ? touch::Key::Next : touch::Key::Previous;
    const auto notches = std::max(1L, std::lround(std::fabs(gesture.notches)));
    for (long i = 0; i < notches; ++i) {
      keys_.feed(touch::KeyEvent{key, touch::KeyEvent::Kind::Down, gesture.at});
    }
  }
}

void Interface::use(const touch::KeyAct& act, ui::Ui::Input& input) {
  using Kind = touch::KeyAct::Kind;
  const touch::Target* target = focused();
  const bool field = target != nullptr && target->name == act.target &&
                     target->for_keys == touch::Target::ForKeys::Field;
  if (field) {
    input.steer = act;
  } else if (act.kind == Kind::Tap) {
    if (!began_before_prompt(act.began)) input.tapped = {{act.target, act.place_px}};
  } else if (act.kind == Kind::Hold) {
    explain_focused(act.target);
  } else if (act.kind == Kind::Scroll) {
    ui::Motion::List& list = motion_.lists[act.target];
    list.scroll.drag(-act.views * list.view_px.height());
  }
}

// True if that moved its list: the picture must be drawn again.
bool Interface::reveal_focus() {
  if (!keys_.take_moved()) return false;
  const touch::Target* target = focused();
  if (target == nullptr || target->scrolls_in.empty()) return false;
  ui::Motion::List& list = motion_.lists[target->scrolls_in];
  return list.scroll.reveal(target->rect_px.top, target->rect_px.bottom, list.view_px.top,
                            list.view_px.bottom);
}

std::optional<touch::Recognizer::Press> Interface::press_now() const {
  const auto finger = recognizer_.press();
  return finger ? finger : keys_.press(targets_);
}

// The target under a finger that may yet tap, or under a pressed key.
std::string Interface::pressed_now() const {
  const auto press = press_now();
  if (!press || !press->may_be_tap || holding_) return {};
  if (!recognizer_.press()) return focused()->name;
  const touch::Target* target = targets_.at(press->start_px);
  return target == nullptr ? std::string() : target->name;
}

// A tap hits the target that the last frame showed where the finger went down.
ui::Ui::Input Interface::settle(std::vector<touch::Gesture> gestures, Monotonic now) const {
  ui::Ui::Input input;
  input.now = now;
  input.opener_px = opener_px_;
  for (const touch::Gesture& gesture : gestures) {
    if (gesture.kind != touch::Gesture::Kind::Tap || holding_) continue;
    if (began_before_prompt(gesture.began)) continue;
    if (const touch::Target* target = targets_.at(gesture.start_px)) {
      input.tapped.push_back({target->name, gesture.start_px});
    }
  }
  input.gestures = std::move(gestures);
  return input;
}

ImDrawData* Interface::frame(Monotonic now) {
  ImGui::SetCurrentContext(context_);
  ImGui::GetIO().DeltaTime = 1.0f / 60.0f;  // our code never reads the library's time
  recognizer_.advance(now);
  std::vector<touch::Gesture> gestures = recognizer_.take();
  hold_glides(gestures);
  turn_knob(gestures);
  explain_held(gestures);
  ui::Ui::Input input = settle(std::move(gestures), now);
  if (recognizer_.fingers_down() == 0) holding_ = false;
  input.seconds = seconds_between(last_frame_, now);
  last_frame_ = now;

  // A touch or a key changes the model, and the picture must show it at once. Each hits the screen
  // that the one before it left.
  constexpr std::size_t kMostPasses = 6, kToSettle = 2;
  const auto taps = std::exchange(input.tapped, {});
  for (std::size_t pass = 0; pass < taps.size() + kMostPasses; ++pass) {
    if (pass < taps.size()) {
      input.tapped = {taps[pass]};
    } else if (pass + kToSettle < taps.size() + kMostPasses) {
      if (const auto act = keys_.take(targets_, now)) use(*act, input);
    }
    input.press = press_now();
    input.pressed = pressed_now();
    follow_language();
    follow_text_size();
    ImGui::NewFrame();
    texts_.clear();
    const ui::Canvas canvas(*ImGui::GetBackgroundDrawList(), *fonts_, metrics_.px_per_unit, texts_);
    input.steered = keys_.steered();
    ui::Ui ui(canvas, metrics_, session_.model().findings.look, input, motion_, targets_);
    screens::draw_program(ui, session_.model());
    keys_.follow(targets_);
    const bool revealed = reveal_focus();
    ui.draw_focus(focused());
    const std::vector<Action> actions = ui.take_actions();
    ImGui::EndFrame();
    const bool all_used = pass + 1 >= taps.size() && !keys_.waiting();
    if (actions.empty() && all_used && !revealed) break;
    for (const Action& action : actions) session_.act(action);
    if (!input.tapped.empty() && !actions.empty()) opener_px_ = input.tapped.front().start_px;
    input = {};
    input.now = now;
    input.opener_px = opener_px_;
  }
  ImGui::Render();
  return ImGui::GetDrawData();
}

}  // namespace mastwise::shell
