#pragma once

#include "core/sound/mixer.hpp"
#include "platform/synthesizer.hpp"

#include <memory>
#include <optional>
#include <string>

namespace mastwise {

// Speaks words in the voice of the language in use, as loud as the app's other sounds. Loads the
// system's synthesizer with the first words; used by one thread.
class Speech {
 public:
  // The error says why there is no sound.
  Result<sound::Samples> of(const std::string& words);

 private:
  std::optional<Result<std::unique_ptr<platform::Synthesizer>>> synthesizer_;
};

}  // namespace mastwise
