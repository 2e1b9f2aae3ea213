#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace mastwise::platform {

// The backlights of the built-in screens, as far as the system lets this user set them.
class Backlight {
 public:
  // `folder`: where the kernel lists backlights (its ABI "sysfs-class-backlight").
  static Backlight in(const std::string& folder = "/sys/class/backlight");

  Backlight(Backlight&&) = default;
  Backlight& operator=(Backlight&&) = default;
  // The levels of before.
  ~Backlight() { restore(); }

  bool found() const { return !screens_.empty(); }
  // Darkens each screen that is brighter than `fraction` (0 to 1) of its most, and remembers its
  // level; never brightens one, and never turns one off.
  void at_most(double fraction);
  // Gives back the levels of before, except where somebody else has changed them since.
  void restore();

 private:
  struct Screen {
    std::string file;  // its brightness
    std::int64_t most = 0;
    std::int64_t before = 0, set = 0;  // 0: as the user has it
  };
  explicit Backlight(std::vector<Screen> screens) : screens_(std::move(screens)) {}

  std::vector<Screen> screens_;
};

}  // namespace mastwise::platform
