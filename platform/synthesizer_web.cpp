#include "platform/synthesizer.hpp"

namespace mastwise::platform {

Result<std::unique_ptr<Synthesizer>> load_synthesizer(const std::string&) {
  return Error{.what = "Mastwise does not speak in a browser",
               .remedy = "aim by the tones, or by the number on the dial"};
}

}  // namespace mastwise::platform
