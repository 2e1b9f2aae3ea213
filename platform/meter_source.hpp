#pragma once

#include "platform/byte_source.hpp"

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

// Sources of a signal meter's lines, as described in core/sweep/meter_lines.hpp.
namespace mastwise::platform {

// A meter on a serial port or a pseudo-terminal. Speeds are tried until a line of a reading
// arrives.
OpenSource serial_meter_source(std::string path, std::vector<int> speeds = usual_serial_speeds(),
                               milliseconds listen_for = milliseconds(2500));

// A TV tuner of this machine with the Linux DVB interface, version 5.
struct DvbTuner {
  int adapter = 0;
  int frontend = 0;
  bool operator==(const DvbTuner&) const = default;
};

// How the system is reached; tests replace it.
struct DvbSystem {
  std::string root = "/";  // the folder that contains dev
  // As ioctl(2): -1 and errno if it fails.
  std::function<int(int descriptor, unsigned long request, void* argument)> control;
  milliseconds every{250};  // between readings
};
DvbSystem this_system();

// The tuner's statistics as lines of a meter, four a second: carrier to noise as SNR or QUALITY,
// signal strength as LEVEL in dBm, NONE without lock. It only reads, so the program that tunes goes
// on; nothing is received until one has tuned. Source: Linux kernel, "Frontend statistics
// indicators" of the DVB API. A tuner that reports neither while it has lock is an error.
OpenSource dvb_meter_source(DvbTuner tuner, DvbSystem system = this_system());

// The tuners of this machine, in order.
std::vector<DvbTuner> list_dvb_tuners(const std::string& root = "/");

}  // namespace mastwise::platform
