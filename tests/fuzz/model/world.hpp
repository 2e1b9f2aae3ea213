#pragma once

#include "app/session/apply.hpp"
#include "app/session/working_state.hpp"
#include "platform/files.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <cmath>

// A model as the app begins with it.
namespace mastwise::fuzz {

inline const World& world() {
  static const auto kMagnetic = MagneticModel::load(platform::assets_folder() + "/magnetic");
  require(static_cast<bool>(kMagnetic));
  static const World kWorld{*kMagnetic, Stop{.practice = true,
                                             .source = PositionSource::ByHand,
                                             .by_hand = *Position::at_deg(42.6, -118.5)}};
  return kWorld;
}

inline Model new_model() {
  return {
      Shared{.receiver = nmea::Receiver(std::chrono::sys_days(std::chrono::year(2026) / 11 / 25))}};
}

// Whatever happened: figures on the screen are numbers, and a restart brings back the same state.
inline void check(const Model& model) {
  const Findings& found = model.findings;
  require(!found.speed_kmh || std::isfinite(*found.speed_kmh));
  require(std::isfinite(found.heading_error_deg) && found.heading_error_deg > 0.0);
  if (found.card) require(std::isfinite(found.card->distance_m));
  const std::string kept = working_state(model);
  Model restarted = new_model();
  restarted.settings = model.settings;
  require(static_cast<bool>(restore(restarted, kept, world())));
  derive_all(restarted, world());
  if (!model.stop.practice) require(working_state(restarted) == kept);
}

}  // namespace mastwise::fuzz
