#include "core/sound/tone.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace mastwise::sound {
namespace {

// Amplitudes of the harmonics of the piercing timbre, the fundamental first. Four of them over the
// fundamental are within 15 dB of it, as IEC 60601-1-8, table 4, asks of an alarm's pulse (quoted
// by others: puiaudio.com/pages/iec-60601-1-8). The signs keep the peak low for this power: 2.5 dB
// over the root of the mean square, found by search.
constexpr std::array kHarmonics{1.0, -0.24, 0.42, 0.24, 0.26};
constexpr double kHarmonicsPeak = 1.12;

double wave(double turn, Timbre timbre) {
  const double angle = 2.0 * std::numbers::pi * turn;
  if (timbre == Timbre::Plain) return std::sin(angle);
  double sum = 0.0;
  for (std::size_t i = 0; i < kHarmonics.size(); ++i) {
    sum += kHarmonics[i] * std::sin(static_cast<double>(i + 1) * angle);
  }
  return sum / kHarmonicsPeak;
}

// From -1 to 1 over the sounding half of a pulse.
double along_pulse(double pulses) {
  return std::min(1.0, 4.0 * std::fmod(pulses, 1.0) - 1.0);
}

}  // namespace

float ToneVoice::next(bool hushed) {
  // Another timbre is another wave: the old one fades out before it begins.
  const bool same_wave = wanted_ && wanted_->timbre == tone_.timbre;
  if (wanted_ && (same_wave || level_ == 0.0)) tone_ = *wanted_;
  const bool second = tone_.other_hz > 0.0 && pulses_ >= 1.0;
  const bool within_pulse =
      tone_.pulses_per_s == 0.0 || tone_.other_hz > 0.0 || std::fmod(pulses_, 1.0) < 0.5;
  const bool sounds = wanted_ && !hushed && within_pulse && tone_.timbre == wanted_->timbre;
  const double step = std::max(tone_.peak, 0.1) / (kFade_s * kRate_hz);
  level_ += std::clamp((sounds ? tone_.peak : 0.0) - level_, -step, step);
  if (level_ == 0.0 && !wanted_) pulses_ = turn_ = 0.0;
  double frequency_hz = second ? tone_.other_hz : tone_.frequency_hz;
  if (tone_.glide_octaves != 0.0 && tone_.pulses_per_s > 0.0) {
    frequency_hz *= std::exp2(0.5 * tone_.glide_octaves * along_pulse(pulses_));
  }
  // A sudden change of pitch would tick.
  constexpr double kSlide_s = 0.004;
  frequency_hz_ += level_ == 0.0 ? frequency_hz - frequency_hz_
                                 : (frequency_hz - frequency_hz_) / (kSlide_s * kRate_hz);
  const double value = level_ == 0.0 ? 0.0 : level_ * wave(turn_, tone_.timbre);
  pulses_ = std::fmod(pulses_ + tone_.pulses_per_s / kRate_hz, 2.0);
  turn_ = std::fmod(turn_ + frequency_hz_ / kRate_hz, 1.0);
  return static_cast<float>(value);
}

void ToneVoice::render(std::span<float> samples, bool hushed) {
  for (float& sample : samples) sample = next(hushed);
}

}  // namespace mastwise::sound
