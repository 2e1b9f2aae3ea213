#include "app/shell/interface.hpp"

#include "app/screens/screens.hpp"

#include <algorithm>

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

Interface::Interface(Session& session, const ui::Metrics& metrics)
    : session_(session),
      metrics_(metrics),
      context_(ImGui::CreateContext()),
      recogniser_(metrics.px_per_mm),
      targets_(metrics.px_per_mm) {}

Result<std::unique_ptr<Interface>> Interface::make(Session& session, const ui::Metrics& metrics,
                                                   const std::string& fonts_folder) {
  std::unique_ptr<Interface> made(new Interface(session, metrics));
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  ImGui::GetStyle().CircleTessellationMaxError = 0.1f;  // pixels: a dial is round
  io.DisplaySize = {metrics.width_px, metrics.height_px};
  io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
  auto fonts = ui::Fonts::load(*io.Fonts, fonts_folder, metrics.px_per_unit);
  if (!fonts) return fonts.error();
  made->fonts_ = *fonts;
  if (!io.Fonts->Build()) {
    return Error{.what = "the fonts cannot be read", .where = fonts_folder};
  }
  return made;
}

Interface::~Interface() {
  ImGui::DestroyContext(context_);
}

// A finger that comes down on a gliding list only holds it.
void Interface::hold_glides() {
  const auto press = recogniser_.press();
  if (!press) return;
  for (auto& [name, scroll] : motion_.scrolls) {
    if (!scroll.moving()) continue;
    scroll.stop();
    holding_ = true;
  }
}

// A tap belongs to what the last frame showed where the finger went down.
ui::Ui::Input Interface::settle(std::vector<touch::Gesture> gestures) const {
  ui::Ui::Input input;
  for (const touch::Gesture& gesture : gestures) {
    if (gesture.kind != touch::Gesture::Kind::Tap || holding_) continue;
    if (const touch::Target* target = targets_.at(gesture.start_px)) {
      input.tapped.push_back(target->name);
    }
  }
  if (const auto press = recogniser_.press(); press && press->may_be_tap && !holding_) {
    if (const touch::Target* target = targets_.at(press->start_px)) input.pressed = target->name;
  }
  input.gestures = std::move(gestures);
  return input;
}

ImDrawData* Interface::frame(Monotonic now) {
  ImGui::SetCurrentContext(context_);
  ImGui::GetIO().DeltaTime = 1.0f / 60.0f;  // nothing of ours asks the library for the time
  recogniser_.advance(now);
  hold_glides();
  ui::Ui::Input input = settle(recogniser_.take());
  if (recogniser_.fingers_down() == 0) holding_ = false;
  input.seconds = seconds_between(last_frame_, now);
  last_frame_ = now;

  // What was touched changes the model, and the picture must show it at once.
  constexpr int kMostPasses = 4;
  for (int pass = 0; pass < kMostPasses; ++pass) {
    ImGui::NewFrame();
    const ui::Canvas canvas(*ImGui::GetBackgroundDrawList(), fonts_, metrics_.px_per_unit);
    ui::Ui ui(canvas, metrics_, ui::theme(session_.model().settings.night), input, motion_,
              targets_);
    screens::draw_program(ui, session_.model());
    const std::vector<Action> actions = ui.take_actions();
    ImGui::EndFrame();
    if (actions.empty()) break;
    for (const Action& action : actions) session_.act(action);
    input = {};
  }
  ImGui::Render();
  return ImGui::GetDrawData();
}

}  // namespace mastwise::shell
