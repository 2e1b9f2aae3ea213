#pragma once

#include "app/shared/settings.hpp"
#include "core/result.hpp"

#include <string>
#include <vector>

namespace mastwise {

// The settings as they are kept, with those of a newer version that this one does not know.
std::string settings_text(const Settings& settings);

struct SettingsRead {
  Settings settings = {};
  std::vector<std::string> dropped = {};  // names of those that could not be read
};
// Each setting is read alone: what cannot be read has its default and is named. A text that is not
// JSON at all drops everything.
SettingsRead read_settings(const std::string& text);

}  // namespace mastwise
