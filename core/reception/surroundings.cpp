#include "core/reception/surroundings.hpp"

#include "core/propagation/p1812/terminal_clutter.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::reception {
namespace {

constexpr std::array kSurroundings{
    Surroundings::open,   Surroundings::scrub,  Surroundings::scattered_trees,
    Surroundings::forest, Surroundings::houses, Surroundings::town};

// P.833's woodland at three frequencies.
struct Woodland {
  double frequency_mhz;
  double specific_db_per_m;  // gamma
  double most_db;            // Am
};
constexpr std::array kWoodland{Woodland{106.0, 0.04, 9.4}, Woodland{466.0, 0.12, 18.0},
                               Woodland{949.0, 0.17, 26.5}};

Woodland woodland_at(double frequency_mhz) {
  const double f =
      std::clamp(frequency_mhz, kWoodland.front().frequency_mhz, kWoodland.back().frequency_mhz);
  const Woodland& low = f < kWoodland[1].frequency_mhz ? kWoodland[0] : kWoodland[1];
  const Woodland& high = f < kWoodland[1].frequency_mhz ? kWoodland[1] : kWoodland[2];
  const double t =
      std::log(f / low.frequency_mhz) / std::log(high.frequency_mhz / low.frequency_mhz);
  return {frequency_mhz,
          low.specific_db_per_m + t * (high.specific_db_per_m - low.specific_db_per_m),
          low.most_db + t * (high.most_db - low.most_db)};
}

// See leafy_month().
constexpr double kAlwaysLeafy_deg = 25.0;
struct LeafyMonths {
  double up_to_deg;
  unsigned first, last;
};
constexpr std::array kLeafyMonths{LeafyMonths{33.0, 3, 11}, LeafyMonths{39.0, 4, 11},
                                  LeafyMonths{52.0, 5, 10}, LeafyMonths{91.0, 5, 9}};

double height_loss_db(bool built, double clutter_height_m, double antenna_height_m,
                      double frequency_mhz) {
  using Kind = p1812::TerminalClutter::Kind;
  return p1812::terminal_clutter_loss_db(
      {.kind = built ? Kind::built : Kind::open, .height_m = clutter_height_m}, antenna_height_m,
      frequency_mhz / 1000.0);
}

// Loss of two paths whose powers add.
double both_ways_db(double one_db, double other_db) {
  return -10.0 * std::log10(std::pow(10.0, -one_db / 10.0) + std::pow(10.0, -other_db / 10.0));
}

}  // namespace

std::string_view to_text(Surroundings surroundings) {
  switch (surroundings) {
    case Surroundings::open:
      return "open";
    case Surroundings::scrub:
      return "scrub";
    case Surroundings::scattered_trees:
      return "scattered trees";
    case Surroundings::forest:
      return "forest";
    case Surroundings::houses:
      return "houses";
    case Surroundings::town:
      return "town";
  }
  return {};
}

Result<Surroundings> parse_surroundings(std::string_view text) {
  return words::parse_choice(text, kSurroundings, "a kind of surroundings");
}

SurroundingsFigures figures(Surroundings surroundings) {
  using gear::NoiseEnvironment;
  switch (surroundings) {
    case Surroundings::open:
      return {.noise = NoiseEnvironment::rural};
    case Surroundings::scrub:
      return {.leaves_m = 2.0, .noise = NoiseEnvironment::rural};
    case Surroundings::scattered_trees:
      return {.clutter_height_m = 15.0,
              .built = true,
              .wooded = true,
              .leaves_m = 10.0,
              .noise = NoiseEnvironment::rural};
    case Surroundings::forest:
      return {.clutter_height_m = 15.0,
              .built = true,
              .wooded = true,
              .leaves_m = 60.0,
              .noise = NoiseEnvironment::rural};
    case Surroundings::houses:
      return {.built = true, .noise = NoiseEnvironment::residential};
    case Surroundings::town:
      return {.clutter_height_m = 20.0, .built = true, .noise = NoiseEnvironment::city};
  }
  return {};
}

double calculated_height_m(Surroundings surroundings, double antenna_height_m) {
  return std::max(antenna_height_m, figures(surroundings).clutter_height_m);
}

std::string_view to_text(LeafChoice choice) {
  switch (choice) {
    case LeafChoice::by_season:
      return "season";
    case LeafChoice::in_leaf:
      return "on";
    case LeafChoice::bare:
      return "off";
  }
  return {};
}

Result<LeafChoice> parse_leaf_choice(std::string_view text) {
  constexpr std::array kChoices{LeafChoice::by_season, LeafChoice::in_leaf, LeafChoice::bare};
  return words::parse_choice(text, kChoices, "a state of the leaves");
}

bool leafy_month(double latitude_deg, std::chrono::month month) {
  const double from_equator_deg = std::fabs(latitude_deg);
  if (from_equator_deg < kAlwaysLeafy_deg) return true;
  if (latitude_deg < 0.0) month += std::chrono::months(6);
  const auto number = static_cast<unsigned>(month);
  for (const LeafyMonths& leafy : kLeafyMonths) {
    if (from_equator_deg < leafy.up_to_deg) return number >= leafy.first && number <= leafy.last;
  }
  return false;
}

bool in_leaf(LeafChoice choice, double latitude_deg, std::chrono::month month) {
  if (choice == LeafChoice::by_season) return leafy_month(latitude_deg, month);
  return choice == LeafChoice::in_leaf;
}

double leaves_loss_db(double depth_m, double frequency_mhz, bool in_leaf) {
  constexpr double kInLeafToBare = 1.2;
  const Woodland wood = woodland_at(frequency_mhz);
  const double specific_db_per_m = wood.specific_db_per_m / (in_leaf ? 1.0 : kInLeafToBare);
  return wood.most_db * (1.0 - std::exp(-depth_m * specific_db_per_m / wood.most_db));
}

LocalLoss local_loss(Surroundings surroundings, std::optional<double> leaves_m,
                     double antenna_height_m, double frequency_mhz, bool in_leaf) {
  const SurroundingsFigures around = figures(surroundings);
  const double shield_db =
      height_loss_db(around.built, around.clutter_height_m, antenna_height_m, frequency_mhz);
  const double leaves_db =
      leaves_loss_db(leaves_m.value_or(around.leaves_m), frequency_mhz, in_leaf);
  const double ground_db =
      height_loss_db(false, around.clutter_height_m, antenna_height_m, frequency_mhz);
  LocalLoss loss{.surroundings_db = shield_db, .leaves_db = leaves_db};
  if (around.wooded && antenna_height_m < around.clutter_height_m) {
    loss.surroundings_db = both_ways_db(shield_db, ground_db);
    loss.leaves_db = both_ways_db(shield_db, ground_db + leaves_db) - loss.surroundings_db;
  }
  loss.blocked_db = std::max(0.0, loss.total_db() - ground_db);
  return loss;
}

}  // namespace mastwise::reception
