#pragma once

#include "core/motion/sensor_lines.hpp"
#include "platform/byte_source.hpp"
#include "platform/tablet_sensors.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

// What the sources for tablets' sensors share. Only for sources of platform.
namespace mastwise::platform {

// A sensor of three axes.
struct AxisSensor {
  motion::Sample::Kind kind = motion::Sample::Kind::acceleration;
  std::string name;   // for display
  std::string where;  // for errors
  // The value now in the tablet's frame, m/s^2 or uT; std::nullopt if it cannot be read.
  std::function<std::optional<motion::Vector>()> read;
};

// Reads the sensors at the system's pace and passes their samples on as lines. A sensor that fails
// four reads in a row is lost.
std::unique_ptr<ByteSource> sensor_source(std::vector<AxisSensor> sensors, std::string name,
                                          const TabletSystem& system);

// What Windows' sensor API reports, in the tablet's frame. Its axes are those of Vector, but flat
// on a table, screen up, it gives -1 g along z: the opposite of what the tablet is pushed by [from
// memory: Microsoft, "Integrating Motion and Orientation Sensors"; two browsers' open sources
// negate it too]. A magnetic field keeps its sign. `value`: g or milligauss.
motion::Vector from_windows(motion::Sample::Kind kind, motion::Vector value);

}  // namespace mastwise::platform
