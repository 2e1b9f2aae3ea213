#include "app/service/speech.hpp"

#include "app/words/spoken.hpp"
#include "core/sound/sounds.hpp"

#include <utility>

namespace mastwise {

Result<sound::Samples> Speech::of(const std::string& words) {
  if (!synthesizer_) synthesizer_ = platform::load_synthesizer();
  if (!*synthesizer_) return synthesizer_->error();
  auto spoken = synthesizer_->value()->speak(words, words::voice());
  if (!spoken) return spoken.error();
  return sound::leveled(*std::move(spoken));
}

}  // namespace mastwise
