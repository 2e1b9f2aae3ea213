#include "core/reception/area_scan.hpp"

#include <algorithm>

namespace mastwise::reception {

void complete(AreaScan& scan) {
  AreaScratch scratch;
  while (scan.next_pass()) {
    for (std::size_t slice = 0; slice < scan.slices(); ++slice) scan.measure(slice, scratch);
  }
}

ChanceMap chances(const AreaScan& scan) {
  ChanceMap map;
  map.reserve(scan.cells().size());
  for (const AreaCell& cell : scan.cells()) map.push_back(scan.chance_percent(cell));
  return map;
}

ChanceMap weakest(const std::vector<ChanceMap>& maps) {
  ChanceMap all = maps.front();
  for (std::size_t map = 1; map < maps.size(); ++map) {
    for (std::size_t cell = 0; cell < all.size(); ++cell) {
      const auto& other = maps[map][cell];
      if (!all[cell] || !other) {
        all[cell].reset();
      } else {
        all[cell] = std::min(*all[cell], *other);
      }
    }
  }
  return all;
}

}  // namespace mastwise::reception
