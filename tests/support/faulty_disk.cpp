#include "tests/support/faulty_disk.hpp"

#include <array>
#include <cstdarg>
#include <cstdio>
#include <cstring>

#include <catch2/catch.hpp>
#include <dlfcn.h>
#include <fcntl.h>
#include <unistd.h>

namespace mastwise::test {
namespace {

std::atomic<FaultyDisk*> present = nullptr;

}  // namespace

FaultyDisk::FaultyDisk(std::string folder, int failing_call, Fails fails, int error)
    : folder_(std::move(folder)), failing_call_(failing_call), fails_(fails), error_(error) {
  FaultyDisk* none = nullptr;
  REQUIRE(present.compare_exchange_strong(none, this));
}

FaultyDisk::~FaultyDisk() {
  present = nullptr;
}

bool FaultyDisk::is_below(const char* path) const {
  return std::strncmp(path, folder_.c_str(), folder_.size()) == 0;
}

bool FaultyDisk::next() {
  const int call = ++calls_;
  const bool fails = fails_ == Fails::once           ? call == failing_call_
                     : fails_ == Fails::from_then_on ? call >= failing_call_
                                                     : false;
  if (!fails) return false;
  ++failures_;
  errno = error_;
  return true;
}

bool FaultyDisk::refuses(const char* path) {
  return is_below(path) && next();
}

bool FaultyDisk::refuses(int file) {
  const std::string link = "/proc/self/fd/" + std::to_string(file);
  std::array<char, 4096> path{};
  if (::readlink(link.c_str(), path.data(), path.size() - 1) < 0) return false;
  return refuses(path.data());
}

namespace {

template <class File>
bool refused(File file) {
  const int before = errno;
  FaultyDisk* disk = present;
  const bool refuses = disk != nullptr && disk->refuses(file);
  if (!refuses) errno = before;
  return refuses;
}

template <class Call>
Call* next_one(Call*, const char* name) {
  return reinterpret_cast<Call*>(::dlsym(RTLD_NEXT, name));
}

bool for_writing(int flags) {
  return (flags & O_ACCMODE) != O_RDONLY || (flags & O_CREAT) != 0;
}

}  // namespace
}  // namespace mastwise::test

// The dynamic linker finds these before the C library's, also for SQLite and the C++ library.
using mastwise::test::for_writing;
using mastwise::test::next_one;
using mastwise::test::refused;

#define MASTWISE_FAULTY(result, name, file, parameters, ...)               \
  extern "C" result name parameters {                                      \
    static auto* const real = next_one<result parameters>(nullptr, #name); \
    if (refused(file)) return -1;                                          \
    return real(__VA_ARGS__);                                              \
  }

MASTWISE_FAULTY(ssize_t, write, file, (int file, const void* bytes, size_t size), file, bytes, size)
MASTWISE_FAULTY(ssize_t, pwrite, file, (int file, const void* bytes, size_t size, off_t at), file,
                bytes, size, at)
MASTWISE_FAULTY(ssize_t, pwrite64, file, (int file, const void* bytes, size_t size, off64_t at),
                file, bytes, size, at)
MASTWISE_FAULTY(int, fsync, file, (int file), file)
MASTWISE_FAULTY(int, fdatasync, file, (int file), file)
MASTWISE_FAULTY(int, ftruncate, file, (int file, off_t size) noexcept, file, size)
MASTWISE_FAULTY(int, ftruncate64, file, (int file, off64_t size) noexcept, file, size)
MASTWISE_FAULTY(int, rename, to, (const char* from, const char* to) noexcept, from, to)

#define MASTWISE_FAULTY_OPEN(name)                                                  \
  extern "C" int name(const char* path, int flags, ...) {                           \
    static auto* const real = next_one<int(const char*, int, ...)>(nullptr, #name); \
    va_list more;                                                                   \
    va_start(more, flags);                                                          \
    const auto mode = (flags & O_CREAT) != 0 ? va_arg(more, unsigned) : 0u;         \
    va_end(more);                                                                   \
    if (for_writing(flags) && refused(path)) return -1;                             \
    return real(path, flags, mode);                                                 \
  }

MASTWISE_FAULTY_OPEN(open)
MASTWISE_FAULTY_OPEN(open64)
