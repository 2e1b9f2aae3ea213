#pragma once

#include "app/model/stations.hpp"
#include "core/geo/paper_map.hpp"
#include "core/headings/aim_card.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/headings/sayings.hpp"

#include <optional>
#include <string>
#include <vector>

namespace mastwise {
struct Model;
}

// The card for the glove box: what a person needs who has only paper and a baseplate compass.
namespace mastwise::paper {

// A channel to enter into the receiver by hand.
struct PaperChannel {
  std::string rf_channel, shows;  // its number, and what the receiver then shows
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
  std::vector<std::string> out = {};  // what no heading brings
  bool fewest_proved = true;
};

// How long the way to the station is on a sheet.
struct LengthOnMap {
  double ratio;  // of the map's scale, 1 to so many
  double length_mm;
};

struct PaperCard {
  bool practice = false;
  bool miles = true;
  Position stop;
  bool stop_stale = false;  // the receiver has fallen silent and this is where it was last
  UtcTime date = {};        // of the declination
  AimCard aim;
  std::string title = {}, about = {};         // of the station; empty where the aim is a place
  std::optional<double> chance_percent = {};  // nothing where not known
  std::optional<Slack> slack = {};            // nothing where not known
  std::vector<Saying> sayings = {};           // those of a compass in the hand
  NorthMistakes mistakes = {};
  std::optional<RulerLine> ruler = {};    // on a sheet whose upright is true north
  std::vector<LengthOnMap> lengths = {};  // on usual maps, where a sheet is large enough
  std::optional<PaperPlan> plan = {};     // where it was asked for and is known
};

// What the card is made from.
struct CardFacts {
  bool practice = false;
  bool miles = true;
  Position stop;
  bool stop_stale = false;
  UtcTime date = {};
  AimCard aim;
  std::optional<Station> station = {};
  std::optional<double> chance_percent = {};
  std::optional<Slack> slack = {};
  HeadingContext context = {};             // of the stop, the station and the compass
  const StationsAnswer* answer = nullptr;  // whose plan is to stand on the card, if any
};
PaperCard card_of(const CardFacts& facts);

// The card of the aim and the plan in use; the error says what is missing.
Result<PaperCard> card_of(const Model& model);

}  // namespace mastwise::paper
