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
  if (!words.empty() && words.front() >= 'a' && words.front() <= 'z') words.front() -= 'a' - 'A';
  return words;
}

}  // namespace mastwise::words
