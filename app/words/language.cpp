#include "app/words/language.hpp"

#include "app/words/phrases.hpp"
#include "app/words/spanish_screens.hpp"

#include <atomic>
#include <unordered_map>

namespace mastwise::words {
namespace {

std::atomic<Language>& language_in_use() {
  static std::atomic<Language> language = Language::English;
  return language;
}

// The Spanish for an English text; null if there is none.
const char* spanish_for(std::string_view english) {
  static const auto kSpanishFor = [] {
    std::unordered_map<std::string_view, const char*> all;
    for (const auto& part : spanish_screens()) {
      for (const Translation& one : part) all.emplace(one.english, one.spanish);
    }
    return all;
  }();
  const auto found = kSpanishFor.find(english);
  return found == kSpanishFor.end() ? nullptr : found->second;
}

}  // namespace

Language language() {
  return language_in_use().load(std::memory_order_relaxed);
}

void use_language(Language language) {
  language_in_use().store(language, std::memory_order_relaxed);
}

const Phrases& phrases() {
  return language() == Language::Spanish ? kSpanish : kEnglish;
}

const char* say(const char* english) {
  if (language() == Language::English) return english;
  const char* const spanish = spanish_for(english);
  return spanish == nullptr ? english : spanish;
}

std::string say(std::string_view english) {
  if (language() == Language::English) return std::string(english);
  const char* const spanish = spanish_for(english);
  return spanish == nullptr ? std::string(english) : std::string(spanish);
}

}  // namespace mastwise::words
