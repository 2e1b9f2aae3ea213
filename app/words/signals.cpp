#include "app/words/signals.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/reasons.hpp"
#include "app/words/units.hpp"

#include <array>
#include <cmath>
#include <cstdlib>

#include <fmt/format.h>

namespace mastwise::words {
namespace {

using reception::SignalLoss;
namespace fact = reception::fact;

// In the order of SignalLoss.
constexpr std::array<Phrase, reception::kSignalLosses> kSteps{"Distance, {distance}",
                                                              "Not sent toward you",
                                                              "Ridge, {distance} out",
                                                              "Earth's curve",
                                                              "Uneven ground",
                                                              "Low antenna, {height}",
                                                              "Houses or trees around",
                                                              "Trees in front",
                                                              "Painted beside you",
                                                              "Signal the other way up",
                                                              "Aim not exact",
                                                              "Amplifier off",
                                                              "Noise around",
                                                              "{station}, same channel",
                                                              "{station}, next channel",
                                                              "Second transmitter",
                                                              "Learned from your log"};

std::string with_cost(const std::string& what, double decibel) {
  return fill(say("{what}: {cost} dB"), {{"what", what}, {"cost", fmt::format("{:.0f}", decibel)}});
}

// The step of a link budget that a reason names, if it is one.
struct StepOf {
  using Step = std::optional<reception::SignalStep>;
  Step operator()(const fact::InTheWay& it) const {
    return reception::SignalStep{
        .what = it.obstacle.earth_curve ? SignalLoss::earth_curve : SignalLoss::ridge,
        .distance_m = it.obstacle.distance_m};
  }
  Step operator()(const fact::RoughGround&) const { return of(SignalLoss::ground); }
  Step operator()(const fact::AroundStop& it) const {
    return reception::SignalStep{
        .what = it.clutter_m ? SignalLoss::surroundings : SignalLoss::low_antenna,
        .height_m = it.antenna_m};
  }
  Step operator()(const fact::Leaves&) const { return of(SignalLoss::leaves); }
  Step operator()(const fact::OnItsSide&) const { return of(SignalLoss::beside); }
  Step operator()(const fact::CrossedPolarization&) const { return of(SignalLoss::polarization); }
  Step operator()(const fact::SameChannel& it) const {
    return reception::SignalStep{.what = SignalLoss::same_channel, .station = it.call_sign};
  }
  Step operator()(const fact::NextChannel& it) const {
    return reception::SignalStep{.what = SignalLoss::next_channel, .station = it.call_sign};
  }
  Step operator()(const fact::Noise&) const { return of(SignalLoss::noise); }
  Step operator()(const fact::HeadingError&) const { return of(SignalLoss::heading); }
  Step operator()(const fact::TransmitterPattern&) const {
    return of(SignalLoss::transmitter_pattern);
  }
  Step operator()(const fact::AmplifierOff&) const { return of(SignalLoss::amplifier_off); }
  template <class Other>
  Step operator()(const Other&) const {
    return std::nullopt;
  }

 private:
  static Step of(SignalLoss what) { return reception::SignalStep{.what = what}; }
};

}  // namespace

std::string signal_step(const reception::SignalStep& step, bool miles) {
  const std::string station = step.station.empty() ? say("A station") : step.station;
  return fill(say(named(kSteps, step.what).c_str()),
              {{"distance", distance(step.distance_m, miles)},
               {"height", height(step.height_m, miles)},
               {"station", station}});
}

std::string margin(double margin_db) {
  const std::string whole = fmt::format("{:.0f}", std::fabs(margin_db));
  return fill(margin_db >= 0.0 ? say("{decibel} dB to spare") : say("{decibel} dB too weak"),
              {{"decibel", whole}});
}

std::string signed_db(long decibel) {
  return fmt::format("{}{}", decibel < 0 ? "−" : decibel > 0 ? "+" : "", std::labs(decibel));
}

std::string brief_reason(const reception::Reason& reason, bool miles) {
  if (const auto step = std::visit(StepOf(), reason.fact)) {
    return with_cost(signal_step(*step, miles), reason.decibel);
  }
  switch (reason.kind()) {
    case reception::ReasonKind::fading:
      return with_cost(say("Evenings differ"), reason.decibel);
    case reception::ReasonKind::model_spread:
      return with_cost(say("Models differ"), 2.0 * reason.decibel);
    case reception::ReasonKind::overload:
      return with_cost(say("Amplifier overloaded"), reason.decibel);
    case reception::ReasonKind::no_terrain:
      return say("Ground not known");
    case reception::ReasonKind::decoding:
      return say("This TV may not decode it");
    default:
      return sentence(words::reason(reason, miles));
  }
}

}  // namespace mastwise::words
