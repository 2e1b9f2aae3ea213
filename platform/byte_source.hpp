#pragma once

#include "core/result.hpp"
#include "core/time.hpp"

#include <cstddef>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace mastwise::platform {

// What one read brought: nothing (size 0) when the time was up first.
struct Chunk {
  std::size_t size = 0;
  bool ended = false;  // there will never be more, as at the end of a file
};

// Where bytes come from. One thread at a time.
class ByteSource {
 public:
  virtual ~ByteSource() = default;
  // Waits until bytes come, but not much longer than `timeout`. Writes at most into.size() bytes,
  // which is greater than 0. An error means that the source is lost and has to be opened anew.
  virtual Result<Chunk> read(std::span<char> into, milliseconds timeout) = 0;
};

// Opens a source, and opens it again after it was lost. It does not wait: what takes time is done
// by the source's reads. One thread at a time.
using OpenSource = std::function<Result<std::unique_ptr<ByteSource>>()>;

// A file, such as a recorded log, at a pace (480 bytes a second is a line of 4800 baud) or at once.
OpenSource file_source(std::filesystem::path file, std::optional<double> bytes_per_second = {});

// A TCP server that speaks NMEA: "192.168.4.1:10110", "[fe80::1]:10110", "localhost:10110"; without
// a port 10110 is meant (registered for nmea-0183 with IANA). Hosts are given in numbers, as
// looking up names can hang for minutes where there is no network.
OpenSource tcp_source(std::string address);

// The speeds of serial lines, likeliest first.
std::vector<int> usual_serial_speeds();

struct SerialSearch {
  std::vector<int> speeds = usual_serial_speeds();  // tried in this order, in baud
  milliseconds listen_for{2500};                    // at each speed
};

// A serial port by its path; a pseudo-terminal will do. Speeds are tried until an NMEA sentence
// with a right checksum arrives; that speed is kept, and tried first when the port is opened again.
// Bytes heard at a wrong speed are not handed on. After all speeds the port is given up with an
// error.
OpenSource serial_source(std::string path, SerialSearch search = {});

struct SerialDevice {
  std::string
      path;  // stays the same when the device is plugged in again, where the system can do so
  std::string name;  // for a person
  bool operator==(const SerialDevice&) const = default;
};

// The serial devices that are plugged in now. `root`: the folder that has dev and sys, for tests.
// Any thread.
std::vector<SerialDevice> list_serial_devices(const std::filesystem::path& root = "/");

// Whichever serial device speaks NMEA: all that are listed at the moment are tried in turn,
// beginning with the one that spoke last. Devices may be plugged in and out at any time.
OpenSource any_serial_source(
    SerialSearch search = {},
    std::function<std::vector<SerialDevice>()> list = [] { return list_serial_devices(); });

}  // namespace mastwise::platform
