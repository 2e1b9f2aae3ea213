#include "app/shell/sdl_input.hpp"

#include <optional>

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

// SDL gives a mouse's place in the window's points, of which one may have several pixels.
float pixels_a_point(Uint32 window_id) {
  SDL_Window* const window = SDL_GetWindowFromID(window_id);
  if (window == nullptr) return 1.0f;
  int points = 0, pixels = 0;
  SDL_GetWindowSize(window, &points, nullptr);
  SDL_GL_GetDrawableSize(window, &pixels, nullptr);
  return points > 0 && pixels > 0 ? static_cast<float>(pixels) / static_cast<float>(points) : 1.0f;
}

// A real mouse; SDL's mouse echo of a finger is not one.
template <class MouseEvent>
bool give_mouse(const MouseEvent& mouse, Kind kind, Interface& interface, Monotonic now) {
  if (mouse.which == SDL_TOUCH_MOUSEID) return false;
  const float scale = pixels_a_point(mouse.windowID);
  interface.feed(touch::PointerEvent{.kind = kind,
                                     .finger = touch::kMouse,
                                     .x_px = static_cast<float>(mouse.x) * scale,
                                     .y_px = static_cast<float>(mouse.y) * scale,
                                     .at = now});
  return true;
}

bool give_wheel(const SDL_MouseWheelEvent& wheel, Interface& interface, Monotonic now) {
  const float scale = pixels_a_point(wheel.windowID);
  interface.feed(touch::WheelEvent{.x_px = static_cast<float>(wheel.mouseX) * scale,
                                   .y_px = static_cast<float>(wheel.mouseY) * scale,
                                   .notches = wheel.preciseY,
                                   .at = now});
  return true;
}

std::optional<touch::Key> key_of(const SDL_Keysym& key) {
  using touch::Key;
  switch (key.sym) {
    case SDLK_TAB:
      return (key.mod & KMOD_SHIFT) != 0 ? Key::Previous : Key::Next;
    case SDLK_LEFT:
      return Key::Left;
    case SDLK_RIGHT:
      return Key::Right;
    case SDLK_UP:
      return Key::Up;
    case SDLK_DOWN:
      return Key::Down;
    case SDLK_RETURN:
    case SDLK_KP_ENTER:
    case SDLK_SELECT:
    case SDLK_SPACE:
      return Key::Press;
    case SDLK_ESCAPE:
    case SDLK_AC_BACK:
      return Key::Back;
    case SDLK_PAGEUP:
      return Key::PageUp;
    case SDLK_PAGEDOWN:
      return Key::PageDown;
    default:
      return std::nullopt;
  }
}

bool give_key(const SDL_KeyboardEvent& event, Interface& interface, bool types, Monotonic now) {
  const bool up = event.type == SDL_KEYUP;
  if (event.keysym.sym == SDLK_BACKSPACE && !up) {
    interface.erase();
    return true;
  }
  // On a keypad the space bar types a space.
  if (event.keysym.sym == SDLK_SPACE && types && !up) return false;
  const auto key = key_of(event.keysym);
  if (!key) return false;
  using Kind = touch::KeyEvent::Kind;
  const Kind kind = up ? Kind::Up : event.repeat != 0 ? Kind::Repeat : Kind::Down;
  interface.feed(touch::KeyEvent{*key, kind, now});
  return true;
}

}  // namespace

bool give_input(const SDL_Event& event, Interface& interface, Monotonic now) {
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
      return give_mouse(event.button, event.type == SDL_MOUSEBUTTONDOWN ? Kind::Down : Kind::Up,
                        interface, now);
    case SDL_MOUSEMOTION:
      if ((event.motion.state & SDL_BUTTON_LMASK) == 0) return false;
      return give_mouse(event.motion, Kind::Move, interface, now);
    case SDL_MOUSEWHEEL:
      return give_wheel(event.wheel, interface, now);
    case SDL_TEXTINPUT:
      interface.type(event.text.text);
      return true;
    case SDL_KEYDOWN:
    case SDL_KEYUP:
      return give_key(event.key, interface, interface.types(), now);
    case SDL_WINDOWEVENT:
      if (event.window.event == SDL_WINDOWEVENT_FOCUS_LOST) interface.cancel_touches(now);
      return false;
    default:
      return false;
  }
}

}  // namespace mastwise::shell
