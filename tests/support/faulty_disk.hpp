#pragma once

#include <atomic>
#include <cerrno>
#include <string>

namespace mastwise::test {

// While it lives, the system's calls that change files below a folder fail: write, pwrite, fsync,
// fdatasync, ftruncate, rename, and opening for writing. They fail in this process, for every
// library, so no test needs to be root. Only one at a time.
class FaultyDisk {
 public:
  enum class Fails { never, once, from_then_on };

  // `failing_call`: counted from 1 over all those calls, in order.
  explicit FaultyDisk(std::string folder, int failing_call = 0, Fails fails = Fails::never,
                      int error = ENOSPC);
  ~FaultyDisk();
  FaultyDisk(const FaultyDisk&) = delete;
  FaultyDisk& operator=(const FaultyDisk&) = delete;

  // As a folder on a read-only medium: from now on every call fails.
  static constexpr int kReadOnly = EROFS;

  int calls() const { return calls_; }
  bool failed() const { return failures_ > 0; }

  // For the calls: whether this one fails, which then sets errno.
  bool refuses(const char* path);
  bool refuses(int file);

 private:
  bool is_below(const char* path) const;
  bool next();

  std::string folder_;
  int failing_call_;
  Fails fails_;
  int error_;
  std::atomic<int> calls_ = 0, failures_ = 0;
};

}  // namespace mastwise::test
