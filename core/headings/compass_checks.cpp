#include "core/headings/compass_checks.hpp"

#include "core/headings/aim_words.hpp"

#include <array>
#include <cmath>

#include <fmt/format.h>

namespace mastwise {
namespace {

constexpr std::string_view kTradition = "field-manual tradition, common practice, no source";

constexpr std::array kKeepAway{
    KeepAway{"a vehicle or the rig", 5.0, 18.0, kTradition},
    KeepAway{"a wire fence", 10.0, std::nullopt, kTradition},
    KeepAway{"high-tension lines", 55.0, std::nullopt, kTradition},
};

Verdict verdict_of(double sigmas) {
  if (sigmas <= 1.0) return Verdict::agree;
  if (sigmas <= 2.0) return Verdict::agree_poorly;
  return sigmas <= 3.0 ? Verdict::in_doubt : Verdict::one_is_wrong;
}

const char* verdict_words(Verdict verdict) {
  switch (verdict) {
    case Verdict::agree:
      return "they agree";
    case Verdict::agree_poorly:
      return "they agree, though not well";
    case Verdict::in_doubt:
      return "in doubt: measure again";
    case Verdict::one_is_wrong:
      return "one of them is wrong: find out which before you turn";
  }
  return "";
}

NorthMistake mistake(Bearing<True> heading, Declination declination, double off_deg,
                     const std::string& how) {
  const Turn off = Turn::clockwise_deg(off_deg);
  const Bearing<True> aims_at = heading + off;
  const std::string effect = std::lround(off.size_deg()) == 0
                                 ? "makes no difference here"
                                 : "aims " + aside_words(off) + " of it";
  return {.aims_at = aims_at,
          .needle = to_magnetic(aims_at, declination),
          .off = off,
          .words = how + " " + effect};
}

}  // namespace

ReciprocalCheck check_reciprocal(Bearing<Magnetic> first_to_second,
                                 Bearing<Magnetic> second_to_first) {
  const Turn disagreement = second_to_first - first_to_second.reciprocal();
  ReciprocalCheck check{.disagreement = disagreement,
                        .agree = disagreement.size_deg() <= kReciprocalTolerance_deg,
                        .deviation_if_at_first = std::nullopt,
                        .deviation_if_at_second = std::nullopt,
                        .words = "The two readings agree: no iron shows at either spot"};
  if (check.agree) return check;
  check.deviation_if_at_first = disagreement;
  check.deviation_if_at_second = -disagreement;
  check.words = fmt::format(
      "The two readings disagree by {}: the needle is drawn aside at one of the spots. Read again "
      "from a third, farther from iron",
      degrees_words(disagreement.clockwise_deg()));
  return check;
}

std::span<const KeepAway> keep_away_distances() {
  return kKeepAway;
}

Result<Agreement> compare_headings(Bearing<True> first, double first_sigma_deg,
                                   Bearing<True> second, double second_sigma_deg) {
  const double sigma_deg = std::hypot(first_sigma_deg, second_sigma_deg);
  const bool usable = first_sigma_deg >= 0.0 && second_sigma_deg >= 0.0 &&
                      std::isfinite(sigma_deg) && sigma_deg > 0.0;
  if (!usable) {
    return Error{.what = "the two directions need their errors, in degrees and not both 0",
                 .where = "comparison of two directions",
                 .remedy = "say how well each was measured"};
  }
  const Turn difference = second - first;
  const double sigmas = difference.size_deg() / sigma_deg;
  const Verdict verdict = verdict_of(sigmas);
  return Agreement{.difference = difference,
                   .sigma_deg = sigma_deg,
                   .sigmas = sigmas,
                   .verdict = verdict,
                   .words = fmt::format("{} apart, where {:.0f} would be usual: {}",
                                        degrees_words(difference.clockwise_deg()), sigma_deg,
                                        verdict_words(verdict))};
}

NorthMistakes north_mistakes(Bearing<True> heading, Declination declination) {
  const double east_deg = declination.east_deg();
  const std::string as_true = whole_degrees(heading.degrees());
  const std::string as_magnetic = whole_degrees(to_magnetic(heading, declination).degrees());
  const std::string wrong_way = whole_degrees(heading.degrees() + east_deg);
  return {
      .map_north_as_magnetic = mistake(
          heading, declination, east_deg,
          "Reading the map's " + as_true + " on a plain compass, instead of " + as_magnetic + ","),
      .declination_twice = mistake(heading, declination, -east_deg,
                                   "Reading " + as_magnetic +
                                       " on a compass that has its own declination set, instead "
                                       "of " +
                                       as_true + ","),
      .wrong_sign = mistake(heading, declination, 2.0 * east_deg,
                            "Turning the declination the wrong way, to " + wrong_way +
                                " instead of " + as_magnetic + ",")};
}

}  // namespace mastwise
