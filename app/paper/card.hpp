#pragma once

#include "app/shared/survey.hpp"
#include "core/geo/paper_map.hpp"
#include "core/headings/aim_card.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/headings/sayings.hpp"
#include "core/sweep/strong_station.hpp"

#include <optional>
#include <string>
#include <vector>

namespace mastwise {
struct Shared;
}

// The card for the glove box, for a person with only paper and a baseplate compass.
namespace mastwise::paper {

// A channel to enter into the receiver by hand.
struct PaperChannel {
  std::string rf_channel, shows;  // its number, and the channel that the receiver shows
};

// A heading of the turn plan.
struct PaperHeading {
  Bearing<True> bearing;
  Bearing<Magnetic> magnetic;
  Slack slack = {};
  std::vector<PlanStation> brings = {}, loses = {};
  std::vector<PaperChannel> channels = {};  // in the order to enter them
  std::string remark = {};
};

struct PaperPlan {
  std::vector<PaperHeading> headings = {};
  std::vector<std::string> out = {};  // stations that no heading brings in
  bool fewest_proved = true;
};

// The length of the path to the station on a sheet.
struct LengthOnMap {
  double ratio;  // map scale, 1 to this ratio
  double length_mm;
};

struct PaperCard {
  bool practice = false;
  bool miles = true;
  Position stop;
  bool stop_stale = false;           // the receiver is silent and this is its last position
  UtcTime date = {};                 // of the declination
  std::chrono::local_days day = {};  // the same by the stop's clocks
  AimCard aim;
  std::string title = {}, about = {};         // of the station; empty if the target is a place
  std::optional<double> chance_percent = {};  // empty if unknown
  bool on_this_tv = true;                     // false: the TV cannot decode the station
  std::optional<Slack> slack = {};            // empty if unknown
  std::vector<Saying> sayings = {};           // those of a handheld compass
  Standing read_at = Standing::well_clear;    // where the card says to read it
  NorthMistakes mistakes = {};
  std::optional<RulerLine> ruler = {};    // on a sheet with true north up
  std::vector<LengthOnMap> lengths = {};  // on common maps with a large enough sheet
  std::optional<PaperPlan> plan = {};     // if requested and computed
};

// The card's inputs.
struct CardFacts {
  bool practice = false;
  bool miles = true;
  Position stop;
  bool stop_stale = false;
  UtcTime date = {};
  std::chrono::local_days day = {};  // the same by the stop's clocks
  AimCard aim;
  std::optional<Station> station = {};
  std::optional<double> chance_percent = {};
  bool on_this_tv = true;
  std::optional<Slack> slack = {};
  std::optional<aim::DialCorrection> compass = {};  // of a kept sweep
  // Of the stop, the station and the compass; where it is read is context.standing, or well clear.
  HeadingContext context = {};
  const StationsAnswer* answer = nullptr;  // whose plan the card shows, if any
};
PaperCard card_of(const CardFacts& facts);

// The card of the target and the plan in use; the error says what is missing.
Result<PaperCard> card_of(const Shared& shared);

}  // namespace mastwise::paper
