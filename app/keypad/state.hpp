#pragma once

#include "app/shared/form.hpp"
#include "app/shared/navigation.hpp"
#include "core/result.hpp"

#include <optional>
#include <string>

namespace mastwise {

struct Keypad {
  KeypadPurpose purpose = KeypadPurpose::Position;
  Field field = {};  // which, where the purpose is a field
  std::string text = {};
  bool letters = false;             // the page of letters in place of figures
  bool magnetic = true;             // Nose: the typed heading is from a compass
  std::optional<Error> error = {};  // why the accepted text is wrong
  bool operator==(const Keypad&) const = default;
};
using KeypadState = std::optional<Keypad>;  // empty: closed

}  // namespace mastwise
