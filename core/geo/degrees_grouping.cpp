#include "core/geo/degrees_notation.hpp"
#include "core/geo/degrees_words.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace mastwise::notation {
namespace {

using Kind = Token::Kind;

// Gathers items into coordinates. A coordinate ends at a break, a sign, a label, a letter, a mark
// of seconds, a number of degrees, or a number that no colon joins.
class Grouping {
 public:
  Grouping(const std::vector<Item>& items, std::size_t size) : items_(items), size_(size) {
    const auto first = std::find_if(items.begin(), items.end(), [](const Item& item) {
      return item.kind == Item::Kind::Side || item.is(Kind::Number);
    });
    letters_before_ = first != items.end() && first->kind == Item::Kind::Side;
  }

  Result<std::vector<Coordinate>> run() {
    for (next_ = 0; next_ < items_.size(); ++next_) {
      if (auto error = take(items_[next_])) return *error;
    }
    if (!current_.parts.empty()) finish();
    if (auto error = check_nothing_open()) return *error;
    return std::move(done_);
  }

 private:
  bool previous_is(Kind kind) const { return next_ > 0 && items_[next_ - 1].is(kind); }
  bool following_is(Kind kind) const {
    return next_ + 1 < items_.size() && items_[next_ + 1].is(kind);
  }

  void finish() {
    done_.push_back(std::move(current_));
    current_ = Coordinate{};
  }

  std::optional<Error> take(const Item& item) {
    if (item.kind == Item::Kind::Side) return take_letter(item.side);
    if (item.kind == Item::Kind::Label) return take_label(item.side);
    switch (item.token.kind) {
      case Kind::Number:
        return take_number(item.token);
      case Kind::Minus:
      case Kind::Plus:
        return take_sign(item.token);
      case Kind::Break:
        return take_break(item.token);
      case Kind::Colon:
        return take_colon(item.token);
      default:
        return take_mark(item.token);
    }
  }

  std::optional<Error> take_number(const Token& number) {
    const bool begun = !current_.parts.empty();
    const bool after_seconds =
        begun && current_.parts.back().mark && current_.parts.back().mark->is(Kind::Second);
    const bool not_joined = current_.colons && !previous_is(Kind::Colon);
    if (begun && (after_seconds || not_joined || following_is(Kind::Degree))) finish();
    current_.parts.push_back(Part{.number = number, .mark = std::nullopt});
    return std::nullopt;
  }

  std::optional<Error> take_mark(const Token& mark) {
    if (!previous_is(Kind::Number)) {
      return error_at(mark.at, fmt::format("no number before \u201C{}\u201D", mark.text),
                      "write the number first, then its mark");
    }
    current_.parts.back().mark = mark;
    return std::nullopt;
  }

  std::optional<Error> take_colon(const Token& colon) {
    if (next_ > 0 && items_[next_ - 1].kind == Item::Kind::Label) return std::nullopt;
    if (!previous_is(Kind::Number) || !following_is(Kind::Number)) {
      return error_at(colon.at,
                      fmt::format("\u201C{}\u201D is not between two numbers", colon.text),
                      "write it like 44:26:06.8 -71:40:33.6");
    }
    current_.colons = true;
    return std::nullopt;
  }

  std::optional<Error> take_sign(const Token& sign) {
    // "44.4 - 71.6" can be a dash between two numbers.
    const bool glued = following_is(Kind::Number) && items_[next_ + 1].token.at == sign.end();
    if (!glued) {
      return error_at(sign.at, "a sign has no number directly after it",
                      "write the sign directly before the degrees");
    }
    if (!current_.parts.empty()) finish();
    current_.sign = sign;
    return std::nullopt;
  }

  std::optional<Error> take_break(const Token& token) {
    const bool after_letter = next_ > 0 && items_[next_ - 1].kind == Item::Kind::Side;
    const bool closes = !current_.parts.empty() || (after_letter && !letters_before_);
    if (!closes) {
      return error_at(token.at, fmt::format("no coordinate before \u201C{}\u201D", token.text),
                      "put one comma between latitude and longitude");
    }
    if (next_ + 1 == items_.size()) {
      return error_at(token.at, fmt::format("nothing after \u201C{}\u201D", token.text),
                      "write the longitude after it, or remove it");
    }
    if (!current_.parts.empty()) finish();
    return std::nullopt;
  }

  std::optional<Error> take_label(const Side& label) {
    if (auto error = check_nothing_open()) return error;
    if (!current_.parts.empty()) finish();
    current_.label = label;
    return std::nullopt;
  }

  std::optional<Error> take_letter(const Side& letter) {
    if (letters_before_) {
      if (!current_.parts.empty()) finish();
      if (current_.letter) return second_letter(letter);
      current_.letter = letter;
      return std::nullopt;
    }
    if (!current_.parts.empty()) {
      current_.letter = letter;
      finish();
      return std::nullopt;
    }
    // "44.4, N": a comma separates the number and its letter.
    const bool own_comma = previous_is(Kind::Break) && !done_.empty() && !done_.back().letter;
    if (!own_comma) return second_letter(letter);
    done_.back().letter = letter;
    return std::nullopt;
  }

  static Error second_letter(const Side& letter) {
    return error_at(letter.at, fmt::format("{} has no number", letter.text),
                    "write one letter for each number, all before or all after the numbers");
  }

  // A label or a letter that still needs its number.
  std::optional<Error> check_nothing_open() const {
    if (!current_.parts.empty()) return std::nullopt;
    const auto& open = current_.letter ? current_.letter : current_.label;
    if (!open) return std::nullopt;
    return error_at(next_ < items_.size() ? items_[next_].token.at : size_,
                    fmt::format("a number is missing after {}", open->text),
                    "write the degrees after it");
  }

  const std::vector<Item>& items_;
  std::size_t size_;
  std::size_t next_ = 0;
  bool letters_before_ = false;
  Coordinate current_;
  std::vector<Coordinate> done_;
};

// Numbers without any separator: the latitude ends at the first fraction, else half way. Numbers
// joined by colons, a letter or the marks of minutes stay one coordinate.
std::vector<Coordinate> part_in_two(Coordinate whole) {
  const auto fraction = std::find_if(whole.parts.begin(), whole.parts.end(),
                                     [](const Part& part) { return part.number.fraction; });
  const auto size = static_cast<std::ptrdiff_t>(whole.parts.size());
  const bool by_fraction = fraction != whole.parts.end() && fraction + 1 != whole.parts.end();
  const bool in_half = size % 2 == 0 && !whole.letter && !whole.colons;
  if (!by_fraction && !in_half) return {std::move(whole)};
  const auto middle = by_fraction ? fraction + 1 : whole.parts.begin() + size / 2;
  if (middle->mark && !middle->mark->is(Kind::Degree)) return {std::move(whole)};
  Coordinate first;
  Coordinate second;
  first.sign = whole.sign;
  first.label = whole.label;
  const bool before = whole.letter && whole.letter->at < whole.at();
  (before ? first : second).letter = whole.letter;
  first.parts.assign(whole.parts.begin(), middle);
  second.parts.assign(middle, whole.parts.end());
  return {std::move(first), std::move(second)};
}

}  // namespace

std::size_t Coordinate::at() const {
  return parts.front().number.at;
}

Result<std::vector<Coordinate>> group_coordinates(std::vector<Token> tokens, std::size_t size) {
  const auto items = understand_words(tokens);
  if (!items) return items.error();
  Result<std::vector<Coordinate>> grouped = Grouping(*items, size).run();
  if (!grouped || grouped->size() != 1) return grouped;
  return part_in_two(std::move(grouped->front()));
}

}  // namespace mastwise::notation
