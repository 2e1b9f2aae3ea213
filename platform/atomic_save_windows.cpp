#include "platform/atomic_save.hpp"
#include "platform/system_windows.hpp"

#include <algorithm>

#include <windows.h>

namespace mastwise::platform {
namespace {

Error write_error(const std::filesystem::path& path, const std::string& doing, DWORD number) {
  return {.what = system_message("cannot " + doing, number),
          .where = path.string(),
          .remedy = "check that you may write to the folder and that it has free space"};
}

// 0 or the error's number.
DWORD write_all(const Handle& file, std::span<const std::byte> bytes) {
  constexpr std::size_t kPiece = std::size_t{1} << 26U;
  while (!bytes.empty()) {
    DWORD written = 0;
    const auto size = static_cast<DWORD>(std::min(bytes.size(), kPiece));
    if (::WriteFile(file.get(), bytes.data(), size, &written, nullptr) == 0) {
      return ::GetLastError();
    }
    bytes = bytes.subspan(written);
  }
  return ::FlushFileBuffers(file.get()) != 0 ? 0 : ::GetLastError();
}

// Whoever has the file open for a moment, such as a virus scanner, lets it go soon.
bool is_in_use(DWORD number) {
  return number == ERROR_SHARING_VIOLATION || number == ERROR_ACCESS_DENIED ||
         number == ERROR_USER_MAPPED_FILE;
}

// Write through: it returns once the name is on the disk too. 0 or the error's number.
DWORD move_over(const std::wstring& before, const std::wstring& after) {
  const bool moved = ::MoveFileExW(before.c_str(), after.c_str(),
                                   MOVEFILE_REPLACE_EXISTING | MOVEFILE_WRITE_THROUGH) != 0;
  return moved ? 0 : ::GetLastError();
}

// A mapped file can be renamed but neither replaced nor deleted: the old one gets another name. If
// it cannot be deleted yet, it goes when this name is replaced again.
bool move_beside(const std::wstring& before, const std::wstring& after) {
  constexpr int kNames = 9;
  for (int number = 1; number <= kNames; ++number) {
    const std::wstring aside = after + L".replaced" + std::to_wstring(number);
    if (move_over(after, aside) != 0) continue;
    const bool moved = move_over(before, after) == 0;
    if (!moved) {
      move_over(aside, after);
    } else {
      ::DeleteFileW(aside.c_str());
    }
    return moved;
  }
  return false;
}

}  // namespace

Result<Done> write_durably(const std::filesystem::path& path, std::span<const std::byte> bytes) {
  const std::wstring name = long_path(path);
  DWORD failure = 0;
  {
    const Handle file(::CreateFileW(name.c_str(), GENERIC_WRITE,
                                    FILE_SHARE_READ | FILE_SHARE_DELETE, nullptr, CREATE_ALWAYS,
                                    FILE_ATTRIBUTE_NORMAL, nullptr));
    if (!file.is_open()) return write_error(path, "write", ::GetLastError());
    failure = write_all(file, bytes);
  }
  if (failure == 0) return Done{};
  ::DeleteFileW(name.c_str());
  return write_error(path, "write", failure);
}

Result<Done> put_in_place(const std::filesystem::path& from, const std::filesystem::path& to) {
  const std::wstring before = long_path(from), after = long_path(to);
  constexpr int kTries = 20;
  constexpr DWORD kBetween_ms = 50;
  for (int tried = 1;; ++tried) {
    const DWORD failure = move_over(before, after);
    if (failure == 0) return Done{};
    const DWORD kind = ::GetFileAttributesW(after.c_str());
    const bool is_folder = kind != INVALID_FILE_ATTRIBUTES && (kind & FILE_ATTRIBUTE_DIRECTORY);
    if (is_folder || !is_in_use(failure)) return write_error(to, "replace", failure);
    if (failure == ERROR_USER_MAPPED_FILE || tried == kTries) {
      if (move_beside(before, after)) return Done{};
      return write_error(to, "replace", failure);
    }
    ::Sleep(kBetween_ms);
  }
}

Result<Done> save_atomically(const std::filesystem::path& path, std::span<const std::byte> bytes) {
  std::filesystem::path part = path;
  part += ".part";
  const auto written = write_durably(part, bytes);
  if (!written) return written.error();
  const auto placed = put_in_place(part, path);
  if (!placed) ::DeleteFileW(long_path(part).c_str());
  return placed;
}

}  // namespace mastwise::platform
