#include "core/sound/sounds.hpp"

#include "core/sound/wav.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::sound {
namespace {

constexpr double kLowest_hz = 520.0, kHighest_hz = 1040.0;
// One decibel under full scale.
constexpr double kLoudest = 0.89;
constexpr double kQuiet = 0.2;
constexpr double kTurnPeak = 0.5;

}  // namespace

Tone alarm(bool quiet) {
  return {.frequency_hz = kLowest_hz,
          .pulses_per_s = 4.0,
          .other_hz = 1.5 * kLowest_hz,
          .peak = quiet ? kQuiet * kLoudest : kLoudest,
          .timbre = Timbre::Piercing};
}

Tone turning(Turn turn) {
  constexpr double kFar_deg = 90.0, kSlowest = 2.0, kFastest = 10.0, kGlide = 0.25;
  const double nearness = 1.0 - std::min(1.0, turn.size_deg() / kFar_deg);
  return {.frequency_hz = kLowest_hz * std::pow(kHighest_hz / kLowest_hz, nearness),
          .pulses_per_s = kSlowest + (kFastest - kSlowest) * nearness * nearness,
          .glide_octaves = turn.clockwise_deg() >= 0.0 ? kGlide : -kGlide,
          .peak = kTurnPeak};
}

Tone on_heading() {
  return {.frequency_hz = kHighest_hz, .peak = kTurnPeak};
}

Samples confirm() {
  constexpr double kNote_s = 0.11, kTail_s = 0.02;
  constexpr std::array kNotes_hz{660.0, 880.0};
  const auto count = [](double seconds) { return static_cast<std::size_t>(seconds * kRate_hz); };
  Samples sound;
  ToneVoice voice;
  const auto add = [&](const std::optional<Tone>& tone, double seconds) {
    const std::size_t from = sound.size();
    sound.resize(from + count(seconds));
    voice.play(tone);
    voice.render(std::span(sound).subspan(from));
  };
  for (const double note_hz : kNotes_hz) {
    add(Tone{.frequency_hz = note_hz, .peak = kTurnPeak}, kNote_s);
  }
  add(std::nullopt, kTail_s);
  return sound;
}

Samples leveled(Samples speech) {
  // Speech has peaks of some 18 dB over its power, so it is limited softly.
  constexpr double kWanted_dbfs = -15.0, kPeak = 0.8;
  const double rms = rms_dbfs(speech);
  const double gain = std::pow(10.0, (kWanted_dbfs - rms) / 20.0) / kPeak;
  const auto fade = std::min(speech.size() / 2, static_cast<std::size_t>(kFade_s * kRate_hz));
  for (std::size_t i = 0; i < speech.size(); ++i) {
    const std::size_t from_end = std::min(i, speech.size() - 1 - i);
    const double share =
        from_end < fade ? static_cast<double>(from_end) / static_cast<double>(fade) : 1.0;
    speech[i] = static_cast<float>(share * kPeak * std::tanh(gain * speech[i]));
  }
  return speech;
}

}  // namespace mastwise::sound
