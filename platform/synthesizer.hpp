#pragma once

#include "core/result.hpp"

#include <memory>
#include <string>
#include <vector>

namespace mastwise::platform {

// The system's speech synthesizer, eSpeak NG, loaded at run time: without it everything else works.
// The library has one state for the whole process, so there is one at a time, used by one thread.
class Synthesizer {
 public:
  virtual ~Synthesizer() = default;

  // Speaks the text in a voice by its language, such as "en-us" or "es". Returns mono samples of -1
  // to 1 at sound::kRate_hz. An unknown voice is an error.
  virtual Result<std::vector<float>> speak(const std::string& text, const std::string& voice) = 0;
};

// The error says which library or data is missing and which package has it.
Result<std::unique_ptr<Synthesizer>> load_synthesizer(
    const std::string& library = "libespeak-ng.so.1");

}  // namespace mastwise::platform
