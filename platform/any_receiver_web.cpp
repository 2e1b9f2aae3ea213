#include "platform/byte_source.hpp"
#include "platform/system_web.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <string>

#include <fmt/chrono.h>
#include <fmt/format.h>

namespace mastwise::platform {
namespace {

// "$...*hh\r\n" around the fields (NMEA 0183).
std::string sentence(const std::string& fields) {
  unsigned sum = 0;
  for (const char c : fields) sum ^= static_cast<unsigned char>(c);
  return fmt::format("${}*{:02X}\r\n", fields, sum);
}

// "4137.1234567,N": degrees and minutes without a separator, then the hemisphere's letter.
std::string angle_fields(double degrees, int degree_digits, const char* letters) {
  constexpr double kMinutes = 60.0;
  const double size = std::abs(degrees);
  double whole = std::floor(size);
  // 59.99999996 minutes would be written as 60.
  double minutes = std::round((size - whole) * kMinutes * 1e7) / 1e7;
  if (minutes >= kMinutes) {
    minutes -= kMinutes;
    whole += 1.0;
  }
  return fmt::format("{:0{}.0f}{:010.7f},{}", whole, degree_digits, minutes,
                     letters[degrees < 0.0 ? 1 : 0]);
}

// The browser's position as a receiver's sentences, so that it is handled as any other. The W3C's
// Geolocation gives the accuracy as a radius that holds at 95 % confidence; GST has one sigma of
// each axis, which of a round normal distribution is that radius by sqrt(-2 ln 0.05) = 2.448.
std::string as_sentences(const WebPosition& at) {
  constexpr double kRadius95_sigmas = 2.448;
  constexpr double kKnot_m_per_s = 1852.0 / 3600.0;
  const auto seconds = static_cast<std::time_t>(std::floor(at.utc_s));
  const std::tm utc = fmt::gmtime(seconds);
  const std::string time =
      fmt::format("{:%H%M%S}.{:02.0f}", utc, std::floor((at.utc_s - std::floor(at.utc_s)) * 100.0));
  const std::string place =
      angle_fields(at.latitude_deg, 2, "NS") + "," + angle_fields(at.longitude_deg, 3, "EW");
  const auto known = [](double value, double factor, const char* otherwise) {
    return std::isfinite(value) ? fmt::format("{:.3f}", value * factor) : std::string(otherwise);
  };
  const double sigma_m = at.accuracy_m / kRadius95_sigmas;
  return sentence(fmt::format("GNRMC,{},A,{},{},{},{:%d%m%y},,,A", time, place,
                              known(at.speed_m_per_s, 1.0 / kKnot_m_per_s, ""),
                              known(at.course_deg, 1.0, ""), utc)) +
         sentence(fmt::format("GNGST,{},,,,,{:.2f},{:.2f},", time, sigma_m, sigma_m));
}

class BrowserPosition final : public ByteSource {
 public:
  BrowserPosition() { web_position_begin(); }
  ~BrowserPosition() override { web_position_end(); }
  BrowserPosition(const BrowserPosition&) = delete;
  BrowserPosition& operator=(const BrowserPosition&) = delete;

  Result<Chunk> read(std::span<char> into, milliseconds) override {
    if (list_serial_devices().size() > ports_) {
      return Error{.what = "a serial port is tried instead", .remedy = "wait some seconds"};
    }
    if (waiting_.empty()) {
      WebPosition at;
      switch (web_position_take(&at)) {
        case WebNews::nothing:
          return Chunk{};
        case WebNews::refused:
          return Error{.what = "the browser may not tell its position",
                       .remedy = "allow it in the browser's settings of this page"};
        case WebNews::unavailable:
          return Error{.what = "the browser does not know its position",
                       .remedy = "turn location on in the tablet's settings"};
        case WebNews::some:
          waiting_ = as_sentences(at);
      }
    }
    const std::size_t size = std::min(into.size(), waiting_.size());
    std::memcpy(into.data(), waiting_.data(), size);
    waiting_.erase(0, size);
    return Chunk{size};
  }
  std::string name() const override { return "the browser's position"; }

 private:
  std::size_t ports_ = list_serial_devices().size();
  std::string waiting_;
};

}  // namespace

// A receiver on a serial port that the page may use, else the browser's position; each in turn
// while neither gives any.
OpenSource any_receiver_source(std::string, GpsdPatience,
                               std::function<std::vector<SerialDevice>()> list,
                               SerialSearch search) {
  const OpenSource serial = any_serial_source(std::move(search), list);
  bool by_port = false;
  return [=]() mutable -> Result<std::unique_ptr<ByteSource>> {
    by_port = !by_port && !list().empty();
    if (by_port) return serial();
    return std::unique_ptr<ByteSource>(std::make_unique<BrowserPosition>());
  };
}

}  // namespace mastwise::platform
