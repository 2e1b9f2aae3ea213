#pragma once

#include <string>
#include <string_view>

namespace mastwise {

enum class Language { English, Spanish };

// The language of the screens. Every word on them that is not made from facts (see phrases.hpp)
// goes through say(). English until someone chooses: the verbs and the files stay English.
namespace words {

// Any thread may read the language; only the interface thread changes it. A worker whose sentence
// is cut by a change mixes no letters: each phrase is a constant of one language.
Language language();
void use_language(Language language);

// The phrase in the language in use: an English text of the screens, as it is or translated. A
// phrase without a translation stays English; tests name it. Its blanks are filled by fill().
const char* say(const char* english);
std::string say(std::string_view english);

// English while it lives, for what leaves the screens. Interface thread only.
class InEnglish {
 public:
  InEnglish() { use_language(Language::English); }
  ~InEnglish() { use_language(before_); }
  InEnglish(const InEnglish&) = delete;
  InEnglish& operator=(const InEnglish&) = delete;

 private:
  Language before_ = language();
};

}  // namespace words
}  // namespace mastwise
