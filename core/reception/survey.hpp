#pragma once

#include "core/gear/gear.hpp"
#include "core/gear/near_towers.hpp"
#include "core/geo/position.hpp"
#include "core/propagation/itm/itm.hpp"
#include "core/propagation/p1812/p1812.hpp"
#include "core/reception/land.hpp"
#include "core/reception/obstacle_ring.hpp"
#include "core/reception/partial_ground.hpp"
#include "core/reception/path_ground.hpp"
#include "core/reception/prospect.hpp"
#include "core/reception/signal_budget.hpp"
#include "core/reception/surroundings.hpp"
#include "core/stations/station.hpp"
#include "core/terrain/profile.hpp"
#include "core/terrain/tile_source.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace mastwise::reception {

// Standard deviation of the antenna's direction: a handheld compass and a ceiling handle [trade
// budget: 0.4 (+) 2 (+) 3 (+) 5 degrees].
inline constexpr double kUsualHeadingError_deg = 6.0;

// How far a gear's gain and losses are from its figures as long as the logbook has not learned it:
// roof, connectors and age [cp: roof hardware alone 2 to 3 dB].
inline constexpr double kUnlearnedGear_db = 3.0;

// The logbook's correction for a band at this stop with this gear.
struct LearnedBias {
  double bias_db = 0.0;  // stations come in this much better than computed; negative: worse
  double sigma_db = kUnlearnedGear_db;  // its standard deviation
  std::size_t stops = 0;                // number of stops with such outcomes; 0: nothing learned
  bool operator==(const LearnedBias&) const = default;
};

// The stop, as far as reception depends on it.
struct Receiver {
  Position position;
  Surroundings surroundings = Surroundings::open;
  std::optional<double> leaves_m = {};  // depth of trees in front; if empty, the default
  bool in_leaf = true;                  // those trees, else bare
  gear::Gear gear;
  double heading_error_deg = kUsualHeadingError_deg;  // a standard deviation, 0 to 180
  std::array<LearnedBias, 3> learned = {};            // in the order of Band
  std::optional<gear::NoiseEnvironment> noise = {};   // if empty, that of the surroundings
  bool inverter_on = false;
  ObstacleRing ring = {};
  gear::NoiseRises appliances = {};  // of the rig, as measured
  gear::NearTowers towers = {};
};

// The noise around the stop: as told, else as the surroundings have it.
gear::NoiseSources noise_sources(const Receiver& receiver);

// Storage that one thread keeps from path to path, so that a path allocates nothing after the
// longest one.
struct Scratch {
  terrain::PathProfile profile = {};
  GuessedGround guess = {};
  GroundCover cover = {};
  p1812::Scratch p1812 = {};
};

// Every station in reach of a stop with its prospect. Use:
//   Survey survey(receiver, stations, tiles);
//   survey.measure(first, end, scratch)  on ranges that cover [0, size()), on any threads at once
//                                        if the ranges do not overlap, with one scratch per thread
//   survey.weigh()                       afterwards, on one thread: overload and interference
//   survey.prospects()                   the list with its reasons, best first
// The results are bit-identical for any division into ranges. For a list that fills as results
// arrive, measure some, call weigh() and prospects(), and continue measuring: stations not yet
// measured neither appear nor interfere.
class Survey {
 public:
  // What `land` views must outlive the survey.
  Survey(Receiver receiver, std::vector<Station> stations, const Land& land);
  Survey(Survey&&) noexcept;
  Survey& operator=(Survey&&) noexcept;
  ~Survey();

  std::size_t size() const;

  // Computes the paths of stations [first, end), end <= size(), without the effects of others.
  // Allocates nothing after the longest path.
  void measure(std::size_t first, std::size_t end, Scratch& scratch);

  // Computes the effects of measured stations on each other; may be called again after more
  // measuring.
  void weigh();

  const Receiver& receiver() const;
  const Station& station(std::size_t index) const;
  // std::nullopt if not measured yet; before weigh(), without overload and interference.
  const Outlook* outlook(std::size_t index) const;

  // Where the station's signal goes; after weigh(). std::nullopt without a field.
  std::optional<SignalBudget> budget(std::size_t index) const;

  // Measured prospects with their reasons: by falling chance, then those without a known chance,
  // then those that the TV cannot decode; among equals by distance. Only the best `limit` of them.
  std::vector<Prospect> prospects(std::size_t limit = static_cast<std::size_t>(-1)) const;

 private:
  friend class ChanceCurves;
  struct State;
  std::unique_ptr<State> state_;
};

// The whole survey on the calling thread.
std::vector<Prospect> survey(const Receiver& receiver, std::vector<Station> stations,
                             const Land& land);

}  // namespace mastwise::reception
