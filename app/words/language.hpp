#pragma once

// The language of the screens. Every word on them that is not made from facts (see phrases.hpp)
// goes through say().
namespace mastwise::words {

// The phrase in the language in use: an English text of the screens, as it is or translated. A
// phrase without a translation stays English; tests name it. Its blanks are filled by fill().
const char* say(const char* english);

}  // namespace mastwise::words
