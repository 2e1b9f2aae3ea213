#include "core/sound/wav.hpp"

#include "core/sound/tone.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace mastwise::sound {
namespace {

void put(std::string& bytes, std::uint32_t value, int count) {
  for (int i = 0; i < count; ++i) bytes += static_cast<char>(value >> (8 * i) & 0xFFu);
}

double decibels(double share) {
  constexpr double kSilence = 1e-6;
  return 20.0 * std::log10(std::max(kSilence, share));
}

}  // namespace

std::string wav_bytes(std::span<const float> samples) {
  constexpr std::uint32_t kPcm = 1, kChannels = 1, kSampleBytes = 2, kFormatBytes = 16;
  constexpr double kFullScale = 32'767.0;
  const auto size = static_cast<std::uint32_t>(kSampleBytes * samples.size());
  constexpr std::uint32_t kHeaderBytes = 36;
  std::string bytes = "RIFF";
  put(bytes, kHeaderBytes + size, 4);
  bytes += "WAVEfmt ";
  put(bytes, kFormatBytes, 4);
  put(bytes, kPcm, 2);
  put(bytes, kChannels, 2);
  put(bytes, kRate_hz, 4);
  put(bytes, kRate_hz * kSampleBytes, 4);
  put(bytes, kSampleBytes, 2);
  put(bytes, 8 * kSampleBytes, 2);
  bytes += "data";
  put(bytes, size, 4);
  for (const float sample : samples) {
    const double cut = std::clamp(static_cast<double>(sample), -1.0, 1.0);
    put(bytes, static_cast<std::uint16_t>(std::lround(cut * kFullScale)), 2);
  }
  return bytes;
}

std::vector<float> from_pcm(std::span<const std::int16_t> samples) {
  constexpr float kFullScale = 32'768.0F;
  std::vector<float> shares(samples.size());
  std::transform(samples.begin(), samples.end(), shares.begin(),
                 [](std::int16_t sample) { return static_cast<float>(sample) / kFullScale; });
  return shares;
}

double peak_dbfs(std::span<const float> samples) {
  double peak = 0.0;
  for (const float sample : samples) peak = std::max(peak, std::fabs(static_cast<double>(sample)));
  return decibels(peak);
}

double rms_dbfs(std::span<const float> samples) {
  double sum = 0.0;
  for (const float sample : samples) sum += static_cast<double>(sample) * sample;
  return decibels(samples.empty() ? 0.0 : std::sqrt(sum / static_cast<double>(samples.size())));
}

}  // namespace mastwise::sound
