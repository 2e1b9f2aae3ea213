// Any numbers: the Irregular Terrain Model refuses them or gives a finite loss.
#include "core/propagation/itm/itm.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <vector>

namespace {

using namespace mastwise;

class Bytes {
 public:
  Bytes(const std::uint8_t* data, std::size_t size) : data_(data), size_(size) {}

  std::size_t left() const { return size_; }

  template <class T>
  T take() {
    T value = {};
    const std::size_t count = sizeof(T) < size_ ? sizeof(T) : size_;
    std::memcpy(&value, data_, count);
    data_ += count;
    size_ -= count;
    return value;
  }

  int choice(int count) { return take<std::uint8_t>() % count; }

  // Mostly a number in the given range, sometimes any bits.
  double number(double low, double high) {
    const auto kind = take<std::uint8_t>();
    if (kind >= 240) return take<double>();
    return low + (high - low) * static_cast<double>(take<std::uint16_t>()) / 65535;
  }

 private:
  const std::uint8_t* data_;
  std::size_t size_;
};

void demand_finite(const Result<itm::Path>& path, int code, const itm::Percentages& percentages) {
  if (!path) return;
  const auto variability = itm::variability_from_code(code);
  if (!variability) return;
  const auto prediction = itm::predict(*path, *variability, percentages);
  if (prediction && !std::isfinite(prediction->loss_db)) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Bytes bytes(data, size);
  const itm::Link link = {.frequency_mhz = bytes.number(20, 20000),
                          .transmitter_height_m = bytes.number(0.5, 3000),
                          .receiver_height_m = bytes.number(0.5, 3000),
                          .polarization = static_cast<itm::Polarization>(bytes.choice(3)),
                          .relative_permittivity = bytes.number(1, 100),
                          .conductivity_s_per_m = bytes.number(1e-5, 10),
                          .climate = static_cast<itm::Climate>(bytes.choice(9)),
                          .sea_level_refractivity = bytes.number(250, 400)};
  const int code = bytes.choice(36);
  const itm::Percentages percentages = {.time = bytes.number(0.001, 99.999),
                                        .location = bytes.number(0.001, 99.999),
                                        .situation = bytes.number(0.001, 99.999)};
  const itm::AreaTerrain terrain = {.delta_h_m = bytes.number(0, 3000),
                                    .transmitter_siting = static_cast<itm::Siting>(bytes.choice(4)),
                                    .receiver_siting = static_cast<itm::Siting>(bytes.choice(4))};
  demand_finite(itm::area(link, terrain, bytes.number(1, 2e6)), code, percentages);

  const double spacing_m = bytes.number(1, 2000);
  std::vector<double> heights_m;
  while (bytes.left() > 0) heights_m.push_back(bytes.number(-500, 9000));
  demand_finite(itm::point_to_point(link, {spacing_m, heights_m}), code, percentages);
  return 0;
}
