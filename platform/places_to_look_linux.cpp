#include "platform/mounts_linux.hpp"
#include "platform/places_to_look.hpp"

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <memory>

#include <mntent.h>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;

// Mount points of removable media: Filesystem Hierarchy Standard 3.0, 3.11 and 3.12, and those of
// current desktops.
constexpr std::array kMediaRoots{"/media/", "/run/media/", "/mnt/"};

bool is_medium(const std::string& folder) {
  for (const std::string root : kMediaRoots) {
    if (folder.starts_with(root) || folder + "/" == root) return true;
  }
  return false;
}

void add(std::vector<PlaceToLook>& places, std::string name, const fs::path& folder) {
  std::error_code ignored;
  if (fs::is_directory(folder, ignored)) places.push_back({std::move(name), folder.string()});
}

struct MountsCloser {
  void operator()(std::FILE* mounts) const { endmntent(mounts); }
};

}  // namespace

std::vector<PlaceToLook> media_in(const std::string& list_of_mounts) {
  std::vector<PlaceToLook> media;
  const std::unique_ptr<std::FILE, MountsCloser> mounts(setmntent(list_of_mounts.c_str(), "r"));
  if (!mounts) return media;
  mntent entry{};
  std::array<char, 8192> text{};
  while (getmntent_r(mounts.get(), &entry, text.data(), static_cast<int>(text.size())) != nullptr) {
    const std::string folder = entry.mnt_dir;
    if (is_medium(folder)) media.push_back({fs::path(folder).filename().string(), folder});
  }
  return media;
}

std::vector<PlaceToLook> places_to_look() {
  std::vector<PlaceToLook> places;
  if (const char* home = std::getenv("HOME"); home != nullptr && *home == '/') {
    add(places, "Downloads", fs::path(home) / "Downloads");
    add(places, "Documents", fs::path(home) / "Documents");
    add(places, "Home", home);
  }
  for (PlaceToLook& medium : media_in("/proc/self/mounts")) {
    add(places, std::move(medium.name), medium.path);
  }
  return places;
}

}  // namespace mastwise::platform
