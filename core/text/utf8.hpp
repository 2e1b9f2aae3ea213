#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace mastwise {

// Number of bytes of the text's first UTF-8 character (RFC 3629); 0 if there is none.
std::size_t utf8_length(std::string_view text);

bool is_utf8(std::string_view text);

// Appends a character, at most U+10FFFF and no surrogate, as UTF-8.
void append_utf8(char32_t character, std::string& text);

}  // namespace mastwise
