#pragma once

#include "core/geo/notation_tokens.hpp"
#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace mastwise::notation {

enum class Axis { Latitude, Longitude };

// A hemisphere letter or word, or a label.
struct Side {
  Axis axis;
  bool negative;  // S or W
  std::size_t at;
  std::string_view text;

  bool is_label() const { return text[0] == 'l' || text[0] == 'L'; }
};

// A number of degrees, minutes or seconds, with the mark after it.
struct Part {
  Token number;
  std::optional<Token> mark;
};

// One coordinate as written, not yet checked.
struct Coordinate {
  std::optional<Side> letter;
  std::optional<Side> label;
  std::optional<Token> sign;
  std::vector<Part> parts;
  bool colons = false;

  std::size_t at() const;  // of its first number
};

// Sorts the tokens into all coordinates of the text by the grammar of the degrees notation.
Result<std::vector<Coordinate>> group_coordinates(std::vector<Token> tokens, std::size_t size);

// The position of two coordinates in degrees. `size` is that of the text.
Result<Position> parse_degrees(std::vector<Token> tokens, std::size_t size);

}  // namespace mastwise::notation
