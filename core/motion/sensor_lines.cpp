#include "core/motion/sensor_lines.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include <fmt/format.h>

namespace mastwise::motion {
namespace {

constexpr std::string_view kAcceleration = "ACC ", kField = "MAG ";
constexpr double kMost_mps2 = 200.0, kMost_ut = 10'000.0;

std::optional<std::array<double, 4>> four_numbers(std::string_view text) {
  std::array<double, 4> numbers{};
  const char* at = text.data();
  const char* const end = text.data() + text.size();
  for (double& number : numbers) {
    while (at != end && *at == ' ') ++at;
    const auto [rest, trouble] = std::from_chars(at, end, number);
    if (trouble != std::errc() || !std::isfinite(number)) return std::nullopt;
    if (rest != end && *rest != ' ') return std::nullopt;
    at = rest;
  }
  return at == end ? std::optional(numbers) : std::nullopt;
}

}  // namespace

std::string to_line(const Sample& sample) {
  const Vector& v = sample.value;
  return fmt::format("{}{:.3f} {:.4f} {:.4f} {:.4f}\n",
                     sample.kind == Sample::Kind::field ? kField : kAcceleration, sample.at_s, v.x,
                     v.y, v.z);
}

std::optional<Sample> parse_line(std::string_view line) {
  const bool field = line.starts_with(kField);
  if (!field && !line.starts_with(kAcceleration)) return std::nullopt;
  const auto numbers = four_numbers(line.substr(kField.size()));
  if (!numbers) return std::nullopt;
  const auto& [at_s, x, y, z] = *numbers;
  const Sample sample{.kind = field ? Sample::Kind::field : Sample::Kind::acceleration,
                      .at_s = at_s,
                      .value = {x, y, z}};
  if (at_s < 0.0 || !(length(sample.value) <= (field ? kMost_ut : kMost_mps2))) return std::nullopt;
  return sample;
}

void SensorLines::keep(const Sample& sample, Monotonic now) {
  // A clock that ran back, or a pause, is another run of the source.
  constexpr double kPause_s = 5.0;
  if (!held_.empty()) {
    const double since_s = sample.at_s - held_.back().at_s;
    if (since_s < 0.0 || since_s > kPause_s) held_.clear();
  }
  held_.push_back(sample);
  std::erase_if(held_, [&](const Sample& old) { return old.at_s < sample.at_s - kHeld_s; });
  (sample.kind == Sample::Kind::field ? field_ : acceleration_) = now;
}

void SensorLines::feed(std::string_view bytes, Monotonic now,
                       const std::function<void(const Sample&)>& hear) {
  for (const char byte : bytes) {
    if (byte != '\n') {
      too_long_ |= line_.size() == kLongestLine;
      if (!too_long_) line_ += byte;
      continue;
    }
    if (const auto sample = too_long_ ? std::nullopt : parse_line(line_)) {
      keep(*sample, now);
      hear(*sample);
    }
    line_.clear();
    too_long_ = false;
  }
}

std::optional<Vector> SensorLines::mean(Sample::Kind kind, Monotonic now) const {
  const auto& heard = kind == Sample::Kind::field ? field_ : acceleration_;
  if (!heard || now - *heard >= kLifetime) return std::nullopt;
  Vector sum;
  double count = 0.0;
  for (const Sample& sample : held_) {
    if (sample.kind != kind) continue;
    sum = sum + sample.value;
    count += 1.0;
  }
  if (count == 0.0) return std::nullopt;
  return (1.0 / count) * sum;
}

SensorLines::Spread SensorLines::spread(Sample::Kind kind) const {
  Vector sum;
  Spread spread;
  for (const Sample& sample : held_) {
    if (sample.kind != kind) continue;
    sum = sum + sample.value;
    ++spread.samples;
  }
  if (spread.samples == 0) return spread;
  const double count = static_cast<double>(spread.samples);
  const Vector mean = (1.0 / count) * sum;
  double squares = 0.0;
  for (const Sample& sample : held_) {
    if (sample.kind != kind) continue;
    const Vector off = sample.value - mean;
    squares += dot(off, off);
  }
  spread.rms = std::sqrt(squares / count);
  return spread;
}

}  // namespace mastwise::motion
