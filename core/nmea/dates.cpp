#include "core/nmea/dates.hpp"

#include <algorithm>
#include <array>

namespace mastwise::nmea {

std::optional<RepairedDate> repair_date(Date said, sys_days floor) {
  if (!said.ok()) return std::nullopt;
  const sys_days said_day(said);
  if (floor == kNoFloor) return RepairedDate{said_day, said_day, 0};
  const sys_days earliest = floor - std::chrono::days(1);
  const auto past_earliest = said_day - earliest;
  // Rounded toward minus infinity, to move dates both before and after the window into it.
  auto eras = past_earliest / kEra;
  if (past_earliest < eras * kEra) --eras;
  return RepairedDate{said_day - eras * kEra, said_day, static_cast<int>(-eras * 1024)};
}

std::optional<sys_days> date_worth_saving(const RepairedDate& date, sys_days floor) {
  if (date.date <= floor || date.date > floor + kEra / 2) return std::nullopt;
  return date.date;
}

void DateKeeper::take(Date date, TimeOfDay time) {
  const auto repaired = repair_date(date, floor_);
  if (!repaired) return;
  const UtcTime moment = UtcTime(repaired->date) + time;
  if (candidate_ == moment) return;
  const bool agrees =
      candidate_ && moment > *candidate_ && moment - *candidate_ <= std::chrono::minutes(1);
  agreeing_ = agrees ? std::min(agreeing_ + 1, kAgreeingEpochs) : 1;
  candidate_ = moment;
  if (agreeing_ < kAgreeingEpochs) return;
  trusted_ = repaired;
  trusted_moment_ = moment;
}

std::optional<UtcTime> DateKeeper::moment(TimeOfDay time) const {
  if (!trusted_) return std::nullopt;
  const UtcTime midnight = UtcTime(std::chrono::floor<std::chrono::days>(trusted_moment_));
  const auto distance = [&](UtcTime moment) { return std::chrono::abs(moment - trusted_moment_); };
  UtcTime nearest = midnight + time;
  for (const UtcTime other :
       std::array{nearest - std::chrono::days(1), nearest + std::chrono::days(1)}) {
    if (distance(other) < distance(nearest)) nearest = other;
  }
  return nearest;
}

}  // namespace mastwise::nmea
