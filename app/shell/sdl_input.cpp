#include "app/shell/sdl_input.hpp"

namespace mastwise::shell {
namespace {

using Kind = touch::PointerEvent::Kind;

void give_finger(const SDL_TouchFingerEvent& finger, Kind kind, Interface& interface,
                 Monotonic now) {
  const ui::Metrics& size = interface.metrics();
  interface.feed(touch::PointerEvent{.kind = kind,
                                     .finger = finger.fingerId,
                                     .x_px = finger.x * size.width_px,
                                     .y_px = finger.y * size.height_px,
                                     .at = now});
}

// A real mouse; SDL's mouse echo of a finger is not one.
bool give_mouse(Uint32 which, Kind kind, int x, int y, Interface& interface, Monotonic now) {
  if (which == SDL_TOUCH_MOUSEID) return false;
  interface.feed(touch::PointerEvent{.kind = kind,
                                     .finger = touch::kMouse,
                                     .x_px = static_cast<float>(x),
                                     .y_px = static_cast<float>(y),
                                     .at = now});
  return true;
}

bool give_wheel(const SDL_MouseWheelEvent& wheel, Interface& interface, Monotonic now) {
  interface.feed(touch::WheelEvent{.x_px = static_cast<float>(wheel.mouseX),
                                   .y_px = static_cast<float>(wheel.mouseY),
                                   .notches = wheel.preciseY,
                                   .at = now});
  return true;
}

// A real keyboard types into the keypad, and into the search when none is open.
bool give_text(const char* text, Session& session) {
  const Model& model = session.model();
  if (!model.keypad && model.place == Place::Stations) {
    session.act(act::OpenKeypad{KeypadPurpose::Search});
  }
  session.act(act::KeypadType{text});
  return true;
}

bool give_key(SDL_Keycode key, Session& session) {
  switch (key) {
    case SDLK_BACKSPACE:
      session.act(act::KeypadErase{});
      return true;
    case SDLK_RETURN:
    case SDLK_KP_ENTER:
      session.act(act::KeypadAccept{});
      return true;
    case SDLK_ESCAPE:
      session.act(act::KeypadClose{});
      return true;
    default:
      return false;
  }
}

}  // namespace

bool give_input(const SDL_Event& event, Interface& interface, Session& session, Monotonic now) {
  switch (event.type) {
    case SDL_FINGERDOWN:
      give_finger(event.tfinger, Kind::Down, interface, now);
      return true;
    case SDL_FINGERMOTION:
      give_finger(event.tfinger, Kind::Move, interface, now);
      return true;
    case SDL_FINGERUP:
      give_finger(event.tfinger, Kind::Up, interface, now);
      return true;
    case SDL_MOUSEBUTTONDOWN:
    case SDL_MOUSEBUTTONUP:
      if (event.button.button != SDL_BUTTON_LEFT) return false;
      return give_mouse(event.button.which,
                        event.type == SDL_MOUSEBUTTONDOWN ? Kind::Down : Kind::Up, event.button.x,
                        event.button.y, interface, now);
    case SDL_MOUSEMOTION:
      if ((event.motion.state & SDL_BUTTON_LMASK) == 0) return false;
      return give_mouse(event.motion.which, Kind::Move, event.motion.x, event.motion.y, interface,
                        now);
    case SDL_MOUSEWHEEL:
      return give_wheel(event.wheel, interface, now);
    case SDL_TEXTINPUT:
      return give_text(event.text.text, session);
    case SDL_KEYDOWN:
      return give_key(event.key.keysym.sym, session);
    case SDL_WINDOWEVENT:
      if (event.window.event == SDL_WINDOWEVENT_FOCUS_LOST) interface.cancel_touches(now);
      return false;
    default:
      return false;
  }
}

}  // namespace mastwise::shell
