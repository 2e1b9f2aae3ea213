#include "app/words/phrases.hpp"

#include <fmt/args.h>
#include <fmt/format.h>

namespace mastwise::words {

std::string fill(Phrase phrase, std::initializer_list<std::pair<Phrase, std::string>> blanks) {
  fmt::dynamic_format_arg_store<fmt::format_context> store;
  for (const auto& [name, text] : blanks) store.push_back(fmt::arg(name, text));
  return fmt::vformat(phrase, store);
}

std::string sentence(std::string words) {
  constexpr char kToCapital = 'a' - 'A';  // in ASCII, and in UTF-8 from à to þ
  if (words.empty()) return words;
  if (words.front() >= 'a' && words.front() <= 'z') {
    words.front() -= kToCapital;
  } else if (words.size() > 1 && words[0] == '\xc3' && words[1] >= '\xa0' && words[1] <= '\xbe') {
    words[1] -= kToCapital;
  }
  return words;
}

}  // namespace mastwise::words
