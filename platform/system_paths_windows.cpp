#include "platform/system_paths.hpp"
#include "platform/system_windows.hpp"

#include <cstdlib>
#include <filesystem>
#include <memory>

#include <windows.h>
// windows.h comes first.
#include <shlobj.h>

namespace mastwise::platform {

std::string program_folder() {
  std::wstring name(MAX_PATH, L'\0');
  DWORD size = 0;
  while ((size = ::GetModuleFileNameW(nullptr, name.data(), static_cast<DWORD>(name.size()))) ==
         name.size()) {
    name.resize(2 * name.size());
  }
  name.resize(size);
  return std::filesystem::path(name).parent_path().string();
}

std::string assets_beside(const std::string& program_folder) {
  return (std::filesystem::path(program_folder) / "assets").string();
}

std::optional<std::string> environment(const char* name) {
  const wchar_t* text = ::_wgetenv(wide(name).c_str());
  return text != nullptr ? std::optional(narrow(text)) : std::nullopt;
}

// The known folder for data that stays on this machine.
std::string user_data_folder() {
  PWSTR found = nullptr;
  const HRESULT result =
      ::SHGetKnownFolderPath(FOLDERID_LocalAppData, KF_FLAG_CREATE, nullptr, &found);
  const std::unique_ptr<wchar_t, decltype(&::CoTaskMemFree)> owner(found, &::CoTaskMemFree);
  const std::filesystem::path folder = FAILED(result) ? L"." : found;
  return (folder / "Mastwise").string();
}

}  // namespace mastwise::platform
