#include "core/sound/tone.hpp"
#include "core/sound/wav.hpp"
#include "platform/objects_windows.hpp"
#include "platform/synthesizer.hpp"
#include "platform/system_windows.hpp"

#include <cwchar>

// objects_windows.hpp comes first.
#include <sapi.h>

namespace mastwise::platform {
namespace {

constexpr const char* kRemedy = "add a voice under Speech in the settings of Windows";

// SPDFID_WaveFormatEx, which no library of mingw-w64 defines (SpeechAudioFormatGUIDWave in
// Microsoft's type library of speech has the same value).
constexpr GUID kWaveFormat{
    0xc31adbae, 0x527f, 0x4ff5, {0xa2, 0x30, 0xf6, 0x2b, 0xb6, 0x1f, 0xf7, 0x0c}};

template <class Interface>
Owned<Interface> create(const GUID& object) {
  void* made = nullptr;
  if (FAILED(
          ::CoCreateInstance(object, nullptr, CLSCTX_INPROC_SERVER, __uuidof(Interface), &made))) {
    return nullptr;
  }
  return Owned<Interface>(static_cast<Interface*>(made));
}

// The language of a voice. Its attribute holds numbers in base 16, such as "409;9", the main one
// first (Microsoft, "Object Tokens and Registry Settings").
LANGID language_of(ISpObjectToken& voice) {
  ISpDataKey* given = nullptr;
  if (FAILED(voice.OpenKey(SPTOKENKEY_ATTRIBUTES, &given))) return LANG_NEUTRAL;
  const Owned<ISpDataKey> attributes(given);
  wchar_t* text = nullptr;
  if (FAILED(attributes->GetStringValue(L"Language", &text))) return LANG_NEUTRAL;
  const auto language = static_cast<LANGID>(std::wcstoul(text, nullptr, 16));
  ::CoTaskMemFree(text);
  return language;
}

// A voice for the language, from the same country if there is one; null if no voice speaks it.
Owned<ISpObjectToken> find_voice(const std::string& name) {
  const LCID wanted = ::LocaleNameToLCID(wide(name).c_str(), LOCALE_ALLOW_NEUTRAL_NAMES);
  const auto voices = create<ISpObjectTokenCategory>(__uuidof(SpObjectTokenCategory));
  if (wanted == 0 || !voices || FAILED(voices->SetId(SPCAT_VOICES, FALSE))) return nullptr;
  wchar_t same_country[32];
  std::swprintf(same_country, std::size(same_country), L"Language=%lx", wanted);
  IEnumSpObjectTokens* given = nullptr;
  if (FAILED(voices->EnumTokens(nullptr, same_country, &given))) return nullptr;
  const Owned<IEnumSpObjectTokens> all(given);  // the same country's first
  for (;;) {
    ISpObjectToken* next = nullptr;
    if (all->Next(1, &next, nullptr) != S_OK) return nullptr;
    Owned<ISpObjectToken> voice(next);
    if (PRIMARYLANGID(language_of(*voice)) == PRIMARYLANGID(LANGIDFROMLCID(wanted))) return voice;
  }
}

// All that was written to the stream.
std::vector<std::int16_t> content(IStream& stream) {
  STATSTG about{};
  if (FAILED(stream.Stat(&about, STATFLAG_NONAME)) ||
      FAILED(stream.Seek({}, STREAM_SEEK_SET, nullptr))) {
    return {};
  }
  std::vector<std::int16_t> samples(about.cbSize.QuadPart / sizeof(std::int16_t));
  ULONG read = 0;
  stream.Read(samples.data(), static_cast<ULONG>(samples.size() * sizeof(samples[0])), &read);
  samples.resize(read / sizeof(samples[0]));
  return samples;
}

class SystemVoices final : public Synthesizer {
 public:
  bool ready() const { return speaker_ != nullptr; }

  Result<std::vector<float>> speak(const std::string& text, const std::string& voice) override {
    const auto found = find_voice(voice);
    if (!found) return Error{.what = "Windows has no voice for " + voice, .remedy = kRemedy};
    IStream* given = nullptr;
    ::CreateStreamOnHGlobal(nullptr, TRUE, &given);
    const Owned<IStream> memory(given);
    const auto output = create<ISpStream>(__uuidof(SpStream));
    constexpr WORD kSampleBytes = sizeof(std::int16_t);
    const WAVEFORMATEX format{.wFormatTag = WAVE_FORMAT_PCM,
                              .nChannels = 1,
                              .nSamplesPerSec = sound::kRate_hz,
                              .nAvgBytesPerSec = sound::kRate_hz * kSampleBytes,
                              .nBlockAlign = kSampleBytes,
                              .wBitsPerSample = 8 * kSampleBytes,
                              .cbSize = 0};
    // Of -10 to 10, each a tenth of the way to three times as slow or fast [from memory]: a little
    // slower than usual, for old ears.
    constexpr long kSlower = -1;
    if (!memory || !output || FAILED(output->SetBaseStream(memory.get(), kWaveFormat, &format)) ||
        FAILED(speaker_->SetVoice(found.get())) || FAILED(speaker_->SetRate(kSlower)) ||
        FAILED(speaker_->SetOutput(output.get(), FALSE)) ||
        FAILED(speaker_->Speak(wide(text).c_str(), SPF_IS_NOT_XML, nullptr))) {
      return Error{.what = "the speech synthesizer could not speak", .remedy = kRemedy};
    }
    return sound::from_pcm(content(*memory));
  }

 private:
  ObjectUse use_;  // as long as the speaker
  Owned<ISpVoice> speaker_ = create<ISpVoice>(__uuidof(SpVoice));
};

}  // namespace

Result<std::unique_ptr<Synthesizer>> load_synthesizer(const std::string&) {
  auto voices = std::make_unique<SystemVoices>();
  if (!voices->ready()) return Error{.what = "no speech synthesizer", .remedy = kRemedy};
  return std::unique_ptr<Synthesizer>(std::move(voices));
}

}  // namespace mastwise::platform
