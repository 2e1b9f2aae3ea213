#pragma once

#include "core/geo/degrees_notation.hpp"

#include <vector>

namespace mastwise::notation {

// A token whose words are understood.
struct Item {
  enum class Kind { Piece, Side, Label };
  Kind kind;
  Token token;
  Side side;  // of a Side or Label

  bool is(Token::Kind piece) const { return kind == Kind::Piece && token.kind == piece; }
};

// Understands the words: hemispheres, the labels lat and lon, the marks d m s, deg min sec. A
// hyphen between two digits becomes a colon if a letter gives the side. The error points at an
// unknown word.
Result<std::vector<Item>> understand_words(const std::vector<Token>& tokens);

}  // namespace mastwise::notation
