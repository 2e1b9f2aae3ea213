#pragma once

#include <cstdint>
#include <filesystem>

namespace mastwise::platform {

// What a download would go over, as far as the kernel tells.
enum class LineKind : std::uint8_t {
  none,    // no interface has a default route
  mobile,  // a modem, or a phone on a cable: most such lines are metered
  other,   // Wi-Fi or a cable, which may still be a phone's hot spot
};

// By the routes in /proc/net (proc(5)) and the kind and driver of their interfaces in
// /sys/class/net (the kernel's ABI "sysfs-class-net"). `root`: where these begin.
LineKind line_kind(const std::filesystem::path& root = "/");

}  // namespace mastwise::platform
