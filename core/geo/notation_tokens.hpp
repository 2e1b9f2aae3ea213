#pragma once

#include "core/result.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::notation {

// A piece of a written position.
struct Token {
  enum class Kind {
    Number,
    Word,  // Latin letters, not yet understood
    Minus,
    Plus,
    Break,  // comma or semicolon
    Colon,  // also =
    Degree,
    Minute,
    Second,
  };
  Kind kind;
  std::size_t at;         // the first byte in the text
  std::string_view text;  // as written
  double value = 0.0;     // of a Number, not negative
  bool fraction = false;  // the Number has digits after its point

  std::size_t end() const { return at + text.size(); }
  bool is(Kind other) const { return kind == other; }
};

// The meaning of a comma between two digits.
enum class Comma { Separates, Decimal };

// The meaning of the text's commas between digits: Decimal if there is no point and each of two
// numbers has one comma. The error describes a text that can be read in two ways.
Result<Comma> meaning_of_commas(std::string_view text);

// The text's pieces without spaces. The error points at a character that no notation uses.
Result<std::vector<Token>> tokenize(std::string_view text, Comma comma);

// ASCII, independent of the locale.
bool is_digit(char character);
bool is_letter(char character);
std::string lower(std::string_view text);
std::string upper(std::string_view text);

// The number of bytes of the space at `at` of the text, or 0. Includes the no-break spaces.
std::size_t space_size(std::string_view text, std::size_t at);

Error error_at(std::size_t character, std::string what, std::string remedy);

}  // namespace mastwise::notation
