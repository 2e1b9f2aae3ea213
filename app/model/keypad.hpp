#pragma once

#include "app/model/model.hpp"

#include <string_view>

namespace mastwise {

// Adds what a key writes. A text grown beyond any position or name takes no more.
void type(Keypad& keypad, std::string_view text);

// Takes the last character off, however many bytes it has.
void erase_last(Keypad& keypad);

// The heading that was typed: degrees within 0 to 360, from the north that the keypad shows.
Result<ReadHeading> read_heading(const Keypad& keypad);

// Whether a position is typed: for the stop, or into a field.
bool types_position(const Keypad& keypad);
// Whether so far a place's name is typed instead: letters, and no figure as any position has.
bool types_name(const Keypad& keypad);

// Puts the number that was typed for a field into the form.
Result<Done> fill(Form& form, const Keypad& keypad);

}  // namespace mastwise
