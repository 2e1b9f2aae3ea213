#pragma once

#include "core/geo/position.hpp"
#include "core/stations/station.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// What a new table of a source changes of one station: a station that is new, that is gone, or
// whose channel, power, site or call sign is another.
struct StationChange {
  enum class Kind : std::uint8_t { added, gone, changed };

  // A shorter move is a coordinate that was rewritten: a second of arc is 31 m, a changed datum up
  // to 100 m. Neither affects aiming (100 m at 10 km is 0.6 degrees).
  static constexpr double kMove_m = 100.0;
  // A smaller step of power is a figure that was rounded otherwise [our choice, no source].
  static constexpr double kPowerStep_db = 0.5;

  Kind kind = Kind::changed;
  std::string id = {};  // in its source
  std::string call_sign = {};
  std::string city = {}, state = {};
  RfChannel rf_channel = {};
  std::optional<double> erp_kw = {};
  std::optional<double> distance_m = {};  // from the place that was asked for

  // Of a changed station, as it was; empty: as it is now.
  std::string call_sign_before = {};
  std::optional<RfChannel> rf_channel_before = {};
  std::optional<double> erp_kw_before = {};  // only if both powers are known
  double moved_m = 0.0;                      // 0: not beyond kMove_m
  bool operator==(const StationChange&) const = default;
};

// "added", "gone", "changed".
std::string_view to_text(StationChange::Kind kind);

// A station that is new or gone. `near`: the place to measure its distance from.
StationChange one_sided_change(StationChange::Kind kind, const Station& station,
                               const std::optional<Position>& near);

// The change between two records of one station; std::nullopt if channel, power, site and call sign
// are the same.
std::optional<StationChange> change_between(const Station& before, const Station& now,
                                            const std::optional<Position>& near);

// Collects changes and keeps at most `most` of them: the nearest, or without distances the first by
// kind and call sign.
class ChangeList {
 public:
  explicit ChangeList(std::size_t most) : most_(most) {}
  void add(StationChange change);
  // Takes back an added station.
  void forget_added(const std::string& id);
  std::vector<StationChange> sorted();

 private:
  void shorten();

  std::size_t most_;
  std::vector<StationChange> changes_;
};

}  // namespace mastwise
