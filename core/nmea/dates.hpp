#pragma once

#include "core/nmea/fields.hpp"
#include "core/time.hpp"

#include <chrono>
#include <optional>

namespace mastwise::nmea {

using std::chrono::sys_days;

// Satellites broadcast a ten-bit week number [IS-GPS-200, 20.3.3.3.1.1] that restarts every 1024
// weeks. A receiver that loses count of these eras is off by a whole number of them.
constexpr std::chrono::days kEra{7168};

// The floor of dates that need no repair: those of a recorded log.
inline constexpr sys_days kNoFloor = sys_days::min();

// A receiver's date, shifted by whole eras into the possible range.
struct RepairedDate {
  sys_days date;
  sys_days said;  // the receiver's date
  // `date` - `said` in weeks: a multiple of 1024, positive if the receiver was behind.
  int weeks_shifted = 0;
  bool operator==(const RepairedDate&) const = default;
};

// Shifts `said` by whole eras into [floor - 1 day, floor + 7168 days). `floor` is a day that is
// certainly past: the later of the build day and the last trusted date saved. std::nullopt for a
// date outside the calendar.
std::optional<RepairedDate> repair_date(Date said, sys_days floor);

// The date to save as a later floor. std::nullopt if it is not after `floor`, or is more than half
// an era (512 weeks) past it: one faulty receiver must not move the floor for good.
std::optional<sys_days> date_worth_saving(const RepairedDate& date, sys_days floor);

// Watches the dates of good fixes, and trusts one once several epochs agree, each within a minute
// of the last.
class DateKeeper {
 public:
  explicit DateKeeper(sys_days floor) : floor_(floor) {}

  // A date and time received during a fix; the caller skips all others.
  void take(Date date, TimeOfDay time);

  // The latest trusted date; std::nullopt before kAgreeingEpochs agree.
  const std::optional<RepairedDate>& trusted() const { return trusted_; }
  // The moment with this time of day that is nearest to the last trusted one; std::nullopt while no
  // date is trusted.
  std::optional<UtcTime> moment(TimeOfDay time) const;
  sys_days floor() const { return floor_; }
  bool operator==(const DateKeeper&) const = default;

  static constexpr int kAgreeingEpochs = 4;

 private:
  sys_days floor_;
  std::optional<UtcTime> candidate_;  // the last epoch's moment, repaired
  int agreeing_ = 0;
  std::optional<RepairedDate> trusted_;
  UtcTime trusted_moment_{};
};

}  // namespace mastwise::nmea
