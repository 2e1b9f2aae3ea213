#include "platform/system_windows.hpp"

#include <windows.h>

namespace mastwise::platform {

Handle::~Handle() {
  if (is_open()) ::CloseHandle(handle_);
}

bool Handle::is_open() const {
  return handle_ != nullptr && handle_ != INVALID_HANDLE_VALUE;
}

std::string system_message(const std::string& what, unsigned long number) {
  wchar_t text[512] = {};
  const DWORD size =
      ::FormatMessageW(FORMAT_MESSAGE_FROM_SYSTEM | FORMAT_MESSAGE_IGNORE_INSERTS, nullptr, number,
                       0, text, static_cast<DWORD>(std::size(text)), nullptr);
  std::string reason = narrow({text, size});
  while (!reason.empty() && (reason.back() == '\n' || reason.back() == '\r' ||
                             reason.back() == ' ' || reason.back() == '.')) {
    reason.pop_back();
  }
  return what + ": " + (reason.empty() ? "error " + std::to_string(number) : reason);
}

std::wstring wide(std::string_view utf8) {
  const int from = static_cast<int>(utf8.size());
  std::wstring text(
      static_cast<std::size_t>(::MultiByteToWideChar(CP_UTF8, 0, utf8.data(), from, nullptr, 0)),
      L'\0');
  ::MultiByteToWideChar(CP_UTF8, 0, utf8.data(), from, text.data(), static_cast<int>(text.size()));
  return text;
}

std::string narrow(std::wstring_view utf16) {
  const int from = static_cast<int>(utf16.size());
  std::string text(static_cast<std::size_t>(::WideCharToMultiByte(CP_UTF8, 0, utf16.data(), from,
                                                                  nullptr, 0, nullptr, nullptr)),
                   '\0');
  ::WideCharToMultiByte(CP_UTF8, 0, utf16.data(), from, text.data(), static_cast<int>(text.size()),
                        nullptr, nullptr);
  return text;
}

std::wstring long_path(const std::filesystem::path& path) {
  std::error_code unknown;
  const auto absolute = std::filesystem::absolute(path, unknown);
  std::wstring text = (unknown ? path : absolute).lexically_normal().make_preferred().wstring();
  // A folder's limit is 12 characters less, for the names of its files in the old form.
  constexpr std::size_t kShort = 247;
  if (text.size() <= kShort || text.starts_with(L"\\\\?\\")) return text;
  if (text.starts_with(L"\\\\")) return L"\\\\?\\UNC\\" + text.substr(2);
  return L"\\\\?\\" + text;
}

}  // namespace mastwise::platform
