#pragma once

#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <memory>
#include <string>

namespace mastwise::zones {

// Which time zone holds where, in cells of one arc minute: right to about 1 km at a border between
// zones. Source: timezone-boundary-builder's borders, from OpenStreetMap (assets/zones/README). A
// copy shares the data; any number of threads may read it.
class ZoneMap {
 public:
  // `file`: the bytes of zones.bin (layout: assets/zones/README). Errors: another file type, a
  // value out of range, too few or too many bytes.
  static Result<ZoneMap> load(std::string file);

  // The zone's name in the tz database; empty at sea beyond the territorial waters.
  std::string zone_at(Position position) const;

 private:
  struct Data;
  explicit ZoneMap(std::shared_ptr<const Data> data) : data_(std::move(data)) {}
  std::shared_ptr<const Data> data_;
};

}  // namespace mastwise::zones
