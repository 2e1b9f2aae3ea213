#include "platform/mapped_file.hpp"
#include "platform/system_windows.hpp"

#include <algorithm>
#include <atomic>
#include <cstdint>
#include <cstring>
#include <mutex>
#include <string>
#include <utility>

#include <windows.h>

namespace mastwise::platform {
namespace {

// Views begin at multiples of this.
constexpr std::size_t kStep = std::size_t{1} << 16U;

class SpinLock {
 public:
  void lock() {
    while (taken_.test_and_set(std::memory_order_acquire)) ::SwitchToThread();
  }
  void unlock() { taken_.clear(std::memory_order_release); }

 private:
  std::atomic_flag taken_ = ATOMIC_FLAG_INIT;
};

}  // namespace

// A mapping known to the exception handler. Guards are reused but never freed, so that the handler
// can walk their list without a lock.
struct MappedFile::Guard {
  std::atomic<std::uintptr_t> start = 0;  // 0 while no mapping uses it
  std::atomic<std::size_t> size = 0;
  std::atomic<bool> lost = false;
  std::atomic<bool> cut = false;
  std::atomic<bool> in_steps = false;  // mapped anew, step by step
  Lost in_place_of_lost = {};          // written before `start`, which publishes it
  Handle file_section;
  SpinLock mapping;  // held while the view is replaced
  Guard* next = nullptr;
};

namespace {

std::atomic<MappedFile::Guard*> first_guard = nullptr;

MappedFile::Guard* guard_of(std::uintptr_t address) {
  for (auto* guard = first_guard.load(); guard != nullptr; guard = guard->next) {
    const std::uintptr_t start = guard->start.load();
    if (start != 0 && address >= start && address - start < guard->size.load()) return guard;
  }
  return nullptr;
}

// One step of memory that begins with `kept` and goes on with lost bytes.
Handle lost_step(MappedFile::Lost pair, const std::byte* kept, std::size_t kept_size) {
  Handle section(::CreateFileMappingW(INVALID_HANDLE_VALUE, nullptr, PAGE_READWRITE, 0,
                                      static_cast<DWORD>(kStep), nullptr));
  void* const view = ::MapViewOfFile(section.get(), FILE_MAP_WRITE, 0, 0, kStep);
  if (view == nullptr) return Handle();
  auto* const bytes = static_cast<std::byte*>(view);
  if (kept_size > 0) std::memcpy(bytes, kept, kept_size);
  for (std::size_t at = kept_size; at < kStep; ++at) bytes[at] = pair[at % 2];
  ::UnmapViewOfFile(view);
  return section;
}

void unmap(std::uintptr_t start, std::size_t size, bool in_steps) {
  const std::size_t step = in_steps ? kStep : size;
  for (std::size_t at = 0; at < size; at += step) {
    ::UnmapViewOfFile(reinterpret_cast<void*>(start + at));
  }
}

// Keeps the first `kept` bytes of the file. The whole view is replaced: a thread that reads
// meanwhile finds no memory there, and the handler makes it wait. All steps after the kept bytes
// share one piece of memory.
bool map_lost(MappedFile::Guard& guard, std::size_t kept) {
  const auto* const bytes = reinterpret_cast<const std::byte*>(guard.start.load());
  const std::size_t size = guard.size, whole = kept - kept % kStep;
  const Handle all_lost = lost_step(guard.in_place_of_lost, nullptr, 0);
  const Handle part_kept = lost_step(guard.in_place_of_lost, bytes + whole, kept - whole);
  if (!all_lost.is_open() || !part_kept.is_open()) return false;
  unmap(guard.start, size, false);
  guard.in_steps = true;
  for (std::size_t at = 0; at < size; at += kStep) {
    const bool is_kept = at < whole;
    const Handle& section = is_kept ? guard.file_section : at == whole ? part_kept : all_lost;
    const auto offset = static_cast<std::uint64_t>(is_kept ? at : 0);
    if (::MapViewOfFileEx(section.get(), FILE_MAP_READ, static_cast<DWORD>(offset >> 32U),
                          static_cast<DWORD>(offset), std::min(kStep, size - at),
                          const_cast<std::byte*>(bytes) + at) == nullptr) {
      return false;
    }
  }
  return true;
}

// Windows raises an in-page error for a page that it can no longer read.
LONG CALLBACK on_lost_page(EXCEPTION_POINTERS* what) {
  const EXCEPTION_RECORD& record = *what->ExceptionRecord;
  const bool in_page = record.ExceptionCode == static_cast<DWORD>(EXCEPTION_IN_PAGE_ERROR);
  const bool no_memory = record.ExceptionCode == static_cast<DWORD>(EXCEPTION_ACCESS_VIOLATION);
  constexpr ULONG_PTR kReading = 0;
  if ((!in_page && !no_memory) || record.NumberParameters < 2 ||
      record.ExceptionInformation[0] != kReading) {
    return EXCEPTION_CONTINUE_SEARCH;
  }
  auto* const guard = guard_of(record.ExceptionInformation[1]);
  if (guard == nullptr) return EXCEPTION_CONTINUE_SEARCH;
  const std::lock_guard lock(guard->mapping);
  // Another thread may have replaced the view while this one waited.
  if (guard->lost && guard->in_steps) return EXCEPTION_CONTINUE_EXECUTION;
  if (!in_page || !map_lost(*guard, 0)) return EXCEPTION_CONTINUE_SEARCH;
  guard->lost = true;
  return EXCEPTION_CONTINUE_EXECUTION;
}

MappedFile::Guard* guard_mapping(void* start, std::size_t size, Handle section,
                                 MappedFile::Lost pair) {
  static std::mutex alone;
  const std::lock_guard lock(alone);
  if (first_guard == nullptr) ::AddVectoredExceptionHandler(1, on_lost_page);
  auto* guard = first_guard.load();
  while (guard != nullptr && guard->start.load() != 0) guard = guard->next;
  const bool made = guard == nullptr;
  if (made) {
    guard = new MappedFile::Guard;
    guard->next = first_guard.load();
  }
  guard->size = size;
  guard->lost = guard->cut = guard->in_steps = false;
  guard->in_place_of_lost = pair;
  guard->file_section = std::move(section);
  guard->start = reinterpret_cast<std::uintptr_t>(start);
  if (made) first_guard = guard;
  return guard;
}

Error mapping_error(const std::filesystem::path& path, const std::string& doing, DWORD number) {
  return {.what = system_message("cannot " + doing, number),
          .where = path.string(),
          .remedy = "check that the file exists and that you may read it"};
}

}  // namespace

Result<MappedFile> MappedFile::open(const std::filesystem::path& path, Lost in_place_of_lost) {
  const std::wstring name = long_path(path);
  constexpr DWORD kShared = FILE_SHARE_READ | FILE_SHARE_WRITE | FILE_SHARE_DELETE;
  const Handle file(::CreateFileW(name.c_str(), GENERIC_READ, kShared, nullptr, OPEN_EXISTING,
                                  FILE_FLAG_BACKUP_SEMANTICS, nullptr));
  if (!file.is_open()) return mapping_error(path, "open", ::GetLastError());
  BY_HANDLE_FILE_INFORMATION about{};
  if (::GetFileInformationByHandle(file.get(), &about) == 0 ||
      (about.dwFileAttributes & FILE_ATTRIBUTE_DIRECTORY) != 0) {
    return mapping_error(path, "map something other than a file", ERROR_INVALID_PARAMETER);
  }
  const std::size_t size = std::size_t{about.nFileSizeHigh} << 32U | about.nFileSizeLow;
  if (size == 0) return MappedFile(nullptr, 0, nullptr);
  Handle section(::CreateFileMappingW(file.get(), nullptr, PAGE_READONLY, 0, 0, nullptr));
  if (!section.is_open()) return mapping_error(path, "map", ::GetLastError());
  void* const start = ::MapViewOfFile(section.get(), FILE_MAP_READ, 0, 0, size);
  if (start == nullptr) return mapping_error(path, "map", ::GetLastError());
  return MappedFile(static_cast<const std::byte*>(start), size,
                    guard_mapping(start, size, std::move(section), in_place_of_lost));
}

MappedFile::~MappedFile() {
  if (guard_ == nullptr) return;
  unmap(reinterpret_cast<std::uintptr_t>(start_), size_, guard_->in_steps);
  guard_->file_section = Handle();
  guard_->start = 0;  // free for another mapping from here on
}

// Windows itself refuses to cut a mapped file short; a server or a card may not.
bool MappedFile::cut(std::size_t length) const {
  if (guard_ == nullptr || length >= size_ || guard_->cut.exchange(true)) return false;
  const std::lock_guard lock(guard_->mapping);
  guard_->lost = true;
  if (!guard_->in_steps) map_lost(*guard_, length);
  return true;
}

// Unlocking pages that are not locked takes them out of memory (VirtualUnlock).
void MappedFile::forget() const {
  if (guard_ == nullptr || guard_->lost) return;
  ::VirtualUnlock(const_cast<std::byte*>(start_), size_);
}

bool MappedFile::lost_bytes() const {
  return guard_ != nullptr && guard_->lost;
}

}  // namespace mastwise::platform
