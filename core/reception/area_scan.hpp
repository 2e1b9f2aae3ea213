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
  between,   // the mean of computed cells around it that hardly differ
  unknown,   // ground that is not known, nearer than 250 m to the transmitter, beyond the models
};

// What is known of one cell, as of a single path there: median margin with the antenna aimed at the
// station, and the standard deviation of what it may be off by.
struct AreaCell {
  float margin_db = 0.0f;
  float deviation_db = 0.0f;
  float ground_m = 0.0f;
  CellState state = CellState::pending;

  bool known() const { return state == CellState::computed || state == CellState::between; }
  std::optional<double> chance_percent() const;
  bool operator==(const AreaCell&) const = default;
};

// Storage that one thread keeps from slice to slice.
struct AreaScratch {
  // A cell that needs the models, on its way from the transmitter.
  struct Wanted {
    std::size_t cell = 0;
    CellPlace place = {};
    double distance_m = 0.0;
    RayPoint at = {};
  };
  std::vector<Wanted> wanted = {};  // of one ray
  RayGround ray = {};
  Scratch path = {};
};

// One station's margin over the cells around a stop, by the same models, gear, surroundings and
// heading error as Survey::measure at the cell; other stations neither disturb nor overload. Use:
//   while (scan.next_pass())
//     scan.measure(slice, scratch)  for every slice of [0, slices()), each once, on any threads at
//                                   once; a scratch each
// A pass fills the gaps of the one before it. Stop between any two slices to cancel; cells() can be
// copied whenever no thread measures. The results are the same bits whichever thread takes which
// slice.
//
// Two things make it faster than a survey at each cell. Ground is read along rays from the
// transmitter that serve many cells (ray_ground.hpp); a ray misses its cells by at most 5 m or a
// sixteenth of a cell. And a cell is taken as the mean of its neighbors of the pass before where
// these differ by no more than kSmooth_db and the ground rises out of their mean by no more than
// kLevel_m; neighbors are never more than kFarthestNeighbor_m away. So the margin differs from a
// single path's: over real mountains (area_scan_test.cpp) half the cells are within 0.1 dB, 95 %
// within 0.6 and 99 % within 1.5, 0.8 dB RMS, which is less than what 10 m to the side change in a
// single path. A few of a thousand are up to some 20 dB off, where the terrain model jumps from
// one of its cases to another. Ground is read each 90 m even from tiles of 1 arc second.
//
// A cell for which not all ground is known is unknown: there is no area mode here. Cells within 3
// km of the transmitter, which may stand inside the area, have profiles of their own.
class AreaScan {
 public:
  static constexpr double kSmooth_db = 1.0;
  static constexpr double kLevel_m = 1.0;
  static constexpr double kFarthestNeighbor_m = 200.0;

  // `tiles` must outlive the scan. The receiver's position is of no account: the grid's cells take
  // its place. Errors: the station's power, channel or height is not known, or the ground under it.
  static Result<AreaScan> of(const AreaGrid& grid, const Receiver& receiver, const Station& station,
                             const terrain::TileSource& tiles);
  AreaScan(AreaScan&&) noexcept;
  AreaScan& operator=(AreaScan&&) noexcept;
  ~AreaScan();

  // Readies the next pass; false where all is done. Every slice of the pass before must have been
  // measured.
  bool next_pass();
  std::size_t slices() const;  // of the pass
  void measure(std::size_t slice, AreaScratch& scratch);

  // Cells that the passes up to this one cover, for telling progress.
  std::size_t covered() const;

  const AreaGrid& grid() const;
  const Station& station() const;
  const std::vector<AreaCell>& cells() const;

  // The median field that gives a margin of 0 dB, dBuV/m; margins plus this are fields.
  double required_field_dbuvm() const;

 private:
  struct State;
  explicit AreaScan(std::unique_ptr<State> state);
  std::unique_ptr<State> state_;
};

// The whole scan on the calling thread.
void complete(AreaScan& scan);

// The chance of each cell in percent, nothing where it is not known.
using ChanceMap = std::vector<std::optional<double>>;
ChanceMap chances(const AreaScan& scan);

// For several wanted stations over the same grid: the chance of the one that is weakest at the
// cell, nothing where that of any is not known. The chance that all come in at once is at most
// this; how much less depends on what they have in common, which is not known. At least one map.
ChanceMap weakest(const std::vector<ChanceMap>& maps);

}  // namespace mastwise::reception
