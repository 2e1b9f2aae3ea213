#pragma once

#include "core/nmea/fields.hpp"
#include "core/time.hpp"

#include <chrono>
#include <optional>

namespace mastwise::nmea {

using std::chrono::sys_days;

// Satellites broadcast a ten-bit week number [IS-GPS-200, 20.3.3.3.1.1]: it starts over every 1024
// weeks, and a receiver that has lost count of these eras is off by a whole number of them.
constexpr std::chrono::days kEra{7168};

// A receiver's date moved by whole eras to where it can be.
struct RepairedDate {
  sys_days date;
  sys_days said;          // what the receiver said
  int weeks_shifted = 0;  // date - said in weeks: a multiple of 1024, positive when it was behind
  bool operator==(const RepairedDate&) const = default;
};

// Moves `said` by whole eras into [floor - 1 day, floor + 7168 days). `floor` is a day that is
// certainly past: the later of the day the program was built and the last trusted date saved.
// Nothing for a date that is not in the calendar.
std::optional<RepairedDate> repair_date(Date said, sys_days floor);

// The date to save as a later floor, or nothing when it is not after `floor` or so far past it
// (more than half an era, 512 weeks) that one faulty receiver would move the floor for good.
std::optional<sys_days> date_worth_saving(const RepairedDate& date, sys_days floor);

// Watches the dates that come with good fixes, and trusts one once several epochs agree: each
// within a minute after the last.
class DateKeeper {
 public:
  explicit DateKeeper(sys_days floor) : floor_(floor) {}

  // A date and time that came while the receiver had a fix; the caller leaves out all others.
  void take(Date date, TimeOfDay time);

  // The latest trusted date; nothing before kAgreeingEpochs agreed.
  const std::optional<RepairedDate>& trusted() const { return trusted_; }
  // The moment nearest to the last trusted one that has this time of day; nothing while no date is
  // trusted.
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
