#pragma once

#include "core/sound/tone.hpp"

#include <cstddef>
#include <deque>
#include <vector>

namespace mastwise::sound {

using Samples = std::vector<float>;

// What comes out of the speaker: a tone, and now and then a short sound or some words. The tone
// makes way for these, so that words are understood and nothing adds up beyond full scale.
class Mixer {
 public:
  void set_tone(const std::optional<Tone>& tone) { tone_.play(tone); }
  // Plays the samples once, after what already waits.
  void insert(Samples samples);
  // Drops what waits and fades out what is being inserted.
  void drop();
  // Whether something inserted sounds or waits.
  bool inserting() const { return !waiting_.empty(); }
  bool silent() const { return waiting_.empty() && tone_.silent(); }
  void render(std::span<float> samples);

 private:
  ToneVoice tone_;
  std::deque<Samples> waiting_;
  std::size_t at_ = 0;  // in the first of them
};

}  // namespace mastwise::sound
