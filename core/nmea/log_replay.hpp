#pragma once

#include "core/nmea/receiver.hpp"

#include <cstddef>
#include <functional>
#include <string_view>

namespace mastwise::nmea {

// The result of a recorded log, read as if it came from the device.
struct LogReplay {
  Receiver receiver;      // at the end, with its counts and its trusted date
  Fix last_good;          // the last good fix; not good() if there never was one
  Fix at_end;             // the fix at the end of the log
  HeadingSensor heading;  // the heading sensor at the end of the log
  milliseconds duration;  // by the log's clock
};

// Feeds a whole log to a receiver, sentence by sentence, with the log's clock. That clock follows
// the UTC times in the sentences and advances 10 ms for each of them, so that positions age even if
// a log repeats one time. If the time jumps back or ahead by more than an hour, the receiver's
// clock was set; the log's clock then advances one second. `date_floor`: see repair_date. A last
// line without an end is read as if it had one. `hear`, if given, gets the receiver after each
// sentence, and the log's clock.
LogReplay replay_log(std::string_view bytes, sys_days date_floor,
                     const std::function<void(const Receiver&, Monotonic)>& hear = {});

}  // namespace mastwise::nmea
