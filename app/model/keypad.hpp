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

// Puts what was typed for a field into the form.
Result<Done> fill(Form& form, const Keypad& keypad);

}  // namespace mastwise
