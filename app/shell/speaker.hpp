#pragma once

#include "core/sound/mixer.hpp"

#include <cstdint>
#include <optional>

#include <SDL_audio.h>

namespace mastwise::shell {

// Plays a mixer through SDL's audio. The device is open only during sound, so silence costs
// nothing. Without a device it stays silent: the screen shows the same facts. The interface thread
// calls it; SDL's audio thread reads samples.
class Speaker {
 public:
  Speaker() = default;
  ~Speaker();
  Speaker(const Speaker&) = delete;
  Speaker& operator=(const Speaker&) = delete;

  // Call often: also closes the device some time after the last sound has faded out.
  void play(const std::optional<sound::Tone>& tone);
  void insert(sound::Samples samples);
  void drop();
  // Whether something inserted sounds or waits. Never without a device.
  bool inserting();
  bool is_open() const { return device_ != 0; }

 private:
  void open();
  void close();
  static void fill(void* mixer, std::uint8_t* bytes, int size);

  SDL_AudioDeviceID device_ = 0;
  bool without_device_ = false;
  std::optional<sound::Tone> playing_;
  sound::Mixer mixer_;  // the audio thread's, but under SDL's lock
};

}  // namespace mastwise::shell
