// Arbitrary links and profiles: P.1812 returns an error or a finite loss.
#include "core/propagation/p1812/p1812.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <vector>

namespace {

using namespace mastwise::p1812;

class Bytes {
 public:
  Bytes(const std::uint8_t* data, std::size_t size) : data_(data), size_(size) {}

  std::uint8_t byte() {
    if (size_ == 0) return 0;
    --size_;
    return *data_++;
  }

  // Mostly a number in the range, to reach the model; sometimes any double.
  double number(double lowest, double highest) {
    const std::uint8_t kind = byte();
    if (kind == 255) {
      double any = 0.0;
      std::uint8_t raw[sizeof any];
      for (std::uint8_t& one : raw) one = byte();
      std::memcpy(&any, raw, sizeof any);
      return any;
    }
    if (kind == 254) return lowest;
    if (kind == 253) return highest;
    const double share = (kind * 256.0 + byte()) / 65535.0;
    return lowest + (highest - lowest) * share;
  }

 private:
  const std::uint8_t* data_;
  std::size_t size_;
};

TerminalClutter terminal_clutter(Bytes& bytes) {
  return {.kind = static_cast<TerminalClutter::Kind>(bytes.byte() % 3),
          .height_m = bytes.number(0.1, 500.0),
          .street_width_m = bytes.number(1.0, 1000.0)};
}

Link link_from(Bytes& bytes) {
  Link link;
  link.frequency_mhz = bytes.number(30.0, 6000.0);
  link.polarization = bytes.byte() % 2 == 0 ? Polarization::horizontal : Polarization::vertical;
  link.transmitter_height_m = bytes.number(1.0, 3000.0);
  link.receiver_height_m = bytes.number(1.0, 3000.0);
  link.path_latitude_deg = bytes.number(-90.0, 90.0);
  link.refractivity = {bytes.number(0.0, 150.0), bytes.number(200.0, 500.0)};
  link.transmitter_coast_km = bytes.number(0.0, 10.0);
  link.receiver_coast_km = bytes.number(0.0, 10.0);
  link.transmitter_clutter = terminal_clutter(bytes);
  link.receiver_clutter = terminal_clutter(bytes);
  if (bytes.byte() % 2 == 0) link.location_deviation_db = bytes.number(0.0, 30.0);
  link.prediction_resolution_m = bytes.number(1.0, 10000.0);
  return link;
}

void require(bool condition) {
  if (!condition) std::abort();
}

void require_finite(const Path& path) {
  for (const double value :
       {path.angular_distance_mrad, path.beta0_percent, path.terrain_roughness_m,
        path.median.loss_db, path.beta.loss_db, path.ducting_fixed_coupling_db,
        path.ducting_incidence_percent, path.ducting_slope, path.scatter_median_db,
        path.transmitter_clutter_db, path.receiver_clutter_db, path.location_deviation_db}) {
    require(std::isfinite(value));
  }
  require(path.transmitter_effective_height_m > 0.0 && path.receiver_effective_height_m > 0.0);
  require(path.median.loss_db >= 0.0 && path.beta.loss_db >= 0.0);
  require(path.sea_fraction >= 0.0 && path.sea_fraction <= 1.0);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Bytes bytes(data, size);
  const Link link = link_from(bytes);
  const std::uint8_t layout = bytes.byte();
  const std::size_t points = bytes.byte() % 64;
  std::vector<double> distances_km, heights_m, clutter_m;
  std::vector<Zone> zones;
  double distance_km = 0.0;
  for (std::size_t i = 0; i < points; ++i) {
    distances_km.push_back(distance_km);
    heights_m.push_back(bytes.number(-500.0, 10000.0));
    clutter_m.push_back(bytes.number(0.0, 500.0));
    zones.push_back(static_cast<Zone>(bytes.byte() % 5));
    distance_km += bytes.number(1e-6, 50.0);
  }
  Profile profile = {.spacing_km = bytes.number(1e-6, 50.0), .heights_m = heights_m};
  if ((layout & 1) != 0) profile.distances_km = distances_km;
  if ((layout & 2) != 0) profile.clutter_m = clutter_m;
  if ((layout & 4) != 0) profile.zones = zones;

  static Scratch scratch;
  const auto path = analyze_path(profile, link, scratch);
  if (!path) {
    require(!path.error().what.empty());
    return 0;
  }
  require_finite(*path);
  for (int i = 0; i < 3; ++i) {
    const auto loss = loss_for(*path, {bytes.number(1.0, 99.0), bytes.number(1.0, 99.0)});
    if (!loss) continue;
    require(std::isfinite(loss->basic_loss_db) && std::isfinite(loss->field_dbuvm));
    require(std::isfinite(loss->ducting_db) && std::isfinite(loss->scatter_db));
  }
  return 0;
}
