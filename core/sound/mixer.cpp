#include "core/sound/mixer.hpp"

#include <algorithm>
#include <utility>

namespace mastwise::sound {
namespace {

constexpr auto kFadeSamples = static_cast<std::size_t>(kFade_s * kRate_hz);

}  // namespace

void Mixer::insert(Samples samples) {
  if (!samples.empty()) waiting_.push_back(std::move(samples));
}

void Mixer::drop() {
  if (waiting_.empty()) return;
  waiting_.resize(at_ == 0 ? 0 : 1);
  if (waiting_.empty()) return;
  Samples& present = waiting_.front();
  present.resize(std::min(present.size(), at_ + kFadeSamples));
  const std::size_t left = present.size() - at_;
  for (std::size_t i = 0; i < left; ++i) {
    present[at_ + i] *= static_cast<float>(left - i) / static_cast<float>(left + 1);
  }
}

void Mixer::render(std::span<float> samples) {
  for (float& sample : samples) {
    tone_.render({&sample, 1}, !waiting_.empty());
    if (waiting_.empty() || !tone_.still()) continue;
    sample = waiting_.front()[at_++];
    if (at_ < waiting_.front().size()) continue;
    waiting_.pop_front();
    at_ = 0;
  }
}

}  // namespace mastwise::sound
