#include "core/geo/degrees_words.hpp"

#include <array>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace mastwise::notation {
namespace {

using Kind = Token::Kind;

struct SideWord {
  std::string_view word;
  Item::Kind kind;
  Axis axis;
  bool negative;
};

constexpr std::array kSideWords = {
    SideWord{"n", Item::Kind::Side, Axis::Latitude, false},
    SideWord{"north", Item::Kind::Side, Axis::Latitude, false},
    SideWord{"s", Item::Kind::Side, Axis::Latitude, true},
    SideWord{"south", Item::Kind::Side, Axis::Latitude, true},
    SideWord{"e", Item::Kind::Side, Axis::Longitude, false},
    SideWord{"east", Item::Kind::Side, Axis::Longitude, false},
    SideWord{"w", Item::Kind::Side, Axis::Longitude, true},
    SideWord{"west", Item::Kind::Side, Axis::Longitude, true},
    SideWord{"lat", Item::Kind::Label, Axis::Latitude, false},
    SideWord{"latitude", Item::Kind::Label, Axis::Latitude, false},
    SideWord{"lon", Item::Kind::Label, Axis::Longitude, false},
    SideWord{"long", Item::Kind::Label, Axis::Longitude, false},
    SideWord{"lng", Item::Kind::Label, Axis::Longitude, false},
    SideWord{"longitude", Item::Kind::Label, Axis::Longitude, false}};

struct UnitWord {
  std::string_view word;
  Kind kind;
};

// Longer words come before their beginnings. "s" alone is south, or seconds: see below.
constexpr std::array kUnitWords = {
    UnitWord{"degrees", Kind::Degree}, UnitWord{"degree", Kind::Degree},
    UnitWord{"deg", Kind::Degree},     UnitWord{"d", Kind::Degree},
    UnitWord{"minutes", Kind::Minute}, UnitWord{"minute", Kind::Minute},
    UnitWord{"min", Kind::Minute},     UnitWord{"m", Kind::Minute},
    UnitWord{"seconds", Kind::Second}, UnitWord{"second", Kind::Second},
    UnitWord{"sec", Kind::Second}};

std::optional<Item> side_item(const Token& token) {
  const std::string word = lower(token.text);
  for (const SideWord& known : kSideWords) {
    if (word != known.word) continue;
    return Item{
        .kind = known.kind,
        .token = token,
        .side = Side{
            .axis = known.axis, .negative = known.negative, .at = token.at, .text = token.text}};
  }
  return std::nullopt;
}

Item unit_item(Token token, Kind kind) {
  token.kind = kind;
  return Item{.kind = Item::Kind::Piece, .token = token, .side = {}};
}

std::optional<Item> unit_item(const Token& token) {
  const std::string word = lower(token.text);
  for (const UnitWord& known : kUnitWords) {
    if (word == known.word) return unit_item(token, known.kind);
  }
  return std::nullopt;
}

// A unit with a hemisphere attached, such as "mN" or "sW".
std::optional<std::pair<Token, Token>> split_glued(const Token& token) {
  const auto part = [&token](std::size_t from, std::size_t count) {
    Token piece = token;
    piece.at = token.at + from;
    piece.text = token.text.substr(from, count);
    return piece;
  };
  const std::string word = lower(token.text);
  for (std::size_t cut = 1; cut < word.size(); ++cut) {
    const Token unit = part(0, cut);
    const Token side = part(cut, std::string_view::npos);
    const auto item = side_item(side);
    if (!item || item->kind != Item::Kind::Side) continue;
    if (unit_item(unit) || lower(unit.text) == "s") return std::pair{unit, side};
  }
  return std::nullopt;
}

std::vector<Token> split_glued_words(const std::vector<Token>& tokens) {
  std::vector<Token> result;
  for (const Token& token : tokens) {
    const bool word = token.is(Kind::Word) && !side_item(token) && !unit_item(token);
    const auto glued = word ? split_glued(token) : std::nullopt;
    if (glued) {
      result.push_back(glued->first);
      result.push_back(glued->second);
    } else {
      result.push_back(token);
    }
  }
  return result;
}

std::optional<Side> side_at(const std::vector<Token>& tokens, std::size_t i) {
  if (i >= tokens.size() || !tokens[i].is(Kind::Word)) return std::nullopt;
  const auto item = side_item(tokens[i]);
  if (!item || item->kind != Item::Kind::Side) return std::nullopt;
  return item->side;
}

// "s" after a number means seconds if a hemisphere closes the coordinate ("6.8s N"), or if it is
// lower case and the minutes before it have "m" or "min" ("26m6.8s"). Else it means south.
bool is_seconds(const std::vector<Token>& tokens, std::size_t i, const std::vector<Item>& before) {
  if (lower(tokens[i].text) != "s" || before.empty() || !before.back().is(Kind::Number)) {
    return false;
  }
  if (const auto next = side_at(tokens, i + 1)) {
    const bool number_follows = i + 2 < tokens.size() && tokens[i + 2].is(Kind::Number);
    if (next->axis == Axis::Latitude || !number_follows) return true;
  }
  if (tokens[i].text != "s" || before.size() < 2) return false;
  const Item& minute = before[before.size() - 2];
  return minute.is(Kind::Minute) && is_letter(minute.token.text[0]);
}

bool joins_digits(const std::vector<Token>& tokens, std::size_t i) {
  return tokens[i].is(Kind::Minus) && i > 0 && i + 1 < tokens.size() &&
         tokens[i - 1].is(Kind::Number) && tokens[i + 1].is(Kind::Number) &&
         tokens[i - 1].end() == tokens[i].at && tokens[i].end() == tokens[i + 1].at;
}

Error unknown_word(const Token& token) {
  if (lower(token.text) == "o") {
    return error_at(token.at, "O can mean east or west, or be the digit 0",
                    "write E or W, or the digit");
  }
  return error_at(
      token.at, fmt::format("\u201C{}\u201D does not belong in a position", token.text),
      "write it like 44.435217, -71.675993 or 44\u00B026.113\u2032N 71\u00B040.560\u2032W");
}

// A hyphen between two digits is a separator if letters give the sides, a sign after a decimal
// fraction, and ambiguous otherwise.
Result<Item> understand_hyphen(const std::vector<Token>& tokens, std::size_t i, bool letters) {
  Item item{.kind = Item::Kind::Piece, .token = tokens[i], .side = {}};
  if (letters) {
    item.token.kind = Kind::Colon;
  } else if (!tokens[i - 1].fraction) {
    return error_at(tokens[i].at, "this hyphen can be a minus sign or separate degrees and minutes",
                    "write N, S, E and W, or a space before a minus sign");
  }
  return item;
}

}  // namespace

Result<std::vector<Item>> understand_words(const std::vector<Token>& written) {
  const std::vector<Token> tokens = split_glued_words(written);
  bool letters = false;
  for (std::size_t i = 0; i < tokens.size(); ++i) letters = letters || side_at(tokens, i);
  std::vector<Item> items;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (joins_digits(tokens, i)) {
      const Result<Item> hyphen = understand_hyphen(tokens, i, letters);
      if (!hyphen) return hyphen.error();
      items.push_back(*hyphen);
    } else if (!tokens[i].is(Kind::Word)) {
      items.push_back(Item{.kind = Item::Kind::Piece, .token = tokens[i], .side = {}});
    } else if (is_seconds(tokens, i, items)) {
      items.push_back(unit_item(tokens[i], Kind::Second));
    } else if (const auto side = side_item(tokens[i])) {
      items.push_back(*side);
    } else if (const auto unit = unit_item(tokens[i])) {
      items.push_back(*unit);
    } else {
      return unknown_word(tokens[i]);
    }
  }
  return items;
}

}  // namespace mastwise::notation
