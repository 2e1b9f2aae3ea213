#pragma once

#include "core/gear/gear.hpp"
#include "core/geo/position.hpp"
#include "core/propagation/itm/itm.hpp"
#include "core/propagation/p1812/p1812.hpp"
#include "core/reception/prospect.hpp"
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

// Standard deviation of where an antenna points from where it should: a compass in the hand and a
// ceiling handle [trade budget: 0.4 (+) 2 (+) 3 (+) 5 degrees].
inline constexpr double kUsualHeadingError_deg = 6.0;

// What the logbook has taught of a band at this stop and with this gear.
struct LearnedBias {
  double bias_db = 0.0;   // stations come in so much better than computed; negative: worse
  double sigma_db = 0.0;  // a standard deviation of it
  std::size_t stops = 0;  // where that was seen; 0: nothing learned
  bool operator==(const LearnedBias&) const = default;
};

// The stop as far as reception depends on it.
struct Receiver {
  Position position;
  Surroundings surroundings = Surroundings::open;
  std::optional<double> leaves_m = {};  // depth of foliage in front; else the surroundings' own
  gear::Gear gear;
  double heading_error_deg = kUsualHeadingError_deg;  // a standard deviation, 0 to 180
  std::array<LearnedBias, 3> learned = {};            // in the order of Band
};

// Storage that one thread keeps from path to path, so that a path allocates nothing once the
// longest was seen.
struct Scratch {
  terrain::PathProfile profile = {};
  p1812::Scratch p1812 = {};
};

// Every station in reach of a stop with its prospect. Use:
//   Survey survey(receiver, stations, tiles);
//   survey.measure(first, end, scratch)  on ranges that cover [0, size()), on any threads at once
//   as
//                                        long as the ranges do not overlap; a scratch each
//   survey.weigh()                       afterwards, on one thread: overload and interference
//   survey.prospects()                   the list with its reasons, best first
// The results are the same bits however the ranges are cut. For a list that fills as results come,
// measure some, call weigh() and prospects(), and measure on: stations not yet measured neither
// appear nor disturb.
class Survey {
 public:
  // `tiles` must outlive the survey.
  Survey(Receiver receiver, std::vector<Station> stations, const terrain::TileSource& tiles);
  Survey(Survey&&) noexcept;
  Survey& operator=(Survey&&) noexcept;
  ~Survey();

  std::size_t size() const;

  // Computes the paths of stations [first, end), end <= size(), without regard to others.
  // Allocates nothing once the scratch has seen the longest path.
  void measure(std::size_t first, std::size_t end, Scratch& scratch);

  // Weighs all measured stations against each other; may be called again after more measuring.
  void weigh();

  const Receiver& receiver() const;
  const Station& station(std::size_t index) const;
  // Nothing where it is not measured yet; until it is weighed, without overload and interference.
  const Outlook* outlook(std::size_t index) const;

  // Measured prospects with their reasons: by falling chance, those without a chance last, then by
  // distance. Only the best `limit` of them.
  std::vector<Prospect> prospects(std::size_t limit = static_cast<std::size_t>(-1)) const;

 private:
  friend class ChanceCurves;
  struct State;
  std::unique_ptr<State> state_;
};

// The whole survey on the calling thread.
std::vector<Prospect> survey(const Receiver& receiver, std::vector<Station> stations,
                             const terrain::TileSource& tiles);

}  // namespace mastwise::reception
