#include "core/nmea/gpsd_stream.hpp"

#include "core/text/json_text.hpp"

#include <utility>

namespace mastwise::nmea {
namespace {

using nlohmann::json;

std::string text_at(const json& object, const char* name) {
  const auto found = object.find(name);
  return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

gpsd::Devices read_devices(const json& object) {
  gpsd::Devices devices;
  const auto list = object.find("devices");
  if (list == object.end() || !list->is_array()) return devices;
  for (const json& device : *list) {
    if (!device.is_object()) continue;
    std::string path = text_at(device, "path");
    if (!path.empty()) devices.paths.push_back(std::move(path));
  }
  return devices;
}

// A device that went has "activated":0, one that came the time at which it did.
gpsd::Device read_device(const json& object) {
  const auto activated = object.find("activated");
  const bool gone = activated != object.end() && activated->is_number() && *activated == 0;
  return {text_at(object, "path"), !gone};
}

GpsdLine read_object(const json& object) {
  const std::string name = text_at(object, "class");
  if (name == "VERSION") return gpsd::Version{text_at(object, "release")};
  if (name == "DEVICES") return read_devices(object);
  if (name == "DEVICE") return read_device(object);
  if (name == "ERROR") return gpsd::Refusal{text_at(object, "message")};
  return Ignored{};
}

}  // namespace

void GpsdStream::append(char byte) {
  if (line_.size() < kLongest && !too_long_) {
    line_.push_back(byte);
    return;
  }
  too_long_ = true;
  line_.clear();
}

GpsdLine GpsdStream::finish() {
  const std::string line = std::exchange(line_, {});
  if (std::exchange(too_long_, false)) return Ignored{};
  if (line.front() == '$' || line.front() == '!') return Sentence{line};
  if (line.front() != '{') return Ignored{};
  const json object = read_json(line);
  return object.is_object() ? read_object(object) : Ignored{};
}

std::string gpsd_devices_request() {
  return "?DEVICES;\n";
}

std::string gpsd_watch_request(std::string_view device) {
  const json watch{{"enable", true}, {"json", true}, {"nmea", true}, {"device", device}};
  return "?WATCH=" + watch.dump(-1, ' ', false, json::error_handler_t::replace) + ";\n";
}

}  // namespace mastwise::nmea
