#pragma once

#include "app/service/worker.hpp"
#include "core/sound/mixer.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <utility>

namespace mastwise::shell {

// Makes words into sound in its own thread, which starts with the first words: loading the
// synthesizer takes some 50 ms. Without a synthesizer it gives no sound.
class Voice {
 public:
  explicit Voice(std::function<void()> wake) : wake_(std::move(wake)) {}

  // Newer words replace those that are not yet spoken.
  void say(const std::string& words);
  // The sound of the last words, once.
  std::optional<sound::Samples> take();
  // Words wait for their sound.
  bool busy() const { return busy_; }

 private:
  std::function<void()> wake_;
  std::unique_ptr<Worker<std::string, sound::Samples>> worker_;
  bool busy_ = false;
};

}  // namespace mastwise::shell
