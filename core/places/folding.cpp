#include "core/places/folding.hpp"

#include "core/text/words.hpp"

#include <algorithm>

namespace mastwise::places {
namespace {

// A letter of a text and its length in bytes. A byte that begins no UTF-8 letter counts as a letter
// that is in no table.
struct Letter {
  char32_t code;
  std::size_t bytes;
};

Letter letter_at(std::string_view text, std::size_t at) {
  constexpr char32_t kNoLetter = 0xFFFFFFFF;
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(at);
  if (first < 0x80) return {first, 1};
  const std::size_t bytes = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC0 ? 2 : 1;
  if (bytes == 1 || at + bytes > text.size()) return {kNoLetter, 1};
  char32_t code = first & (0xFFU >> (bytes + 1));
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(at + i) & 0xC0) != 0x80) return {kNoLetter, 1};
    code = code << 6 | (byte(at + i) & 0x3FU);
  }
  return {code, bytes};
}

void append_ascii(std::string& folded, char character) {
  if (words::is_letter(character) || words::is_digit(character)) {
    folded +=
        character >= 'A' && character <= 'Z' ? static_cast<char>(character + 'a' - 'A') : character;
  } else if (character != '\'' && !folded.empty() && folded.back() != ' ') {
    folded += ' ';
  }
}

}  // namespace

std::optional<Folding> Folding::from_table(std::string_view lines) {
  Folding folding;
  bool sound = true;
  const bool whole = each_line(lines, [&](std::string_view line) {
    const std::size_t tab = line.find('\t');
    constexpr std::size_t kLongestPlain = 4;
    if (tab == std::string_view::npos || tab == 0 || letter_at(line, 0).bytes != tab ||
        line.size() - tab - 1 > kLongestPlain) {
      sound = false;
      return;
    }
    folding.rules_.push_back({letter_at(line, 0).code, std::string(line.substr(tab + 1))});
  });
  if (!whole || !sound) return std::nullopt;
  std::sort(folding.rules_.begin(), folding.rules_.end(),
            [](const Rule& a, const Rule& b) { return a.letter < b.letter; });
  return folding;
}

const std::string* Folding::plain(char32_t letter) const {
  const auto found =
      std::lower_bound(rules_.begin(), rules_.end(), letter,
                       [](const Rule& rule, char32_t wanted) { return rule.letter < wanted; });
  return found != rules_.end() && found->letter == letter ? &found->plain : nullptr;
}

std::string Folding::fold(std::string_view text) const {
  std::string folded;
  folded.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Letter letter = letter_at(text, at);
    if (letter.code < 0x80) {
      append_ascii(folded, text[at]);
    } else if (const std::string* known = plain(letter.code)) {
      for (const char character : *known) append_ascii(folded, character);
    } else {
      folded += text.substr(at, letter.bytes);
    }
    at += letter.bytes;
  }
  if (!folded.empty() && folded.back() == ' ') folded.pop_back();
  return folded;
}

}  // namespace mastwise::places
