#pragma once

#include "app/keypad/state.hpp"
#include "app/shared/stop.hpp"

#include <string_view>

namespace mastwise {

// Adds a key's text, up to the length of the longest position or name.
void type(Keypad& keypad, std::string_view text);

// Removes the last character, which may have several bytes.
void erase_last(Keypad& keypad);

// The heading that was typed: degrees within 0 to 360, from the north that the keypad shows.
Result<ReadHeading> read_heading(const Keypad& keypad);

// Whether the keypad takes a position, for the stop or a field.
bool types_position(const Keypad& keypad);
// Whether the text is a place name: letters without digits.
bool types_name(const Keypad& keypad);

// Puts the number that was typed for a field into the form.
Result<Done> fill(Form& form, const Keypad& keypad);

}  // namespace mastwise
