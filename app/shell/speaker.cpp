#include "app/shell/speaker.hpp"

#include <utility>

#include <SDL.h>

namespace mastwise::shell {
namespace {

// Keeps the audio thread out of the mixer. It runs only while a device is open.
class Locked {
 public:
  explicit Locked(SDL_AudioDeviceID device) : device_(device) {
    if (device_ != 0) SDL_LockAudioDevice(device_);
  }
  ~Locked() {
    if (device_ != 0) SDL_UnlockAudioDevice(device_);
  }
  Locked(const Locked&) = delete;
  Locked& operator=(const Locked&) = delete;

 private:
  SDL_AudioDeviceID device_;
};

}  // namespace

Speaker::~Speaker() {
  close();
}

void Speaker::play(const std::optional<sound::Tone>& tone) {
  if (tone != playing_) {
    playing_ = tone;
    if (tone && device_ == 0) open();
    const Locked locked(device_);
    mixer_.set_tone(tone);
  }
  const auto silent = [&] {
    const Locked locked(device_);
    return mixer_.silent();
  };
  if (device_ != 0 && silent()) close();
}

void Speaker::insert(sound::Samples samples) {
  if (device_ == 0) open();
  if (device_ == 0) return;
  const Locked locked(device_);
  mixer_.insert(std::move(samples));
}

void Speaker::drop() {
  const Locked locked(device_);
  mixer_.drop();
}

bool Speaker::inserting() {
  const Locked locked(device_);
  return mixer_.inserting();
}

void Speaker::open() {
  if (without_device_) return;
  // Do not try again without a device: opening can take long.
  without_device_ = SDL_InitSubSystem(SDL_INIT_AUDIO) != 0;
  if (without_device_) return;
  SDL_AudioSpec wanted{};
  wanted.freq = sound::kRate_hz;
  wanted.format = AUDIO_F32SYS;
  wanted.channels = 1;
  wanted.samples = 512;
  wanted.callback = fill;
  wanted.userdata = &mixer_;
  device_ = SDL_OpenAudioDevice(nullptr, 0, &wanted, nullptr, 0);
  without_device_ = device_ == 0;
  if (device_ != 0) SDL_PauseAudioDevice(device_, 0);
}

void Speaker::close() {
  if (device_ == 0) return;
  SDL_CloseAudioDevice(device_);
  SDL_QuitSubSystem(SDL_INIT_AUDIO);
  device_ = 0;
}

void Speaker::fill(void* mixer, std::uint8_t* bytes, int size) {
  // SDL passes the samples' storage as bytes.
  static_cast<sound::Mixer*>(mixer)->render(
      {reinterpret_cast<float*>(bytes), static_cast<std::size_t>(size) / sizeof(float)});
}

}  // namespace mastwise::shell
