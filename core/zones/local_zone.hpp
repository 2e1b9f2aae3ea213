#pragma once

#include "core/zones/time_zone.hpp"

#include <memory>

namespace mastwise {

// The clocks by which dates and times are shown.
struct LocalZone {
  enum class Origin {
    Place,   // the zone of a position
    Tablet,  // no zone is known there (no position, at sea): the tablet's
    None     // neither is known: UTC
  };
  Origin origin = Origin::None;
  std::shared_ptr<const TimeZone> clocks = std::make_shared<TimeZone>(utc_zone());  // never null

  bool operator==(const LocalZone& other) const {
    return origin == other.origin && (clocks == other.clocks || *clocks == *other.clocks);
  }
};

}  // namespace mastwise
