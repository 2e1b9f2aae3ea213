#pragma once

#include "core/motion/vector.hpp"
#include "core/time.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// The text in which a tablet's own sensors are passed on, one sample a line:
//
//   ACC 12.250 0.03 -0.11 9.79    acceleration, m/s^2: flat on a table, screen up, it is 0 0 9.8
//   MAG 12.250 21.4 -3.0 -40.9    magnetic field, microtesla
//
// The first number is the source's clock in seconds, the others are along the axes of Vector.
namespace mastwise::motion {

struct Sample {
  enum class Kind : std::uint8_t { acceleration, field };
  Kind kind = Kind::acceleration;
  double at_s = 0.0;  // of the source's clock
  Vector value = {};  // m/s^2 or uT
  bool operator==(const Sample&) const = default;
};

// The line of a sample, with its end; and back, std::nullopt for any other line or for a value that
// no such sensor gives (over 200 m/s^2 or 10,000 uT).
std::string to_line(const Sample& sample);
std::optional<Sample> parse_line(std::string_view line);

// The newest samples of a tablet's sensors: a plain value that can be copied and compared.
class SensorLines {
 public:
  static constexpr milliseconds kLifetime{2000};
  static constexpr double kHeld_s = 1.0;  // over which a held tablet is averaged
  static constexpr std::size_t kLongestLine = 80;

  // Reads the next bytes; `hear` gets each sample. `now` must not run backward.
  void feed(std::string_view bytes, Monotonic now, const std::function<void(const Sample&)>& hear);
  // Forgets all samples, as when the source is lost.
  void forget() { *this = {}; }

  // The mean of the last kHeld_s; std::nullopt if the newest is older than kLifetime.
  std::optional<Vector> mean(Sample::Kind kind, Monotonic now) const;
  // The root mean square of the distances from that mean, and how many samples it has.
  struct Spread {
    double rms = 0.0;
    std::size_t samples = 0;
  };
  Spread spread(Sample::Kind kind) const;
  bool operator==(const SensorLines&) const = default;

 private:
  void keep(const Sample& sample, Monotonic now);

  std::string line_ = {};
  bool too_long_ = false;
  std::vector<Sample> held_ = {};                            // of the last kHeld_s, both kinds
  std::optional<Monotonic> acceleration_ = {}, field_ = {};  // the newest of each
};

}  // namespace mastwise::motion
