#pragma once

#include "core/nmea/receiver.hpp"

#include <cstddef>
#include <string_view>

namespace mastwise::nmea {

// What a recorded log says, read as if it had come from the device.
struct LogReplay {
  Receiver receiver;      // as it stands at the end, with its counts and its trusted date
  Fix last_good;          // the last good fix; not good() when there never was one
  Fix at_end;             // the fix at the end of the log
  HeadingSensor heading;  // the heading sensor at the end of the log
  milliseconds duration;  // what the log's own clock ran through
};

// Feeds a whole log to a receiver, sentence by sentence, with the clock that the log brings along:
// the clock follows the UTC times in the sentences, and runs 10 ms for each line besides, so that a
// log that repeats one moment still grows old. A time that jumps back or ahead by more than an hour
// is a receiver's clock that was set; the log's clock runs one second for it.
// `date_floor`: see repair_date. A last line without its end is read as if it had one.
LogReplay replay_log(std::string_view bytes, sys_days date_floor);

}  // namespace mastwise::nmea
