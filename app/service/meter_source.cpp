#include "app/service/meter_source.hpp"

#include "platform/meter_source.hpp"

#include <charconv>
#include <optional>
#include <string_view>

#include <fmt/format.h>

namespace mastwise::service {
namespace {

constexpr std::string_view kTuner = "dvb:", kNetwork = "tcp://";

std::optional<platform::DvbTuner> tuner_named(std::string_view numbers) {
  platform::DvbTuner tuner;
  const char* end = numbers.data() + numbers.size();
  auto [rest, trouble] = std::from_chars(numbers.data(), end, tuner.adapter);
  if (trouble == std::errc() && rest != end && *rest == '.') {
    const auto second = std::from_chars(rest + 1, end, tuner.frontend);
    rest = second.ptr;
    trouble = second.ec;
  }
  const bool whole = trouble == std::errc() && rest == end;
  return whole && tuner.adapter >= 0 && tuner.frontend >= 0 ? std::optional(tuner) : std::nullopt;
}

}  // namespace

platform::OpenSource meter_source(const std::string& name) {
  if (name.starts_with(kTuner)) {
    if (const auto tuner = tuner_named(std::string_view(name).substr(kTuner.size()))) {
      return platform::dvb_meter_source(*tuner);
    }
  } else if (name.starts_with(kNetwork)) {
    return platform::tcp_source(name.substr(kNetwork.size()));
  } else if (name.starts_with('/')) {
    return platform::serial_meter_source(name);
  }
  return [name]() -> Result<std::unique_ptr<platform::ByteSource>> {
    return Error{.what = "not a meter",
                 .where = name,
                 .remedy = "use dvb:0, tcp://HOST:PORT or the path of a serial device"};
  };
}

std::vector<FoundMeter> list_meters() {
  std::vector<FoundMeter> found;
  for (const platform::DvbTuner& tuner : platform::list_dvb_tuners()) {
    found.push_back({.name = fmt::format("dvb:{}.{}", tuner.adapter, tuner.frontend), .label = {}});
  }
  for (const platform::SerialDevice& device : platform::list_serial_devices()) {
    found.push_back({.name = device.path, .label = device.name});
  }
  return found;
}

}  // namespace mastwise::service
