#pragma once

#include "platform/byte_source.hpp"

#include <string>

// A tablet's own accelerometer and magnetometer.
namespace mastwise::platform {

// How the system is reached; tests replace it.
struct TabletSystem {
  std::string root = "/";    // the folder that contains sys
  milliseconds every{125};   // between samples
  milliseconds told{125};    // between reads that return bytes, a multiple of `every`
  bool field_wanted = true;  // the magnetometer too, where there is one
};

// The sensors' samples as the lines of core/motion/sensor_lines.hpp, in the tablet's frame. On
// Linux the kernel's files (ABI/testing/sysfs-bus-iio): (raw + offset) * scale is m/s^2 and gauss;
// the mount matrix turns them into the frame of the screen; of several accelerometers the one of
// the display. On Windows the sensor API. It fails without an accelerometer whose three axes can be
// read; a magnetometer may lack, which its name says. A sensor that fails four reads in a row is
// lost.
OpenSource tablet_sensor_source(TabletSystem system = {});

}  // namespace mastwise::platform
