#pragma once

#include "core/geo/notation_tokens.hpp"
#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace mastwise::notation {

// The position of an MGRS reference; std::nullopt if the text does not have the shape of one (a
// zone and three letters, or at the poles three letters of which the first is A, B, Y or Z; then
// digits).
std::optional<Result<Position>> parse_mgrs(std::string_view text);

// The position of a UTM or UPS reference; std::nullopt if the tokens do not have the shape of one
// (a zone before or after, and a number of 1,000 or more). `size` is that of the text.
std::optional<Result<Position>> parse_utm_ups(std::vector<Token> tokens, std::size_t size);

}  // namespace mastwise::notation
