#pragma once

#include <optional>
#include <span>

namespace mastwise::sound {

// Samples per second of every sound, mono, -1 to 1. The speech synthesizer's usual rate.
inline constexpr int kRate_hz = 22'050;

// The least rise and fall of a sound, seconds: shorter ones click (common practice, no source).
inline constexpr double kFade_s = 0.010;

enum class Timbre {
  Plain,     // a sine
  Piercing,  // with harmonics, for what must be heard over a motor and by old ears
};

// A repeating sound, for as long as it is wanted.
struct Tone {
  double frequency_hz = 0.0;
  double pulses_per_s = 0.0;   // half of each pulse sounds; 0: without a pause
  double other_hz = 0.0;       // if not 0, every second pulse; two pitches leave no pause
  double glide_octaves = 0.0;  // over the sounding half of a pulse, upward if positive
  double peak = 0.5;           // of full scale
  Timbre timbre = Timbre::Plain;
  bool operator==(const Tone&) const = default;
};

// Renders one tone at a time. A change keeps the wave's phase; what cannot change without a step
// fades out first, so that nothing clicks.
class ToneVoice {
 public:
  void play(const std::optional<Tone>& tone) { wanted_ = tone; }
  // Whether nothing sounds and nothing is wanted.
  bool silent() const { return !wanted_ && level_ == 0.0; }
  // Whether the last sample rendered was silent.
  bool still() const { return level_ == 0.0; }
  // Fills the samples. `hushed`: fades out and stays silent while the wanted tone goes on.
  void render(std::span<float> samples, bool hushed = false);

 private:
  float next(bool hushed);

  std::optional<Tone> wanted_;
  Tone tone_;  // that sounds
  double frequency_hz_ = 0.0;
  double turn_ = 0.0;    // of the wave, [0, 1)
  double pulses_ = 0.0;  // so far, [0, 2)
  double level_ = 0.0;   // the envelope
};

}  // namespace mastwise::sound
