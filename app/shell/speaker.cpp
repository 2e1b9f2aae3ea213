#include "app/shell/speaker.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <SDL.h>

namespace mastwise::shell {
namespace {

constexpr int kRate_hz = 22'050;
constexpr double kLoudest = 0.35;
// Half of each pulse sounds; it fades in and out in these seconds to avoid clicks.
constexpr double kFade_s = 0.008;

}  // namespace

Speaker::~Speaker() {
  close();
}

void Speaker::play(const std::optional<Tone>& tone) {
  if (tone == playing_) return;
  playing_ = tone;
  if (!tone) {
    close();
    return;
  }
  frequency_hz_ = static_cast<float>(tone->frequency_hz);
  other_hz_ = static_cast<float>(tone->other_hz);
  pulses_per_s_ = static_cast<float>(tone->pulses_per_s);
  loudest_ = static_cast<float>(kLoudest * tone->loudness);
  if (device_ == 0) open();
}

void Speaker::open() {
  if (without_device_) return;
  // Do not try again without a device: opening can take long.
  without_device_ = SDL_InitSubSystem(SDL_INIT_AUDIO) != 0;
  if (without_device_) return;
  SDL_AudioSpec wanted{};
  wanted.freq = kRate_hz;
  wanted.format = AUDIO_F32SYS;
  wanted.channels = 1;
  wanted.samples = 512;
  wanted.callback = fill_from;
  wanted.userdata = this;
  device_ = SDL_OpenAudioDevice(nullptr, 0, &wanted, nullptr, 0);
  without_device_ = device_ == 0;
  if (device_ != 0) SDL_PauseAudioDevice(device_, 0);
}

void Speaker::close() {
  if (device_ == 0) return;
  SDL_CloseAudioDevice(device_);
  SDL_QuitSubSystem(SDL_INIT_AUDIO);
  device_ = 0;
  loudness_ = pulse_ = 0.0;
}

void Speaker::fill_from(void* speaker, std::uint8_t* bytes, int size) {
  // SDL passes the samples' storage as bytes.
  static_cast<Speaker*>(speaker)->fill(reinterpret_cast<float*>(bytes),
                                       size / static_cast<int>(sizeof(float)));
}

void Speaker::fill(float* samples, int count) {
  const double pulses_per_s = pulses_per_s_, frequency_hz = frequency_hz_, other_hz = other_hz_;
  const double loudest = loudest_;
  constexpr double kStep = kLoudest / (kFade_s * kRate_hz);
  for (int i = 0; i < count; ++i) {
    pulse_ = std::fmod(pulse_ + pulses_per_s / kRate_hz, 1000.0);
    const bool second = other_hz > 0.0 && static_cast<int>(pulse_) % 2 == 1;
    // Two alternating pitches do not need a pause.
    const bool sounds = pulses_per_s == 0.0 || other_hz > 0.0 || std::fmod(pulse_, 1.0) < 0.5;
    loudness_ += std::clamp((sounds ? loudest : 0.0) - loudness_, -kStep, kStep);
    turn_ = std::fmod(turn_ + (second ? other_hz : frequency_hz) / kRate_hz, 1.0);
    samples[i] = static_cast<float>(loudness_ * std::sin(2.0 * std::numbers::pi * turn_));
  }
}

}  // namespace mastwise::shell
