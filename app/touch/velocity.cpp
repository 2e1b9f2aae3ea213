#include "app/touch/velocity.hpp"

#include <algorithm>

namespace mastwise::touch {
namespace {

constexpr milliseconds kWindow{100};
constexpr milliseconds kLeastTime{8};

}  // namespace

void Velocity::add(Point place_px, Monotonic at) {
  samples_.push_back({place_px, at});
  while (samples_.front().at + kWindow < at) samples_.pop_front();
}

Point Velocity::at_release(Monotonic at) const {
  const auto first = std::find_if(samples_.begin(), samples_.end(),
                                  [&](const Sample& sample) { return sample.at + kWindow >= at; });
  if (first == samples_.end() || at - first->at < kLeastTime) return {};
  const float seconds = std::chrono::duration<float>(at - first->at).count();
  return (samples_.back().place_px - first->place_px) * (1.0F / seconds);
}

}  // namespace mastwise::touch
