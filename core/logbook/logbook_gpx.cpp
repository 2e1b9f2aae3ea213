#include "core/logbook/logbook_gpx.hpp"

#include "core/text/iso_time.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace mastwise {
namespace {

// Text of an element [XML 1.0, 2.2 and 2.4]: other control characters cannot be written.
std::string escaped(const std::string& text) {
  std::string result;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const bool control = static_cast<unsigned char>(c) < 0x20 && c != '\t' && c != '\n';
    // U+FFFE and U+FFFF are not XML characters either.
    const bool never =
        text.compare(i, 3, "\xEF\xBF\xBE") == 0 || text.compare(i, 3, "\xEF\xBF\xBF") == 0;
    if (never) i += 2;
    if (control || never) continue;
    if (c == '&') {
      result += "&amp;";
    } else if (c == '<') {
      result += "&lt;";
    } else if (c == '>') {
      result += "&gt;";
    } else {
      result += c;
    }
  }
  return result;
}

std::string description(const StopRecord& stop, const std::vector<OutcomeRecord>& outcomes) {
  std::string text = stop.note;
  for (const OutcomeRecord& outcome : outcomes) {
    if (outcome.mark.deleted || outcome.stop_id != stop.id) continue;
    if (!text.empty()) text += '\n';
    text += fmt::format("{} RF {}: {}",
                        outcome.call_sign.empty() ? outcome.station_id : outcome.call_sign,
                        to_text(outcome.rf_channel), to_text(outcome.outcome));
    if (outcome.heading) text += fmt::format(" at {:.0f} degrees true", outcome.heading->degrees());
  }
  return text;
}

std::string element(std::string_view name, const std::string& text) {
  if (text.empty()) return {};
  return fmt::format("    <{0}>{1}</{0}>\n", name, escaped(text));
}

}  // namespace

std::string logbook_gpx(const LogbookContent& content) {
  std::vector<StopRecord> stops = content.stops;
  std::stable_sort(stops.begin(), stops.end(),
                   [](const StopRecord& a, const StopRecord& b) { return a.arrived < b.arrived; });
  std::string text =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"Mastwise\">\n";
  for (const StopRecord& stop : stops) {
    if (stop.mark.deleted) continue;
    text += fmt::format("  <wpt lat=\"{:.9f}\" lon=\"{:.9f}\">\n", stop.position.latitude_deg(),
                        stop.position.longitude_deg());
    text += element("time", iso_utc(stop.arrived));
    const std::string day = iso_utc(stop.arrived).substr(0, 10);
    text += element("name", stop.name.empty() ? "Stop " + day : stop.name);
    text += element("desc", description(stop, content.outcomes));
    text += element("type", "stop");
    text += "  </wpt>\n";
  }
  return text + "</gpx>\n";
}

}  // namespace mastwise
