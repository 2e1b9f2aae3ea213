#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace mastwise::nmea {

// What gpsd says besides NMEA, as far as a client of one receiver needs it
// [gpsd_json(5) of gpsd 3.22: classes VERSION, DEVICES, DEVICE and ERROR].
namespace gpsd {
struct Version {
  std::string release;
};
struct Devices {
  std::vector<std::string> paths;
};
struct Device {
  std::string path;
  bool active = false;
};
struct Refusal {
  std::string message;
};
}  // namespace gpsd

// One line of gpsd's stream. A sentence is the whole line, as it came, without its end. The first
// alternative stands for everything else: other classes, damaged JSON, lines that are too long.
struct Ignored {};
struct Sentence {
  std::string line;
};
using GpsdLine =
    std::variant<Ignored, Sentence, gpsd::Version, gpsd::Devices, gpsd::Device, gpsd::Refusal>;

// Cuts gpsd's stream into lines, wherever its pieces are cut.
class GpsdStream {
 public:
  // Calls take(GpsdLine) for every line that is not empty, in order.
  template <class Take>
  void feed(std::string_view bytes, Take&& take) {
    for (const char byte : bytes) {
      if (byte != '\n' && byte != '\r') {
        append(byte);
      } else if (!line_.empty() || too_long_) {
        take(finish());
      }
    }
  }

  // gpsd's longest answers have 10,240 bytes (GPS_JSON_RESPONSE_MAX); longer lines are ignored.
  static constexpr std::size_t kLongest = 16384;

 private:
  void append(char byte);
  GpsdLine finish();

  std::string line_;
  bool too_long_ = false;
};

// What to ask gpsd for: the list of its devices, and everything from one of them as NMEA, with its
// news as JSON.
std::string gpsd_devices_request();
std::string gpsd_watch_request(std::string_view device);

}  // namespace mastwise::nmea
