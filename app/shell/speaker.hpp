#pragma once

#include "app/session/turn_tone.hpp"

#include <atomic>
#include <cstdint>
#include <optional>

#include <SDL_audio.h>

namespace mastwise::shell {

// Plays one tone at a time through SDL's audio. The device is open only during sound, so silence
// costs nothing. Without a device it stays silent: the screen shows the same facts. The interface
// thread calls it; SDL's audio thread reads samples.
class Speaker {
 public:
  Speaker() = default;
  ~Speaker();
  Speaker(const Speaker&) = delete;
  Speaker& operator=(const Speaker&) = delete;

  void play(const std::optional<Tone>& tone);
  bool is_open() const { return device_ != 0; }

 private:
  void open();
  void close();
  void fill(float* samples, int count);
  static void fill_from(void* speaker, std::uint8_t* bytes, int size);

  SDL_AudioDeviceID device_ = 0;
  bool without_device_ = false;
  std::optional<Tone> playing_;
  // Read by the audio thread.
  std::atomic<float> frequency_hz_ = 0.0F, other_hz_ = 0.0F, pulses_per_s_ = 0.0F, loudest_ = 0.0F;
  // Used by the audio thread only.
  double turn_ = 0.0;   // of the wave, [0, 1)
  double pulse_ = 0.0;  // pulses so far
  double loudness_ = 0.0;
};

}  // namespace mastwise::shell
