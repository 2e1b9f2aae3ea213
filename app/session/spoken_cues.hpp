#pragma once

#include "app/session/model.hpp"

#include <optional>
#include <string>

namespace mastwise {

// What the voice says, and when. On the roof it tells the turn once in full, "Turn right, 40
// degrees", then only what is left, "27", "12", "5", and "There". It never says an old number: it
// decides when it is free to speak. Nothing is said twice while the antenna is still, but for one
// reminder. The drive-off alarm is spoken whatever the setting, because the driver must look at the
// road; not while it is quieter. So is the question whether the rig moves, once.
class SpokenCues {
 public:
  // The words to say now, if any. Call with every change of the model; `speaking`: the last words
  // are not yet over.
  std::optional<std::string> next(const Model& model, bool speaking);

 private:
  struct Said {
    int degrees = 0;  // left to turn
    bool right = false;
    bool there = false;
    bool reminded = false;
    Monotonic at = {};
  };
  std::optional<std::string> alarm_words(const Model& model);
  std::optional<std::string> turn_words(const Model& model);

  std::optional<Said> said_;          // on this visit to the roof
  std::optional<Monotonic> alarmed_;  // the begin of the alarm, or its last words
  bool asked_moving_ = false;         // that question was said
  Monotonic quiet_since_ = {};
};

}  // namespace mastwise
