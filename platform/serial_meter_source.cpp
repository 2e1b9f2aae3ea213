#include "core/sweep/meter_lines.hpp"
#include "platform/meter_source.hpp"

namespace mastwise::platform {

OpenSource serial_meter_source(std::string path, std::vector<int> speeds, milliseconds listen_for) {
  SerialLanguage language{
      .listen =
          [] {
            return [lines = aim::MeterLines()](std::string_view bytes) mutable {
              bool understood = false;
              lines.feed(bytes, Monotonic(), [&](const aim::MeterReading&) { understood = true; });
              return understood;
            };
          },
      .not_spoken = "no reading of a meter at any speed",
      .remedy = "set the meter to send lines like \"SNR 21.4 dB\"; the README lists them"};
  return serial_source(
      std::move(path),
      {.speeds = std::move(speeds), .listen_for = listen_for, .language = std::move(language)});
}

}  // namespace mastwise::platform
