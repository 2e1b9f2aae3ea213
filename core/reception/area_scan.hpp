#pragma once

#include "core/reception/area_grid.hpp"
#include "core/reception/ray_ground.hpp"
#include "core/reception/survey.hpp"
#include "core/stations/station.hpp"
#include "core/terrain/tile_source.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace mastwise::reception {

enum class CellState : std::uint8_t {
  pending,   // not computed yet
  computed,  // both models on a profile
  between,   // the mean of the computed cells around it, which hardly differ
  unknown,   // unknown ground, nearer than 250 m to the transmitter, or outside the models
};

// The result for one cell, as for a single path to it: median margin with the antenna aimed at the
// station, and the standard deviation of the normal part of its spread.
struct AreaCell {
  float margin_db = 0.0f;
  float deviation_db = 0.0f;
  float ground_m = 0.0f;
  float cap_percent = 100.0f;  // the chance is never shown higher: too much ground is unknown
  CellState state = CellState::pending;

  bool known() const { return state == CellState::computed || state == CellState::between; }
  bool operator==(const AreaCell&) const = default;
};

// Storage that one thread keeps from slice to slice.
struct AreaScratch {
  // A cell that needs the models, on its ray from the transmitter.
  struct Wanted {
    std::size_t cell = 0;
    CellPlace place = {};
    double distance_m = 0.0;
    RayPoint at = {};
  };
  std::vector<Wanted> wanted = {};          // of one ray
  std::vector<Wanted> behind_unknown = {};  // of these
  RayGround ray = {};
  Scratch path = {};
};

// One station's margin over the cells around a stop, by the same models, gear, surroundings and
// heading error as Survey::measure at the cell; other stations neither interfere nor overload. The
// receiver's ring counts at the cells within 30 m of the stop, or three quarters of a cell. Use:
//   while (scan.next_pass())
//     scan.measure(slice, scratch)  for every slice of [0, slices()), each once, on any threads at
//                                   once, with one scratch per thread
// A pass fills the gaps of the previous one. Stop between any two slices to cancel; cells() can be
// copied whenever no thread measures. The results are bit-identical whichever thread measures which
// slice.
//
// Two shortcuts make it faster than a survey at each cell. Ground is read along rays from the
// transmitter that serve many cells (ray_ground.hpp); a ray misses its cells by at most 5 m or a
// sixteenth of a cell. And a cell is the mean of its neighbors of the previous pass if these differ
// by at most kSmooth_db and the ground rises above their mean by at most kLevel_m; neighbors are
// never more than kFarthestNeighbor_m away. So the margin differs from a single path's: over real
// mountains (area_scan_test.cpp) half the cells are within 0.1 dB, 95 % within 0.6 and 99 % within
// 1.5, 0.8 dB RMS. That is less than a shift of 10 m changes in a single path. A few of a thousand
// are up to some 20 dB off, where the terrain model jumps from one of its cases to another. Ground
// is read every 90 m even from tiles of 1 arc second.
//
// A cell on unknown ground has no result: there is no area mode here. Cells behind unknown
// ground, and those within 3 km of the transmitter, which may be inside the area, have separate
// profiles; what is unknown there is guessed as in a survey.
class AreaScan {
 public:
  static constexpr double kSmooth_db = 1.0;
  static constexpr double kLevel_m = 1.0;
  static constexpr double kFarthestNeighbor_m = 200.0;

  // What `land` views must outlive the scan. The receiver's position is ignored: the grid's cells
  // replace it. Errors: the station's power, channel or height is unknown, or the ground under it;
  // the TV cannot decode the station.
  static Result<AreaScan> of(const AreaGrid& grid, const Receiver& receiver, const Station& station,
                             const Land& land);
  AreaScan(AreaScan&&) noexcept;
  AreaScan& operator=(AreaScan&&) noexcept;
  ~AreaScan();

  // Prepares the next pass; false when all are done. Every slice of the previous pass must have
  // been measured.
  bool next_pass();
  std::size_t slices() const;  // of the pass
  void measure(std::size_t slice, AreaScratch& scratch);

  // Cells that the passes up to this one cover, to show progress.
  std::size_t covered() const;

  const AreaGrid& grid() const;
  const Station& station() const;
  const std::vector<AreaCell>& cells() const;
  // std::nullopt for an unknown cell. Capped if the TV may be unable to decode the station.
  std::optional<double> chance_percent(const AreaCell& cell) const;

  // The median field that gives a margin of 0 dB, dBuV/m; margins plus this are fields.
  double required_field_dbuvm() const;

 private:
  struct State;
  explicit AreaScan(std::unique_ptr<State> state);
  std::unique_ptr<State> state_;
};

// The whole scan on the calling thread.
void complete(AreaScan& scan);

// The chance of each cell in percent, std::nullopt if unknown.
using ChanceMap = std::vector<std::optional<double>>;
ChanceMap chances(const AreaScan& scan);

// For several wanted stations over the same grid: the chance of the one that is weakest at the
// cell, std::nullopt if any is unknown. The chance that all come in at once is at most this; how
// much less depends on their unknown common causes. At least one map.
ChanceMap weakest(const std::vector<ChanceMap>& maps);

}  // namespace mastwise::reception
