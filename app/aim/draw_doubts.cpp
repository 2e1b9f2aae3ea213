#include "app/aim/draw_doubts.hpp"

#include "app/aim/moved.hpp"
#include "app/words/chances.hpp"
#include "app/words/checks.hpp"
#include "app/words/headings.hpp"
#include "app/words/language.hpp"
#include "app/words/needle.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"
#include "core/headings/sayings.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using words::say;

bool points_by_needle(PointingMethod method) {
  using enum PointingMethod;
  return method == baseplate_compass || method == sighting_compass || method == set_compass ||
         method == turn_in_place;
}

std::string listed(const std::vector<std::string>& titles) {
  constexpr std::size_t kNamed = 3;
  std::string all;
  for (std::size_t i = 0; i < std::min(titles.size(), kNamed); ++i) {
    all += (i == 0 ? "" : ", ") + titles[i];
  }
  return titles.size() > kNamed ? all + ", ..." : all;
}

// Rounded to half of its first figure's step in the shown unit: 985 ft are 1000 ft.
double roughly_m(double length_m, bool miles) {
  const double unit_m = miles ? words::kFoot_m : 1.0;
  const double length = std::max(1.0, length_m / unit_m);
  const double step = std::pow(10.0, std::floor(std::log10(length))) / 2.0;
  return step * std::round(length / step) * unit_m;
}

// One sentence for the stations, then one for the tolerance.
std::vector<std::string> move_words(const MoveNote& note, bool miles) {
  using words::fill;
  std::vector<std::string> all;
  const std::string distance = words::height(roughly_m(note.moved_m, miles), miles);
  if (!note.lost.empty() && !note.gained.empty()) {
    all.push_back(fill(say("In the last {distance}, stations lost: {lost}, gained: {gained}."),
                       {{"distance", distance},
                        {"lost", std::to_string(note.lost.size())},
                        {"gained", std::to_string(note.gained.size())}}));
  } else if (!note.lost.empty()) {
    all.push_back(fill(say("Lost in the last {distance}: {stations}."),
                       {{"distance", distance}, {"stations", listed(note.lost)}}));
  } else if (!note.gained.empty()) {
    all.push_back(fill(say("Gained in the last {distance}: {stations}."),
                       {{"distance", distance}, {"stations", listed(note.gained)}}));
  }
  if (note.before) {
    all.push_back(fill(say("Tolerance {distance} back: {tolerance}."),
                       {{"distance", distance}, {"tolerance", words::slack(note.before)}}));
  }
  return all;
}

// Nobody tells the app of clouds, so a way that needs the sky comes with one that does not.
std::optional<std::string> under_clouds(const Shared& shared, const AimState& aim) {
  const auto& standing = shared.stop.standing;
  const bool refused =
      points_by_needle(shared.settings.pointing) && standing && refuses_compass(*standing);
  const Saying* offered = refused ? best_way(aim.ways, true) : chosen_saying(shared, aim);
  if (offered == nullptr || !needs_sky(*offered)) return std::nullopt;
  const Saying* other = best_way(aim.ways, false);
  if (other == nullptr) return say("Under clouds: set the rig heading or type a landmark.");
  return words::fill(say("Under clouds: {way}, ± {degrees}°."),
                     {{"way", words::way_title(other->kind)},
                      {"degrees", fmt::format("{:.0f}", std::ceil(other->sigma_deg))}});
}

}  // namespace

const Saying* chosen_saying(const Shared& shared, const AimState& aim) {
  const auto found = std::find_if(aim.ways.begin(), aim.ways.end(), [&](const Saying& way) {
    return way.method == shared.settings.pointing;
  });
  return found == aim.ways.end() ? nullptr : &*found;
}

std::vector<std::string> heading_doubts(const Shared& shared, const AimState& aim) {
  const Findings& found = shared.findings;
  const AimCard& card = *found.card;
  std::vector<std::string> all;
  if (found.compass_check && !found.compass_agrees) {
    all.push_back(words::compass_check(*found.compass_check, found.corrected));
  }
  if (aim.anomaly) {
    all.push_back(say("More than the magnetic model's error: iron in the ground, or the needle."));
  }
  if (found.sensor_check && found.sensor_check->correction) {
    const aim::DialCheck& check = *found.sensor_check;
    all.push_back(words::fill(
        check.usable() ? say("The heading sensor is corrected by {degrees}, by a sweep here.")
                       : say("The heading sensor is {degrees} off the sweep here: check both."),
        {{"degrees", words::whole_degrees(check.off.size_deg())}}));
  }
  if (found.moved_m)
    all.push_back(words::sentence(words::rig_moved(*found.moved_m, shared.settings.miles)));
  if (aim.moved) {
    for (std::string& words : move_words(*aim.moved, shared.settings.miles)) {
      all.push_back(std::move(words));
    }
  }
  if (found.position_stale) {
    all.push_back(say("The receiver is silent: this uses the rig's last position."));
  }
  if (card.field.zone == MagneticField::Zone::Blackout) {
    all.push_back(say("Do not trust a compass so near the magnetic pole."));
  } else if (card.field.zone == MagneticField::Zone::Caution) {
    all.push_back(say("Near the magnetic pole, a compass is slow and uncertain."));
  }
  if (card.field.beyond_model_end) {
    all.push_back(
        say("The magnetic model ended on 31 December 2029: the compass number may be off."));
  }
  const NeedleHere needle = needle_here(shared.settings.needle, card.field.inclination_deg);
  if (points_by_needle(shared.settings.pointing) && needle.swing != NeedleSwing::free) {
    all.push_back(words::needle_swing(shared.settings.needle, needle));
  }
  if (const auto words = under_clouds(shared, aim)) all.push_back(*words);
  return all;
}

}  // namespace mastwise::screens
