#include "app/shell/voice.hpp"

#include "app/service/speech.hpp"

namespace mastwise::shell {

void Voice::say(const std::string& words) {
  using Speaking = Worker<std::string, sound::Samples>;
  if (!worker_) {
    const auto speak = [speech = std::make_shared<Speech>()](const std::string& text,
                                                             const Speaking::Work&) {
      auto sound = speech->of(text);
      return sound ? *std::move(sound) : sound::Samples();
    };
    worker_ = std::make_unique<Speaking>(speak, wake_);
    worker_->turn();
  }
  busy_ = true;
  worker_->ask(words);
}

std::optional<sound::Samples> Voice::take() {
  if (!worker_) return std::nullopt;
  worker_->turn();
  auto sound = worker_->take();
  if (sound) busy_ = false;
  return sound;
}

}  // namespace mastwise::shell
