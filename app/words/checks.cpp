#include "app/words/checks.hpp"

#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <cmath>

#include <fmt/format.h>

namespace mastwise::words {
namespace {

std::string by_checks(const aim::DialCheck& check) {
  const auto& p = phrases().checks;
  return check.stations == 1 ? std::string(p.by_one_check)
                             : fill(p.by_checks, {{"number", std::to_string(check.stations)}});
}

// The number to set on the dial, or why the correction cannot be used.
std::string dial_check(Phrase phrase, const aim::DialCheck& check,
                       const std::optional<std::string>& set_to) {
  const auto& p = phrases().checks;
  if (check.refused) return check.refused->message();
  if (!check.usable() || !set_to) return p.implausible;
  std::string words =
      fill(phrase, {{"by", by_checks(check)},
                    {"off", fmt::format("{:.0f}", check.off.size_deg())},
                    {"set", *set_to},
                    {"error", fmt::format("{:.0f}", std::ceil(check.correction->sigma_deg))}});
  if (check.correction->contradicts) words += p.contradiction;
  return words;
}

}  // namespace

std::string reciprocal(const ReciprocalCheck& check) {
  const auto& p = phrases().checks;
  if (check.agree) return p.readings_agree;
  return fill(p.readings_disagree,
              {{"degrees", amount_of_degrees(check.disagreement.clockwise_deg())}});
}

std::string agreement(const Agreement& agreement) {
  const auto& p = phrases().checks;
  return fill(p.agreement, {{"degrees", amount_of_degrees(agreement.difference.clockwise_deg())},
                            {"usual", fmt::format("{:.0f}", agreement.sigma_deg)},
                            {"verdict", named(p.verdicts, agreement.verdict)}});
}

std::string needle_pull(NeedlePull pull) {
  return named(phrases().checks.needle_pulls, pull);
}

std::string compass_check(const aim::DialCheck& check,
                          const std::optional<Bearing<Dial>>& turn_to) {
  const auto& p = phrases().checks;
  const bool low = check.off.clockwise_deg() >= 0.0;
  return dial_check(low ? p.compass_low : p.compass_high, check,
                    turn_to ? std::optional(whole_degrees(*turn_to)) : std::nullopt);
}

std::string compass_agrees(const aim::DialCheck& check) {
  return fill(phrases().checks.compass_agrees,
              {{"by", by_checks(check)},
               {"error", fmt::format("{:.0f}", std::ceil(check.correction->sigma_deg))}});
}

std::string sweep_too_wide(double error95_deg, double forgiven_deg) {
  return fill(phrases().checks.sweep_too_wide,
              {{"error", fmt::format("{:.0f}", std::ceil(error95_deg))},
               {"forgiven", fmt::format("{:.0f}", std::floor(forgiven_deg))}});
}

std::string handle_check(const aim::DialCheck& check, const std::optional<HandleReading>& set_to) {
  return dial_check(phrases().checks.handle_off, check,
                    set_to ? std::optional(plain_degrees(set_to->dial_deg())) : std::nullopt);
}

}  // namespace mastwise::words
