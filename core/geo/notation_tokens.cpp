#include "core/geo/notation_tokens.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace mastwise::notation {
namespace {

using Kind = Token::Kind;

struct Symbol {
  std::string_view text;
  Kind kind;
};

// Longer texts come before their beginnings.
constexpr std::array kSymbols = {Symbol{"''", Kind::Second},
                                 Symbol{"\u2032\u2032", Kind::Second},
                                 Symbol{"\u2019\u2019", Kind::Second},
                                 Symbol{"\"", Kind::Second},
                                 Symbol{"\u2033", Kind::Second},
                                 Symbol{"\u201D", Kind::Second},
                                 Symbol{"\u201C", Kind::Second},
                                 Symbol{"\u02BA", Kind::Second},
                                 Symbol{"'", Kind::Minute},
                                 Symbol{"\u2032", Kind::Minute},
                                 Symbol{"\u2019", Kind::Minute},
                                 Symbol{"\u2018", Kind::Minute},
                                 Symbol{"\u00B4", Kind::Minute},
                                 Symbol{"`", Kind::Minute},
                                 Symbol{"\u02B9", Kind::Minute},
                                 Symbol{"\u00B0", Kind::Degree},
                                 Symbol{"\u00BA", Kind::Degree},
                                 Symbol{"\u02DA", Kind::Degree},
                                 Symbol{"*", Kind::Degree},
                                 Symbol{"-", Kind::Minus},
                                 Symbol{"\u2212", Kind::Minus},
                                 Symbol{"\u2013", Kind::Minus},
                                 Symbol{"\u2010", Kind::Minus},
                                 Symbol{"\u2011", Kind::Minus},
                                 Symbol{"+", Kind::Plus},
                                 Symbol{",", Kind::Break},
                                 Symbol{";", Kind::Break},
                                 Symbol{":", Kind::Colon},
                                 Symbol{"=", Kind::Colon}};

constexpr std::array<std::string_view, 8> kSpaces = {" ",      "\t",     "\n",     "\r",
                                                     "\u00A0", "\u2009", "\u202F", "\uFEFF"};

bool starts_at(std::string_view text, std::size_t at, std::string_view piece) {
  return text.substr(at, piece.size()) == piece;
}

bool comma_between_digits(std::string_view text, std::size_t at) {
  return text[at] == ',' && at > 0 && at + 1 < text.size() && is_digit(text[at - 1]) &&
         is_digit(text[at + 1]);
}

std::ptrdiff_t count_numbers(std::string_view text) {
  std::ptrdiff_t count = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (is_digit(text[i]) && (i == 0 || !is_digit(text[i - 1]))) ++count;
  }
  return count;
}

// The character at `at` in printable form: itself, or its byte if it is not UTF-8.
std::string shown(std::string_view text, std::size_t at) {
  const auto first = static_cast<unsigned char>(text[at]);
  if (first >= 0x20 && first < 0x7F) return std::string(1, text[at]);
  const std::size_t size = first >= 0xF0 && first < 0xF5   ? 4
                           : first >= 0xE0 && first < 0xF0 ? 3
                           : first >= 0xC2 && first < 0xE0 ? 2
                                                           : 1;
  const std::string_view bytes = text.substr(at, size);
  const bool whole = bytes.size() == size && size > 1 &&
                     std::all_of(bytes.begin() + 1, bytes.end(), [](char byte) {
                       return (static_cast<unsigned char>(byte) & 0xC0) == 0x80;
                     });
  return whole ? std::string(bytes) : fmt::format("byte {:02X}", first);
}

// Reads digits with one point from `at`. The digits are gathered as a whole number and divided
// once, which gives the nearest double for as many digits as a double has, in any locale.
Result<Token> read_number(std::string_view text, std::size_t at, Comma comma) {
  constexpr double kFull = 1e15;
  double digits = 0.0;
  int scale = 0;
  bool point = false;
  std::size_t end = at;
  for (; end < text.size(); ++end) {
    const bool decimal_comma = comma == Comma::Decimal && comma_between_digits(text, end);
    if (text[end] == '.' || decimal_comma) {
      if (point) return error_at(end, "a number has a second point", "write one point in a number");
      point = true;
    } else if (!is_digit(text[end])) {
      break;
    } else if (digits < kFull) {
      digits = digits * 10.0 + (text[end] - '0');
      if (point) ++scale;
    } else if (!point) {
      return error_at(at, "this number is too long", "write degrees, or meters of a grid");
    }
  }
  const std::string_view written = text.substr(at, end - at);
  if (written == ".") return error_at(at, "a point has no digits", "write a number");
  return Token{.kind = Kind::Number,
               .at = at,
               .text = written,
               .value = digits / std::pow(10.0, scale),
               .fraction = point && written.back() != '.'};
}

Token read_word(std::string_view text, std::size_t at) {
  std::size_t end = at;
  while (end < text.size() && is_letter(text[end])) ++end;
  return Token{.kind = Kind::Word, .at = at, .text = text.substr(at, end - at)};
}

std::optional<Token> read_symbol(std::string_view text, std::size_t at) {
  for (const Symbol& symbol : kSymbols) {
    if (starts_at(text, at, symbol.text)) {
      return Token{.kind = symbol.kind, .at = at, .text = text.substr(at, symbol.text.size())};
    }
  }
  return std::nullopt;
}

}  // namespace

bool is_digit(char character) {
  return character >= '0' && character <= '9';
}

bool is_letter(char character) {
  return (character >= 'a' && character <= 'z') || (character >= 'A' && character <= 'Z');
}

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& character : result) {
    if (character >= 'A' && character <= 'Z') character = static_cast<char>(character - 'A' + 'a');
  }
  return result;
}

std::string upper(std::string_view text) {
  std::string result(text);
  for (char& character : result) {
    if (character >= 'a' && character <= 'z') character = static_cast<char>(character - 'a' + 'A');
  }
  return result;
}

std::size_t space_size(std::string_view text, std::size_t at) {
  for (const std::string_view space : kSpaces) {
    if (starts_at(text, at, space)) return space.size();
  }
  return 0;
}

Error error_at(std::size_t character, std::string what, std::string remedy) {
  return Error{.what = std::move(what), .remedy = std::move(remedy), .character = character};
}

Result<Comma> meaning_of_commas(std::string_view text) {
  std::vector<std::size_t> commas;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (comma_between_digits(text, i)) commas.push_back(i);
  }
  if (commas.empty() || text.find('.') != std::string_view::npos) return Comma::Separates;
  if (commas.size() == 1) {
    const std::size_t comma = commas.front();
    if (count_numbers(text.substr(0, comma)) == count_numbers(text.substr(comma + 1))) {
      return Comma::Separates;
    }
  }
  if (commas.size() == 2) {
    const std::string_view between = text.substr(commas[0] + 1, commas[1] - commas[0] - 1);
    if (!std::all_of(between.begin(), between.end(), is_digit)) return Comma::Decimal;
  }
  return error_at(commas.front(), "this comma can be a decimal point or separate two numbers",
                  "write decimals with a point, or put a semicolon between latitude and longitude");
}

Result<std::vector<Token>> tokenize(std::string_view text, Comma comma) {
  std::vector<Token> tokens;
  for (std::size_t at = 0; at < text.size();) {
    if (const std::size_t space = space_size(text, at)) {
      at += space;
      continue;
    }
    if (is_digit(text[at]) || text[at] == '.') {
      Result<Token> number = read_number(text, at, comma);
      if (!number) return number.error();
      tokens.push_back(*number);
    } else if (is_letter(text[at])) {
      tokens.push_back(read_word(text, at));
    } else if (const std::optional<Token> symbol = read_symbol(text, at)) {
      tokens.push_back(*symbol);
    } else {
      return error_at(at,
                      fmt::format("\u201C{}\u201D does not belong in a position", shown(text, at)),
                      "write it like 44.435217, -71.675993");
    }
    at = tokens.back().end();
  }
  return tokens;
}

}  // namespace mastwise::notation
