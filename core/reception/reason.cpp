#include "core/reception/reason.hpp"

#include <array>

namespace mastwise::reception {
namespace {

constexpr std::array<std::string_view, kReasonKinds> kKindNames{
    "obstacle",     "rough_ground",        "surroundings", "leaves",       "polarization",
    "same_channel", "next_channel",        "noise",        "aim",          "fading",
    "model_spread", "transmitter_pattern", "shortfall",    "overload",     "logbook",
    "clear_line",   "no_terrain",          "model_limit",  "unknown_fact", "amplifier_off",
    "decoding",     "assumed_mode",        "on_its_side"};

constexpr std::array<std::string_view, kUnknownFacts> kUnknownNames{
    "channel", "power", "height", "too_near", "model_range", "antenna_amsl", "standard"};

template <class Names>
std::string_view name_of(const Names& names, std::size_t number) {
  return number < names.size() ? names[number] : std::string_view{};
}

}  // namespace

std::string_view to_text(ReasonKind kind) {
  return name_of(kKindNames, static_cast<std::size_t>(kind));
}

std::string_view to_text(UnknownFact what) {
  return name_of(kUnknownNames, static_cast<std::size_t>(what));
}

}  // namespace mastwise::reception
