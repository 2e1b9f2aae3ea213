#pragma once

#include <cstddef>
#include <string_view>

namespace mastwise {

// Bytes of the UTF-8 character that the text begins with (RFC 3629); 0 when there is none.
std::size_t utf8_length(std::string_view text);

bool is_utf8(std::string_view text);

}  // namespace mastwise
