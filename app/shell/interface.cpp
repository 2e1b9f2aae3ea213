#include "app/shell/interface.hpp"

#include "app/session/screens.hpp"
#include "app/words/glossary.hpp"
#include "app/words/language.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include <imgui.h>

namespace mastwise::shell {
namespace {

// How much larger than usual, as far as the screen has room.
float text_factor(TextSize size) {
  constexpr std::array kFactors{1.0f, 1.3f, 1.6f};
  return kFactors[static_cast<std::size_t>(size)];
}

// After a pause the first step of a motion is that of one frame, not of the pause.
float seconds_between(std::optional<Monotonic> before, Monotonic now) {
  constexpr float kLongestStep = 1.0f / 30.0f;
  if (!before) return 0.0f;
  const float seconds = std::chrono::duration<float>(now - *before).count();
  return std::clamp(seconds, 0.0f, kLongestStep);
}

}  // namespace

Interface::Interface(Session& session, const ui::Metrics& metrics)
    : session_(session),
      screen_(metrics),
      metrics_(metrics),
      context_(ImGui::CreateContext()),
      recognizer_(metrics.px_per_mm),
      targets_(metrics.px_per_mm) {}

Result<std::unique_ptr<Interface>> Interface::make(Session& session, const ui::Metrics& metrics,
                                                   const std::string& fonts_folder) {
  std::unique_ptr<Interface> made(new Interface(session, metrics));
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  ImGui::GetStyle().CircleTessellationMaxError = 0.1f;  // pixels: a dial is round
  io.DisplaySize = {metrics.width_px, metrics.height_px};
  io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
  made->fonts_folder_ = fonts_folder;
  made->follow_language();
  made->metrics_ = ui::enlarged(metrics, text_factor(session.model().settings.text_size));
  if (const auto loaded = made->load_letters(); !loaded) return loaded.error();
  return made;
}

Result<Done> Interface::load_letters() {
  ImFontAtlas& letters = *ImGui::GetIO().Fonts;
  letters.Clear();
  letters.SetTexID(nullptr);
  auto fonts = ui::Fonts::load(letters, fonts_folder_, metrics_.px_per_unit);
  if (!fonts) return fonts.error();
  fonts_ = *fonts;
  if (!letters.Build()) return Error{.what = "the fonts cannot be read", .where = fonts_folder_};
  return Done{};
}

// The letters are drawn anew for another text size.
void Interface::follow_text_size() {
  const ui::Metrics wanted =
      ui::enlarged(screen_, text_factor(session_.model().settings.text_size));
  if (wanted == metrics_) return;
  metrics_ = wanted;
  if (const auto loaded = load_letters(); !loaded) {
    session_.act(act::Trouble{loaded.error().message()});
  }
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

// A word of the trade under a finger that is held on it is explained; not over what needs an
// answer.
void Interface::explain_held(const std::vector<touch::Gesture>& gestures) {
  const SafetyState& safety = session_.model().safety;
  if (safety.asking != Asking::Nothing || safety.drive != safety::Drive::Parked) return;
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

bool Interface::began_before_prompt(const touch::Gesture& gesture) const {
  return std::any_of(motion_.prompts.begin(), motion_.prompts.end(), [&](const auto& prompt) {
    return gesture.began < prompt.second.hold.drawn();
  });
}

// A tap hits the target that the last frame showed where the finger went down.
ui::Ui::Input Interface::settle(std::vector<touch::Gesture> gestures, Monotonic now) const {
  ui::Ui::Input input;
  input.now = now;
  input.press = recognizer_.press();
  input.opener_px = opener_px_;
  for (const touch::Gesture& gesture : gestures) {
    if (gesture.kind != touch::Gesture::Kind::Tap || holding_) continue;
    if (began_before_prompt(gesture)) continue;
    if (const touch::Target* target = targets_.at(gesture.start_px)) {
      input.tapped.push_back({target->name, gesture.start_px});
    }
  }
  if (const auto press = recognizer_.press(); press && press->may_be_tap && !holding_) {
    if (const touch::Target* target = targets_.at(press->start_px)) input.pressed = target->name;
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
  explain_held(gestures);
  ui::Ui::Input input = settle(std::move(gestures), now);
  if (recognizer_.fingers_down() == 0) holding_ = false;
  input.seconds = seconds_between(last_frame_, now);
  last_frame_ = now;

  // A touch changes the model, and the picture must show it at once. Each touch hits the screen
  // that the one before it left.
  constexpr std::size_t kMostPasses = 4;
  const auto taps = std::exchange(input.tapped, {});
  for (std::size_t pass = 0; pass < taps.size() + kMostPasses; ++pass) {
    if (pass < taps.size()) input.tapped = {taps[pass]};
    follow_language();
    follow_text_size();
    ImGui::NewFrame();
    texts_.clear();
    const ui::Canvas canvas(*ImGui::GetBackgroundDrawList(), fonts_, metrics_.px_per_unit, texts_);
    ui::Ui ui(canvas, metrics_, session_.model().findings.look, input, motion_, targets_);
    screens::draw_program(ui, session_.model());
    const std::vector<Action> actions = ui.take_actions();
    ImGui::EndFrame();
    if (actions.empty() && pass + 1 >= taps.size()) break;
    for (const Action& action : actions) session_.act(action);
    if (pass < taps.size() && !actions.empty()) opener_px_ = taps[pass].start_px;
    const auto press = input.press;
    input = {};
    input.now = now;
    input.press = press;
    input.opener_px = opener_px_;
  }
  ImGui::Render();
  return ImGui::GetDrawData();
}

}  // namespace mastwise::shell
