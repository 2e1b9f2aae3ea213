#include "core/sound/tone.hpp"
#include "core/sound/wav.hpp"
#include "platform/synthesizer.hpp"

#include <map>
#include <memory>
#include <mutex>

#include <dlfcn.h>
#include <espeak-ng/speak_lib.h>

namespace mastwise::platform {
namespace {

constexpr const char* kRemedy = "install the package libespeak-ng1; it brings the voices";

// What has been spoken so far, in the callback's format.
std::vector<short>& heard() {
  static std::vector<short> samples;
  return samples;
}

int take_samples(short* samples, int count, espeak_EVENT*) {
  if (samples != nullptr && count > 0) heard().insert(heard().end(), samples, samples + count);
  return 0;  // go on
}

struct CloseLibrary {
  void operator()(void* library) const { dlclose(library); }
};
using Library = std::unique_ptr<void, CloseLibrary>;

// The functions in use; null if the library lacks one.
struct Functions {
  decltype(&espeak_Initialize) initialize;
  decltype(&espeak_SetSynthCallback) call_back;
  decltype(&espeak_SetVoiceByName) set_voice;
  decltype(&espeak_SetParameter) set_parameter;
  decltype(&espeak_Synth) speak;
  decltype(&espeak_Synchronize) finish;

  bool complete() const {
    return initialize && call_back && set_voice && set_parameter && speak && finish;
  }
};

template <class Function>
void find(void* library, const char* name, Function& function) {
  // POSIX makes a function's address from that of an object.
  function = reinterpret_cast<Function>(dlsym(library, name));
}

Functions functions_of(void* library) {
  Functions all{};
  find(library, "espeak_Initialize", all.initialize);
  find(library, "espeak_SetSynthCallback", all.call_back);
  find(library, "espeak_SetVoiceByName", all.set_voice);
  find(library, "espeak_SetParameter", all.set_parameter);
  find(library, "espeak_Synth", all.speak);
  find(library, "espeak_Synchronize", all.finish);
  return all;
}

class ESpeak final : public Synthesizer {
 public:
  explicit ESpeak(const Functions& functions) : functions_(functions) {}

  Result<std::vector<float>> speak(const std::string& text, const std::string& voice) override {
    if (functions_.set_voice(voice.c_str()) != EE_OK) {
      return Error{.what = "the speech synthesizer has no voice named " + voice,
                   .remedy = "use a language such as en-us or es"};
    }
    heard().clear();
    // The size is ignored for text in one piece, which ends with its zero.
    if (functions_.speak(text.c_str(), text.size() + 1, 0, POS_CHARACTER, 0, espeakCHARS_UTF8,
                         nullptr, nullptr) != EE_OK ||
        functions_.finish() != EE_OK) {
      return Error{.what = "the speech synthesizer could not speak", .remedy = kRemedy};
    }
    return sound::from_pcm(heard());
  }

 private:
  Functions functions_;
};

Result<Functions> start(const std::string& name) {
  Library library(dlopen(name.c_str(), RTLD_NOW | RTLD_LOCAL));
  if (!library) return Error{.what = "no speech synthesizer: " + name, .remedy = kRemedy};
  const Functions functions = functions_of(library.get());
  if (!functions.complete()) {
    return Error{.what = "the speech synthesizer " + name + " is of another version",
                 .remedy = kRemedy};
  }
  // Synchronous: the samples come back through the callback, and no sound device is opened.
  constexpr int kUsualBuffer_ms = 0;
  const int rate_hz = functions.initialize(AUDIO_OUTPUT_SYNCHRONOUS, kUsualBuffer_ms, nullptr,
                                           espeakINITIALIZE_DONT_EXIT);
  if (rate_hz != sound::kRate_hz) {
    return Error{.what = "the speech synthesizer has no voices at 22,050 samples a second",
                 .remedy = "install the package espeak-ng-data"};
  }
  functions.call_back(take_samples);
  constexpr int kWordsPerMinute = 160;  // a little slower than its usual 175: for old ears
  functions.set_parameter(espeakRATE, kWordsPerMinute, 0);
  library.release();
  return functions;
}

}  // namespace

// Started once and never ended: it does not start again, and unloading it loses memory that it
// keeps for its next words.
Result<std::unique_ptr<Synthesizer>> load_synthesizer(const std::string& name) {
  static std::mutex one_at_a_time;
  static std::map<std::string, Functions> started;
  const std::lock_guard lock(one_at_a_time);
  auto found = started.find(name);
  if (found == started.end()) {
    const auto functions = start(name);
    if (!functions) return functions.error();
    found = started.emplace(name, *functions).first;
  }
  return std::unique_ptr<Synthesizer>(std::make_unique<ESpeak>(found->second));
}

}  // namespace mastwise::platform
