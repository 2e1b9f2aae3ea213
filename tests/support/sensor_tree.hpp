#pragma once

#include "tests/support/temporary_folder.hpp"

#include <filesystem>
#include <fstream>
#include <string>

namespace mastwise::test {

// The folders in which the kernel shows a tablet's sensors, laid out in a temporary one.
class SensorTree {
 public:
  SensorTree() { std::filesystem::create_directories(folder_ / kDevices); }

  std::string root() const { return folder_.path().string(); }
  // At once, as the kernel shows a new value: no reader sees half of it.
  void write(const std::string& file, const std::string& text) {
    const std::filesystem::path path = folder_ / (kDevices + ("/" + file));
    const std::filesystem::path part = folder_ / "part";
    std::ofstream(part) << text << '\n';
    std::filesystem::rename(part, path);
  }
  void remove(const std::string& name) {
    std::filesystem::remove_all(folder_ / (kDevices + ("/" + name)));
  }
  void add_accelerometer(const std::string& device) {
    add(device, "invented-accel", "in_accel", "0.01");
    write(device + "/in_accel_z_raw", "981");
  }
  void add_magnetometer(const std::string& device) {
    add(device, "invented-magn", "in_magn", "0.0001");
  }

 private:
  void add(const std::string& device, const char* name, const std::string& stem,
           const char* scale) {
    std::filesystem::create_directories(folder_ / (kDevices + ("/" + device)));
    for (const char* axis : {"x", "y", "z"}) write(device + "/" + stem + "_" + axis + "_raw", "0");
    write(device + "/" + stem + "_scale", scale);
    write(device + "/name", name);
  }

  inline static const std::string kDevices = "sys/bus/iio/devices";
  TemporaryFolder folder_;
};

}  // namespace mastwise::test
