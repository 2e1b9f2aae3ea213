#pragma once

#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <memory>
#include <span>
#include <string>

namespace mastwise::zones {

// Which time zone holds where, in cells of one arc minute: right to about 1 km at a border between
// zones. Source: timezone-boundary-builder's borders, from OpenStreetMap (assets/zones/README). A
// copy shares the data; any number of threads may read it.
class ZoneMap {
 public:
  // Reads the bytes of zones.bin (layout: assets/zones/README); they need not outlive the call.
  // Errors: another file type, a value out of range, too few or too many bytes.
  static Result<ZoneMap> load(std::span<const std::byte> bytes);

  // The zone's name in the tz database; empty at sea beyond the territorial waters.
  std::string zone_at(Position position) const;

 private:
  struct Data;
  explicit ZoneMap(std::shared_ptr<const Data> data) : data_(std::move(data)) {}
  std::shared_ptr<const Data> data_;
};

}  // namespace mastwise::zones
