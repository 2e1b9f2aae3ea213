#pragma once

#include "app/session/action.hpp"
#include "app/shell/session.hpp"
#include "app/touch/keys.hpp"
#include "app/touch/recognizer.hpp"
#include "app/touch/targets.hpp"
#include "app/ui/ui.hpp"

#include <memory>
#include <string>

struct ImDrawData;
struct ImGuiContext;

namespace mastwise::shell {

// A screen with texts of the size in the settings, as far as it has room.
ui::Metrics metrics_for(const Settings& settings, const ui::Metrics& screen);

// The touch interface without a window: fingers in, pictures out. The recognizer is the only thing
// that feeds it. The interface thread only, one at a time (Dear ImGui has one current context, and
// the words have one language).
class Interface {
 public:
  static Result<std::unique_ptr<Interface>> make(Session& session, const ui::Metrics& metrics,
                                                 ui::LoadFonts load_fonts);
  ~Interface();
  Interface(const Interface&) = delete;
  Interface& operator=(const Interface&) = delete;

  void feed(const touch::PointerEvent& event);
  void feed(const touch::WheelEvent& event) { recognizer_.feed(event); }
  void feed(const touch::KeyEvent& event) { keys_.feed(event); }
  // Text of a keyboard goes to the keypad, or opens the search of stations; not through a prompt
  // and not while driving.
  void type(const std::string& text);
  void erase();
  // Text would go to the open keypad.
  bool types() const;
  void cancel_touches(Monotonic now);

  // Draws until all touches are handled. The data is valid until the next frame.
  ImDrawData* frame(Monotonic now);

  // The background color of the picture.
  ui::Color ground() const { return ui::theme(session_.model().findings.look).paper; }

  // The bitmaps of the last frame's draw data, by the names in its commands.
  const ui::Bitmaps& bitmaps() const { return motion_.bitmaps; }

  // Something still moves: the next frame should follow at once.
  bool moving() const { return motion_.moving || keys_.waiting(); }
  // The time of the next frame if nothing happens, if any.
  std::optional<Monotonic> due() const;

  // The target with the focus of keys, if that is shown.
  const touch::Target* focused() const { return keys_.focused(targets_); }

  // The targets of the last frame.
  const touch::Targets& targets() const { return targets_; }
  // Its texts.
  const std::vector<ui::DrawnText>& texts() const { return texts_; }
  const ui::Metrics& metrics() const { return metrics_; }
  // The screen that it was made for.
  const ui::Metrics& screen() const { return screen_; }

 private:
  Interface(Session& session, const ui::Metrics& metrics, ui::LoadFonts load_fonts,
            std::shared_ptr<const ui::Fonts> fonts);
  bool hold_glide(touch::Point place_px);
  void hold_glides(std::vector<touch::Gesture>& gestures);
  ui::Ui::Input settle(std::vector<touch::Gesture> gestures, Monotonic now) const;
  void turn_knob(std::vector<touch::Gesture>& gestures);
  bool may_explain() const;
  void explain_held(const std::vector<touch::Gesture>& gestures);
  void explain_focused(const std::string& target);
  void use(const touch::KeyAct& act, ui::Ui::Input& input);
  bool reveal_focus();
  std::optional<touch::Recognizer::Press> press_now() const;
  std::string pressed_now() const;
  bool may_type() const;
  void follow_text_size();
  void follow_language();
  bool began_before_prompt(Monotonic began) const;

  Session& session_;
  const ui::Metrics screen_;  // at the usual text size
  ui::Metrics metrics_;
  ui::LoadFonts load_fonts_;
  std::shared_ptr<const ui::Fonts> fonts_;
  ImGuiContext* context_;
  touch::Recognizer recognizer_;
  touch::Keys keys_;
  touch::Targets targets_;
  ui::Motion motion_;
  std::vector<ui::DrawnText> texts_;       // of the last frame
  std::optional<touch::Point> opener_px_;  // where the last acting finger went down
  std::optional<Monotonic> last_frame_;
  bool holding_ = false;  // the finger now down stopped a gliding list
};

}  // namespace mastwise::shell
