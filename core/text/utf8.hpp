#pragma once

#include <cstddef>
#include <string_view>

namespace mastwise {

// Number of bytes of the text's first UTF-8 character (RFC 3629); 0 if there is none.
std::size_t utf8_length(std::string_view text);

bool is_utf8(std::string_view text);

}  // namespace mastwise
