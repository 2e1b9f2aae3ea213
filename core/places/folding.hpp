#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::places {

// Writes names so that two that a person takes for the same are the same: lower case, no
// diacritics, no apostrophes, other punctuation as one space. The letters beyond ASCII and what
// they become are data; one that is not among them stays as it is.
class Folding {
 public:
  // Lines of a letter, a tab and its plain form of at most 4 letters. Nothing where a line is
  // otherwise.
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

// Calls `use` with each line of a text of which every line ends with a line feed. False where the
// last does not.
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
