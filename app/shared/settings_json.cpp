#include "app/shared/settings_json.hpp"

#include "app/shared/json.hpp"
#include "core/text/json_text.hpp"

namespace mastwise {

std::string settings_text(const Settings& settings) {
  nlohmann::json all = read_json(settings.of_newer);
  if (!all.is_object()) all = nlohmann::json::object();
  all.update(nlohmann::json(settings));
  return all.dump();
}

SettingsRead read_settings(const std::string& text) {
  SettingsRead read;
  nlohmann::json all = read_json(text);
  if (!all.is_object()) return {.dropped = {"all settings"}};
  upgrade_settings(all);
  Settings::each(read.settings, [&](const char* name, auto& setting) {
    if (!all.contains(name)) return;
    auto before = setting;
    try {
      all.at(name).get_to(setting);
    } catch (const std::exception&) {
      setting = std::move(before);
      read.dropped.push_back(name);
    }
    all.erase(name);
  });
  if (!all.empty()) read.settings.of_newer = all.dump();
  return read;
}

}  // namespace mastwise
