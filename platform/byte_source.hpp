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
#include <string_view>
#include <vector>

namespace mastwise::platform {

// The result of one read: size 0 if the timeout expired first.
struct Chunk {
  std::size_t size = 0;
  bool ended = false;  // no more bytes will follow, as at the end of a file
};

// A source of bytes. One thread at a time.
class ByteSource {
 public:
  virtual ~ByteSource() = default;
  // Waits for bytes, but not much longer than `timeout`. Writes at most into.size() bytes, which is
  // over 0. After an error the source is lost and must be opened again.
  virtual Result<Chunk> read(std::span<char> into, milliseconds timeout) = 0;
  // What the bytes come from, for display, once there are some; empty if the source was named by
  // whoever opened it.
  virtual std::string name() const { return {}; }
};

// Opens a source, and opens it again after it was lost. It never waits; the source's reads do the
// slow work. One thread at a time.
using OpenSource = std::function<Result<std::unique_ptr<ByteSource>>()>;

// A file, such as a recorded log, at a pace (480 bytes a second is a line of 4800 baud) or at once.
OpenSource file_source(std::filesystem::path file, std::optional<double> bytes_per_second = {});

// A TCP server that sends NMEA: "192.168.4.1:10110", "[fe80::1]:10110", "localhost:10110"; the
// default port is 10110 (registered for nmea-0183 with IANA). Hosts are given as numbers, since
// looking up names can hang for minutes without a network.
OpenSource tcp_source(std::string address);

// The speeds of serial lines, likeliest first.
std::vector<int> usual_serial_speeds();

// What a device must say for its speed to be the right one.
struct SerialLanguage {
  // Makes a listener, which gets all bytes at one speed piece by piece and returns whether it has
  // understood any.
  std::function<std::function<bool(std::string_view bytes)>()> listen;
  std::string not_spoken, remedy;  // of the error after all speeds
};
// A sentence with a correct checksum.
SerialLanguage nmea_language();

struct SerialSearch {
  std::vector<int> speeds = usual_serial_speeds();  // tried in this order, in baud
  milliseconds listen_for{2500};                    // at each speed
  SerialLanguage language = nmea_language();
};

// A serial port by its path, or a pseudo-terminal. Speeds are tried until the device says something
// in its language. That speed is kept, and tried first when the port is opened again.
// Bytes received at a wrong speed are dropped. After all speeds the source fails with an error.
OpenSource serial_source(std::string path, SerialSearch search = {});

struct SerialDevice {
  std::string
      path;  // stays the same when the device is plugged in again, if the system supports it
  std::string name;  // for display
  bool operator==(const SerialDevice&) const = default;
};

// Whether both paths lead to one device.
bool same_device(const std::string& a, const std::string& b);

// The connected serial devices. `root`: the folder that contains dev and sys, for tests. Any
// thread.
std::vector<SerialDevice> list_serial_devices(const std::filesystem::path& root = "/");

// Any serial device that sends NMEA: all devices listed at the moment are tried in turn, beginning
// with the one that last sent it. Devices may be plugged in and out at any time.
OpenSource any_serial_source(
    SerialSearch search = {},
    std::function<std::vector<SerialDevice>()> list = [] { return list_serial_devices(); });

// The paths of the devices that a gpsd has at the moment. It reads them itself, and a second reader
// would take bytes from it.
struct HeldByGpsd {
  std::vector<std::string> paths;
};

struct GpsdPatience {
  milliseconds greeting{3000};  // for the first line of a gpsd
  milliseconds silence{15000};  // without a sentence; gpsd itself tries speeds for some seconds
};

// A receiver that gpsd reads: the sentences as they came from it, or those that gpsd writes for a
// receiver of another protocol. Of several receivers one, and the next after one that is silent or
// gone. The address is as in tcp_source; the default port is 2947 (registered for gpsd with IANA).
OpenSource gpsd_source(std::string address, std::shared_ptr<HeldByGpsd> held = nullptr,
                       GpsdPatience patience = {});

// Any receiver of this machine: that of gpsd if it runs and has one, else any serial device that
// gpsd does not hold. When it is opened again it begins anew with gpsd.
OpenSource any_receiver_source(
    std::string gpsd_address = "localhost", GpsdPatience patience = {},
    std::function<std::vector<SerialDevice>()> list = [] { return list_serial_devices(); },
    SerialSearch search = {});

}  // namespace mastwise::platform
