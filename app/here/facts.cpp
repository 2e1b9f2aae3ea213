#include "app/here/facts.hpp"

#include "app/words/chances.hpp"
#include "app/words/headings.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/receivers.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using words::fill;
using words::say;

std::string give_or_take(double sigma_m, bool miles) {
  return "± " + words::height(std::max(1.0, sigma_m), miles);
}

PositionFacts by_hand(const Shared& shared) {
  const Stop& stop = shared.stop;
  if (!shared.findings.position) return {.title = say("Unknown"), .warns = true};
  if (stop.practice) return {.title = say("Practice"), .lines = {say("An invented stop")}};
  const std::string error = give_or_take(stop.by_hand_error_m, shared.settings.miles);
  if (stop.by_name.empty()) {
    return {.title = fill(say("By hand {error}"), {{"error", error}})};
  }
  return {.title = say("A town's middle"),
          .warns = true,
          .lines = {fill(say("The middle of {name}: the rig may be miles away"),
                         {{"name", stop.by_name}})}};
}

std::string parked_words(const nmea::ParkedPosition& parked) {
  return fill(say("Parked {time}, averaging"), {{"time", words::age(parked.duration)}});
}

const char* origin_words(Nose::Origin origin) {
  switch (origin) {
    case Nose::Origin::ByHand:
      return say("Typed");
    case Nose::Origin::LastCourse:
      return say("Drove in forward");
    case Nose::Origin::BackedIn:
      return say("Backed in");
    case Nose::Origin::Sensor:
      return say("By the sensor");
    case Nose::Origin::Sun:
      return say("By the sun");
    case Nose::Origin::TwoPoints:
      return say("By two points");
  }
  return "";
}

const char* sides_phrase(reception::SideKind kind, bool one) {
  using reception::SideKind;
  switch (kind) {
    case SideKind::unmarked:
    case SideKind::open:
      break;
    case SideKind::trees:
      return one ? say("Trees on 1 side") : say("Trees on {number} sides");
    case SideKind::rig:
      return one ? say("A rig on 1 side") : say("Rigs on {number} sides");
    case SideKind::hill:
      return one ? say("A hill on 1 side") : say("Hills on {number} sides");
  }
  return "";
}

// Where the stations around are sent, which tells what a TV usually decodes.
Raster raster_here(const Shared& shared) {
  if (shared.stop.target) return shared.stop.target->raster;
  if (shared.stations && !shared.stations->rows.empty()) {
    return shared.stations->rows.front().station.raster;
  }
  return Raster::atsc;
}

}  // namespace

PositionFacts position_facts(const Shared& shared) {
  if (shared.stop.source == PositionSource::ByHand) return by_hand(shared);
  const nmea::Fix fix = shared.receiver.fix(shared.now);
  const auto parked = shared.parked.result();
  PositionFacts facts;
  if (!fix.good()) {
    facts.warns = true;
    facts.title = shared.findings.position ? say("GPS silent") : say("No position");
    facts.lines.push_back(words::sentence(words::fix_trouble(fix)));
    if (shared.findings.position && fix.age) {
      facts.lines.push_back(fill(say("Last position {age} ago."), {{"age", words::age(*fix.age)}}));
    }
    return facts;
  }
  const bool miles = shared.settings.miles;
  // Along one axis. A receiver that repeats itself scatters less than it errs.
  std::optional<double> error_m = parked ? parked->scatter_m : std::nullopt;
  if (fix.error_m) error_m = std::max(error_m.value_or(0.0), *fix.error_m / std::numbers::sqrt2);
  facts.title = error_m ? fill(say("GPS {error}"), {{"error", give_or_take(*error_m, miles)}})
                        : std::string(say("GPS"));
  if (fix.satellites) {
    facts.lines.push_back(
        fill(say("{number} satellites"), {{"number", std::to_string(*fix.satellites)}}));
  }
  if (parked && parked->count > 1) facts.lines.push_back(parked_words(*parked));
  return facts;
}

double scatter_ring_m(const std::vector<nmea::ParkedAverage::Offset>& offsets, bool miles) {
  double farthest_m = 0.0;
  for (const auto& offset : offsets) {
    farthest_m = std::max(farthest_m, std::hypot(offset.east_m, offset.north_m));
  }
  const double unit_m = miles ? words::kFoot_m : 1.0;
  for (const double round : {1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0}) {
    if (round * unit_m >= 0.85 * farthest_m) return round * unit_m;
  }
  return farthest_m;
}

NoseFacts nose_facts(const Shared& shared) {
  const Findings& found = shared.findings;
  if (!found.nose) {
    if (found.moved_m) {
      return {.origin = words::sentence(words::rig_moved(*found.moved_m, shared.settings.miles)),
              .warns = true};
    }
    return {.origin = shared.stop.nose ? say("Typed from the compass; set the position")
                                       : say("Only for angles from the nose")};
  }
  NoseFacts facts{.true_words = fill(say("{degrees} true"),
                                     {{"degrees", words::whole_degrees(found.nose->nose())}}),
                  .origin = fmt::format("{}, ± {:.0f}°", origin_words(shared.stop.nose->origin),
                                        std::max(1.0, nose_sigma_deg(shared, *shared.stop.nose)))};
  if (const auto compass = on_compass_here(shared, found.nose->nose())) {
    facts.magnetic_words =
        fill(say("{degrees} compass"), {{"degrees", words::whole_degrees(*compass)}});
  }
  if (const auto& caution = shared.stop.nose->caution) {
    facts.origin = words::sentence(words::rig_heading_caution(*caution));
    facts.warns = true;
  }
  return facts;
}

std::string around_words(const Shared& shared) {
  using reception::SideKind;
  std::array<std::size_t, reception::kSideKinds> counts{};
  for (const reception::Side& side : shared.findings.ring.sides) {
    ++counts[static_cast<std::size_t>(side.kind)];
  }
  SideKind most = SideKind::unmarked;
  std::size_t number = 0;
  for (const SideKind kind : {SideKind::trees, SideKind::rig, SideKind::hill}) {
    const std::size_t count = counts[static_cast<std::size_t>(kind)];
    if (count <= number) continue;
    most = kind;
    number = count;
  }
  if (number > 0) {
    return fill(sides_phrase(most, number == 1), {{"number", std::to_string(number)}});
  }
  if (shared.stop.surroundings == reception::Surroundings::open) return say("Open ground");
  return words::sentence(words::surroundings(shared.stop.surroundings, shared.findings.in_leaf));
}

gear::DecoderSet decoders_here(const Shared& shared) {
  return shared.settings.gear.decoders.value_or(gear::usual_decoders(raster_here(shared)));
}

std::string noise_words(const Shared& shared) {
  const Stop& stop = shared.stop;
  const auto usual = reception::figures(stop.surroundings).noise;
  std::string words = say(to_text(stop.noise.value_or(usual)));
  if (stop.inverter_on) words += say(", inverter on");
  if (!shared.settings.appliances.empty()) words += say(", appliances measured");
  return words;
}

std::string towers_words(const Shared& shared) {
  const auto& [radio, cell] = shared.stop.towers;
  constexpr auto kNone = gear::TowerRange::none;
  if (radio != kNone && cell != kNone) return say("radio and cell tower");
  if (radio != kNone) return say("radio tower");
  return cell != kNone ? say("cell tower") : say("none seen");
}

std::string television_words(const Shared& shared) {
  return to_text(decoders_here(shared));
}

std::string octants_words(const Position& position) {
  const double latitude = position.latitude_deg(), longitude = position.longitude_deg();
  return fmt::format("{:.0f}° {}  {:.0f}° {}", std::fabs(latitude),
                     latitude < 0.0 ? say("S") : say("N"), std::fabs(longitude),
                     longitude < 0.0 ? say("W") : say("E"));
}

std::vector<std::string> clock_warnings(const Shared& shared) {
  const Findings& found = shared.findings;
  std::vector<std::string> warnings;
  if (clock_is_wrong(shared)) {
    warnings.push_back(
        fill(say("The tablet's clock is wrong, it says {date}. Set it."),
             {{"date", words::date(local_day(shared.machine_time, *found.zone.clocks))}}));
  }
  if (const auto& trusted = shared.receiver.date(); trusted && trusted->weeks_shifted != 0) {
    warnings.push_back(fill(trusted->weeks_shifted > 0
                                ? say("The receiver's date was {weeks} weeks behind; corrected.")
                                : say("The receiver's date was {weeks} weeks ahead; corrected."),
                            {{"weeks", std::to_string(std::abs(trusted->weeks_shifted))}}));
  }
  if (found.field && found.field->beyond_model_end) {
    warnings.push_back(say("The magnetic model has ended: the compass number may be off."));
  }
  return warnings;
}

}  // namespace mastwise::screens
