#include "tests/support/source_texts.hpp"

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <functional>
#include <sstream>

namespace mastwise::test {
namespace {

bool in_name(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_';
}

// Walks over a source, character by character of its code; literals are one step.
class Scan {
 public:
  Scan(std::string_view source, std::string file) : source_(source), file_(std::move(file)) {}

  // `only_said`: texts within say(...).
  std::vector<SourceText> run(bool only_said) {
    std::vector<SourceText> texts;
    while (at_ < source_.size()) {
      if (skip_comment_or_include()) continue;
      if (source_[at_] == '\'' && (at_ == 0 || !in_name(source_[at_ - 1]))) {
        skip_character();
      } else if (source_[at_] == '"') {
        const int line = line_;
        SourceText text{file_, line, joined()};
        if (!only_said || said_depth_ > 0) texts.push_back(std::move(text));
      } else {
        count_parentheses();
        step();
      }
    }
    return texts;
  }

 private:
  bool starts(std::string_view words) const { return source_.substr(at_, words.size()) == words; }

  void step() {
    if (source_[at_] == '\n') ++line_;
    ++at_;
  }

  bool skip_comment_or_include() {
    if (!starts("//") && !starts("#include")) return false;
    while (at_ < source_.size() && source_[at_] != '\n') ++at_;
    return true;
  }

  void skip_character() {
    step();
    while (at_ < source_.size() && source_[at_] != '\'') {
      if (source_[at_] == '\\') step();
      step();
    }
    if (at_ < source_.size()) step();
  }

  // One literal and those that follow it with nothing but space between.
  std::string joined() {
    std::string text;
    while (at_ < source_.size() && source_[at_] == '"') {
      step();
      while (at_ < source_.size() && source_[at_] != '"') {
        if (source_[at_] == '\\') step();
        text += source_[at_];
        step();
      }
      if (at_ < source_.size()) step();
      std::size_t next = at_;
      while (next < source_.size() && std::isspace(static_cast<unsigned char>(source_[next])) != 0)
        ++next;
      if (next >= source_.size() || source_[next] != '"') break;
      while (at_ < next) step();
    }
    return text;
  }

  void count_parentheses() {
    constexpr std::string_view kSay = "say(";
    if (said_depth_ == 0 && starts(kSay) && (at_ == 0 || !in_name(source_[at_ - 1]))) {
      at_ += kSay.size() - 1;
      said_depth_ = 1;
    } else if (said_depth_ > 0 && source_[at_] == '(') {
      ++said_depth_;
    } else if (said_depth_ > 0 && source_[at_] == ')') {
      --said_depth_;
    }
  }

  std::string_view source_;
  std::string file_;
  std::size_t at_ = 0;
  int line_ = 1;
  int said_depth_ = 0;
};

using LiteralReader = std::function<std::vector<SourceText>(const std::string&, std::string_view)>;

std::vector<SourceText> all_below(const std::string& folder, const LiteralReader& read) {
  std::vector<std::string> paths;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
    const std::string end = entry.path().extension().string();
    if (end == ".cpp" || end == ".hpp") paths.push_back(entry.path().string());
  }
  std::sort(paths.begin(), paths.end());
  std::vector<SourceText> texts;
  for (const std::string& path : paths) {
    std::stringstream source;
    source << std::ifstream(path).rdbuf();
    const std::string file = std::filesystem::relative(path, folder).string();
    for (SourceText& text : read(file, source.str())) texts.push_back(std::move(text));
  }
  return texts;
}

}  // namespace

std::vector<SourceText> texts_of_source(const std::string& file, std::string_view source) {
  return Scan(source, file).run(false);
}

std::vector<SourceText> texts_in(const std::string& folder) {
  return all_below(folder, texts_of_source);
}

std::vector<SourceText> said_in(const std::string& file, std::string_view source) {
  if (source.find("\"app/words/language.hpp\"") == std::string_view::npos) return {};
  return Scan(source, file).run(true);
}

std::vector<SourceText> said_texts(const std::string& folder) {
  return all_below(folder, said_in);
}

}  // namespace mastwise::test
