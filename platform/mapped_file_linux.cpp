#include "platform/mapped_file.hpp"

#include <atomic>
#include <cerrno>
#include <cstdint>
#include <mutex>
#include <string>
#include <system_error>

#include <fcntl.h>
#include <signal.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

namespace mastwise::platform {

// A mapping known to the signal handler. Guards are reused but never freed, so that the handler can
// walk their list without a lock.
struct MappedFile::Guard {
  std::atomic<std::uintptr_t> start = 0;  // 0 while no mapping uses it
  std::atomic<std::size_t> size = 0;
  std::atomic<bool> lost = false;
  std::atomic<bool> cut = false;
  Lost in_place_of_lost = {};  // written before `start`, which publishes it
  Guard* next = nullptr;
};

namespace {

std::atomic<MappedFile::Guard*> first_guard = nullptr;
struct sigaction action_before = {};
std::uintptr_t page_size = 0;

MappedFile::Guard* guard_of(std::uintptr_t address) {
  for (auto* guard = first_guard.load(); guard != nullptr; guard = guard->next) {
    const std::uintptr_t start = guard->start.load();
    if (start != 0 && address >= start && address - start < guard->size.load()) return guard;
  }
  return nullptr;
}

// The page is filled elsewhere and then moved into place, so that no thread sees it half filled. It
// keeps its first `kept` bytes.
bool put_lost_page(std::uintptr_t page, MappedFile::Lost pair, std::size_t kept = 0) {
  void* const made =
      ::mmap(nullptr, page_size, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
  if (made == MAP_FAILED) return false;
  auto* const bytes = static_cast<std::byte*>(made);
  const auto* const before = reinterpret_cast<const std::byte*>(page);
  for (std::size_t i = 0; i < kept; ++i) bytes[i] = before[i];
  for (std::size_t i = kept; i < page_size; ++i) bytes[i] = pair[i % 2];
  return ::mremap(made, page_size, page_size, MREMAP_MAYMOVE | MREMAP_FIXED,
                  reinterpret_cast<void*>(page)) != MAP_FAILED;
}

// Linux raises SIGBUS for a page of a mapping that its file no longer has. Only system calls are
// made here.
void on_lost_page(int, siginfo_t* info, void*) {
  const int number_before = errno;
  const auto address = reinterpret_cast<std::uintptr_t>(info->si_addr);
  auto* const guard = guard_of(address);
  if (guard != nullptr && put_lost_page(address - address % page_size, guard->in_place_of_lost)) {
    guard->lost = true;
  } else {
    // Not a guarded page: the access repeats and reaches the previous handler.
    ::sigaction(SIGBUS, &action_before, nullptr);
  }
  errno = number_before;
}

MappedFile::Guard* guard_mapping(void* start, std::size_t size, MappedFile::Lost pair) {
  static std::mutex alone;
  const std::lock_guard lock(alone);
  if (page_size == 0) {
    page_size = static_cast<std::uintptr_t>(::sysconf(_SC_PAGESIZE));
    struct sigaction action = {};
    action.sa_sigaction = on_lost_page;
    action.sa_flags = SA_SIGINFO | SA_ONSTACK;
    ::sigaction(SIGBUS, &action, &action_before);
  }
  auto* guard = first_guard.load();
  while (guard != nullptr && guard->start.load() != 0) guard = guard->next;
  const bool made = guard == nullptr;
  if (made) {
    guard = new MappedFile::Guard;
    guard->next = first_guard.load();
  }
  guard->size = size;
  guard->lost = false;
  guard->cut = false;
  guard->in_place_of_lost = pair;
  guard->start = reinterpret_cast<std::uintptr_t>(start);
  if (made) first_guard = guard;
  return guard;
}

Error mapping_error(const std::filesystem::path& path, const std::string& doing, int number) {
  return {.what = "cannot " + doing + ": " + std::generic_category().message(number),
          .where = path.string(),
          .remedy = "check that the file exists and that you may read it"};
}

}  // namespace

Result<MappedFile> MappedFile::open(const std::filesystem::path& path, Lost in_place_of_lost) {
  const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) return mapping_error(path, "open", errno);
  struct stat status = {};
  if (::fstat(file, &status) != 0 || !S_ISREG(status.st_mode)) {
    ::close(file);
    return mapping_error(path, "map something other than a file", EINVAL);
  }
  const auto size = static_cast<std::size_t>(status.st_size);
  if (size == 0) {
    ::close(file);
    return MappedFile(nullptr, 0, nullptr);
  }
  void* const start = ::mmap(nullptr, size, PROT_READ, MAP_SHARED, file, 0);
  const int failure = errno;
  ::close(file);
  if (start == MAP_FAILED) return mapping_error(path, "map", failure);
  return MappedFile(static_cast<const std::byte*>(start), size,
                    guard_mapping(start, size, in_place_of_lost));
}

MappedFile::~MappedFile() {
  if (guard_ == nullptr) return;
  guard_->start = 0;
  ::munmap(const_cast<std::byte*>(start_), size_);
}

bool MappedFile::cut(std::size_t length) const {
  if (guard_ == nullptr || length >= size_ || guard_->cut.exchange(true)) return false;
  guard_->lost = true;
  const std::size_t whole = length - length % page_size;
  if (length > whole) {
    const auto page = reinterpret_cast<std::uintptr_t>(start_) + whole;
    put_lost_page(page, guard_->in_place_of_lost, length - whole);
  }
  return true;
}

// Pages put in place of lost ones are private: dropped, they would turn to zeros.
void MappedFile::forget() const {
  if (guard_ == nullptr || guard_->lost) return;
  ::madvise(const_cast<std::byte*>(start_), size_, MADV_DONTNEED);
}

bool MappedFile::lost_bytes() const {
  return guard_ != nullptr && guard_->lost;
}

}  // namespace mastwise::platform
