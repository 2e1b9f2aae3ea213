#include "app/words/cautions.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"
#include "core/safety/keep_out.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/format.h>

namespace mastwise::words {
namespace {

// Rounded up, but not by what a conversion leaves: 6.096 m are 20 ft.
double rounded_up(double number) {
  constexpr double kRoundOff = 1e-6;
  return std::ceil(number - kRoundOff);
}

// As the sources round them: 10 ft are 3 m and 20 ft are 6 m.
bool is_published(double distance_m) {
  constexpr double kRoundOff_m = 1e-6;
  return std::fabs(distance_m - safety::kLeastFromLine_m) < kRoundOff_m ||
         std::fabs(distance_m - safety::kLeastFromUnknownLine_m) < kRoundOff_m;
}

}  // namespace

std::string at_least_alone(double distance_m, bool miles) {
  if (miles)
    return fmt::format("{:.0f} {}", rounded_up(distance_m / kFoot_m), phrases().units.foot);
  const double meters = is_published(distance_m) ? std::floor(distance_m) : rounded_up(distance_m);
  return fmt::format("{:.0f} {}", meters, phrases().units.meter);
}

std::string at_least(double distance_m, bool miles) {
  return fmt::format("{} ({})", at_least_alone(distance_m, miles),
                     at_least_alone(distance_m, !miles));
}

std::string in_language(std::string_view english) {
  return say(std::string(english).c_str());
}

std::string caution_head(const safety::Caution& caution, double distance_m, bool miles) {
  const std::string english(caution.head);
  return fill(say(english.c_str()), {{"distance", at_least(distance_m, miles)}});
}

std::string sources(const safety::Prompt& prompt) {
  std::vector<std::string> parts;
  for (const safety::Caution& caution : prompt.cautions) {
    std::string_view rest = caution.source;
    while (!rest.empty()) {
      const std::size_t end = std::min(rest.find("; "), rest.size());
      const std::string part = in_language(rest.substr(0, end));
      if (std::find(parts.begin(), parts.end(), part) == parts.end()) parts.push_back(part);
      rest.remove_prefix(std::min(rest.size(), end + 2));
    }
  }
  return sentence(fmt::format("{}", fmt::join(parts, "; ")));
}

std::string speed_number(double speed_kmh, bool miles) {
  return fmt::format("{:.0f}", speed_kmh * kKilometer_m / distance_unit_m(miles));
}

std::string speed_unit(bool miles) {
  return miles ? say("mph") : say("km/h");
}

}  // namespace mastwise::words
