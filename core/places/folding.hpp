#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::places {

// Normalizes names so that spellings of the same name compare equal: lower case, no diacritics, no
// apostrophes, other punctuation as one space. A data table maps the letters beyond ASCII; other
// letters stay unchanged.
class Folding {
 public:
  // Lines of a letter, a tab and its plain form of at most 4 letters. std::nullopt if a line has
  // another form.
  static std::optional<Folding> from_table(std::string_view lines);

  std::string fold(std::string_view text) const;

 private:
  struct Rule {
    char32_t letter;
    std::string plain;
  };
  const std::string* plain(char32_t letter) const;

  std::vector<Rule> rules_;  // by letter
};

// Calls `use` with each line of a text whose lines all end with a line feed. False if the last line
// does not.
template <class Use>
bool each_line(std::string_view text, Use use) {
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) return false;
    use(text.substr(0, end));
    text.remove_prefix(end + 1);
  }
  return true;
}

}  // namespace mastwise::places
