#include "platform/backlight.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <optional>

#include <unistd.h>

namespace mastwise::platform {
namespace {

std::optional<std::int64_t> level_in(const std::string& file) {
  std::int64_t level = 0;
  if (!(std::ifstream(file) >> level) || level < 0) return std::nullopt;
  return level;
}

bool write_level(const std::string& file, std::int64_t level) {
  std::ofstream out(file);
  out << level << '\n';
  return bool(out.flush());
}

}  // namespace

Backlight Backlight::in(const std::string& folder) {
  std::vector<Screen> screens;
  std::error_code ignored;
  for (const auto& entry : std::filesystem::directory_iterator(folder, ignored)) {
    const std::string file = (entry.path() / "brightness").string();
    const auto most = level_in((entry.path() / "max_brightness").string());
    if (most.value_or(0) > 0 && level_in(file) && ::access(file.c_str(), W_OK) == 0) {
      screens.push_back({.file = file, .most = *most});
    }
  }
  return Backlight(std::move(screens));
}

void Backlight::at_most(double fraction) {
  restore();
  for (Screen& screen : screens_) {
    const auto now = level_in(screen.file);
    const std::int64_t wanted =
        std::max<std::int64_t>(1, std::llround(fraction * static_cast<double>(screen.most)));
    if (!now || *now <= wanted || !write_level(screen.file, wanted)) continue;
    screen.before = *now;
    screen.set = wanted;
  }
}

void Backlight::restore() {
  for (Screen& screen : screens_) {
    if (screen.set > 0 && level_in(screen.file) == screen.set) {
      write_level(screen.file, screen.before);
    }
    screen.before = screen.set = 0;
  }
}

}  // namespace mastwise::platform
