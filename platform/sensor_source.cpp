#include "platform/sensor_source.hpp"

#include "platform/clock.hpp"

#include <algorithm>
#include <cstring>
#include <thread>
#include <utility>

namespace mastwise::platform {
namespace {

class SensorSource : public ByteSource {
 public:
  SensorSource(std::vector<AxisSensor> sensors, std::string name, TabletSystem system)
      : sensors_(std::move(sensors)), name_(std::move(name)), system_(std::move(system)) {}

  Result<Chunk> read(std::span<char> into, milliseconds timeout) override {
    if (told_.empty()) {
      const Monotonic until = monotonic_now() + timeout;
      for (Monotonic now = monotonic_now(); now < next_; now = monotonic_now()) {
        if (now >= until) return Chunk{};
        std::this_thread::sleep_for(std::min(until, next_) - now);
      }
      if (const auto sampled = sample(); !sampled) return sampled.error();
      if (told_.empty()) return Chunk{};
    }
    const std::size_t size = std::min(into.size(), told_.size());
    std::memcpy(into.data(), told_.data(), size);
    told_.erase(0, size);
    return Chunk{size};
  }
  std::string name() const override { return name_; }

 private:
  Result<Done> sample() {
    const Monotonic now = monotonic_now();
    const double at_s = std::chrono::duration<double>(now - opened_).count();
    for (const AxisSensor& sensor : sensors_) {
      const auto value = sensor.read();
      if (!value) {
        next_ = now + system_.every;
        if (++failed_ < kMostFailures) return Done{};
        return Error{.what = "the sensor can no longer be read",
                     .where = sensor.where,
                     .remedy = "restart the tablet if it does not come back"};
      }
      waiting_ += motion::to_line({.kind = sensor.kind, .at_s = at_s, .value = *value});
    }
    failed_ = 0;
    next_ = now + system_.every;
    if (now < tell_) return Done{};
    tell_ = now + system_.told - system_.every / 2;
    told_ = std::exchange(waiting_, {});
    return Done{};
  }

  // A bus that is busy for a moment fails a read or two [our choice, no source].
  static constexpr int kMostFailures = 4;

  std::vector<AxisSensor> sensors_;
  std::string name_;
  TabletSystem system_;
  Monotonic opened_ = monotonic_now(), next_{}, tell_{};
  std::string waiting_, told_;
  int failed_ = 0;  // reads in a row
};

}  // namespace

std::unique_ptr<ByteSource> sensor_source(std::vector<AxisSensor> sensors, std::string name,
                                          const TabletSystem& system) {
  return std::make_unique<SensorSource>(std::move(sensors), std::move(name), system);
}

motion::Vector from_windows(motion::Sample::Kind kind, motion::Vector value) {
  constexpr double kStandardGravity = 9.80665;  // m/s^2, exact (CGPM 1901)
  constexpr double kMicroteslasInMilligauss = 0.1;
  return (kind == motion::Sample::Kind::field ? kMicroteslasInMilligauss : -kStandardGravity) *
         value;
}

}  // namespace mastwise::platform
