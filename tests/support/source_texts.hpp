#pragma once

#include <string>
#include <string_view>
#include <vector>

// The texts in C++ sources: string literals, adjacent ones joined, without comments and includes.
namespace mastwise::test {

struct SourceText {
  std::string file;
  int line;  // of its first quote
  std::string text;
};

// All of one source, and of all sources below a folder.
std::vector<SourceText> texts_of_source(const std::string& file, std::string_view source);
std::vector<SourceText> texts_in(const std::string& folder);

// Those within the parentheses of say(...), in sources that include app/words/language.hpp; others
// have functions of that name.
std::vector<SourceText> said_in(const std::string& file, std::string_view source);
std::vector<SourceText> said_texts(const std::string& folder);

}  // namespace mastwise::test
