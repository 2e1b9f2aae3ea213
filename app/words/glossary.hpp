#pragma once

#include <span>
#include <string>
#include <string_view>

// The words of the trade that the screens use, each with what it means. A long press on a word
// opens its explanation.
namespace mastwise::words {

struct Term {
  const char* word;
  const char* meaning;  // one or two sentences
};
std::span<const Term> glossary();

// The longest word of the glossary in a text of the language in use, as the glossary spells it in
// English; empty if it has none. Ignores case; parts of longer words do not count.
std::string term_in(std::string_view text);

}  // namespace mastwise::words
