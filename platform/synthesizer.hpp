#pragma once

#include "core/result.hpp"

#include <memory>
#include <string>
#include <vector>

namespace mastwise::platform {

// The system's speech synthesizer: eSpeak NG, loaded at run time, or the voices of Windows. Without
// it everything else works. eSpeak NG has one state for the whole process, so there is one
// synthesizer at a time, used by one thread.
class Synthesizer {
 public:
  virtual ~Synthesizer() = default;

  // Speaks the text in a voice by its language, such as "en-us" or "es". Returns mono samples of -1
  // to 1 at sound::kRate_hz. An unknown voice is an error.
  virtual Result<std::vector<float>> speak(const std::string& text, const std::string& voice) = 0;
};

// The error says what is missing and how to get it. Only Linux loads a library.
Result<std::unique_ptr<Synthesizer>> load_synthesizer(
    const std::string& library = "libespeak-ng.so.1");

}  // namespace mastwise::platform
