#include "platform/places_to_look.hpp"
#include "platform/system_windows.hpp"

#include <filesystem>
#include <memory>

#include <windows.h>
// windows.h comes first.
#include <shlobj.h>

namespace mastwise::platform {
namespace {

void add(std::vector<PlaceToLook>& places, std::string name, const KNOWNFOLDERID& known) {
  PWSTR found = nullptr;
  const HRESULT result = ::SHGetKnownFolderPath(known, KF_FLAG_DONT_VERIFY, nullptr, &found);
  const std::unique_ptr<wchar_t, decltype(&::CoTaskMemFree)> owner(found, &::CoTaskMemFree);
  std::error_code ignored;
  if (FAILED(result) || !std::filesystem::is_directory(found, ignored)) return;
  places.push_back({std::move(name), narrow(found)});
}

// Sticks and cards: drives that can be removed and have a medium in them. Windows would ask for a
// missing medium in a window of its own.
void add_media(std::vector<PlaceToLook>& places) {
  DWORD mode_before = 0;
  ::SetThreadErrorMode(SEM_FAILCRITICALERRORS, &mode_before);
  const DWORD drives = ::GetLogicalDrives();
  for (int letter = 0; letter < 26; ++letter) {
    if ((drives >> letter & 1U) == 0) continue;
    const std::wstring root{static_cast<wchar_t>(L'A' + letter), L':', L'\\'};
    if (::GetDriveTypeW(root.c_str()) != DRIVE_REMOVABLE) continue;
    wchar_t label[MAX_PATH + 1] = {};
    if (::GetVolumeInformationW(root.c_str(), label, MAX_PATH + 1, nullptr, nullptr, nullptr,
                                nullptr, 0) == 0) {
      continue;
    }
    const std::string name = narrow(label);
    places.push_back({name.empty() ? narrow(root.substr(0, 2)) : name, narrow(root)});
  }
  ::SetThreadErrorMode(mode_before, nullptr);
}

}  // namespace

std::vector<PlaceToLook> places_to_look() {
  std::vector<PlaceToLook> places;
  add(places, "Downloads", FOLDERID_Downloads);
  add(places, "Documents", FOLDERID_Documents);
  add(places, "Home", FOLDERID_Profile);
  add_media(places);
  return places;
}

}  // namespace mastwise::platform
