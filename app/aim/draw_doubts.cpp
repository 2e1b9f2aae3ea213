#include "app/aim/draw_doubts.hpp"

#include "app/words/checks.hpp"
#include "app/words/headings.hpp"
#include "app/words/language.hpp"
#include "app/words/needle.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

namespace mastwise::screens {
namespace {

using words::say;

bool points_by_needle(PointingMethod method) {
  using enum PointingMethod;
  return method == baseplate_compass || method == sighting_compass || method == set_compass ||
         method == turn_in_place;
}

}  // namespace

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
  if (found.position_stale) {
    all.push_back(say("The receiver is silent: this uses the rig's last position."));
  }
  if (card.field.zone == MagneticField::Zone::Blackout) {
    all.push_back(say("Do not trust a compass so near the magnetic pole."));
  } else if (card.field.zone == MagneticField::Zone::Caution) {
    all.push_back(say("Near the magnetic pole, a compass is slow and uncertain."));
  }
  const NeedleHere needle = needle_here(shared.settings.needle, card.field.inclination_deg);
  if (points_by_needle(shared.settings.pointing) && needle.swing != NeedleSwing::free) {
    all.push_back(words::needle_swing(shared.settings.needle, needle));
  }
  if (card.field.beyond_model_end) {
    all.push_back(
        say("The magnetic model ended on 31 December 2029: the compass number may be off."));
  }
  return all;
}

}  // namespace mastwise::screens
