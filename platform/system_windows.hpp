#pragma once

#include "core/result.hpp"

#include <filesystem>
#include <string>
#include <string_view>
#include <utility>

// What the sources for Windows share. Only for sources of platform.
namespace mastwise::platform {

// Owns a handle of the system, which is a pointer there.
class Handle {
 public:
  explicit Handle(void* handle = nullptr) : handle_(handle) {}
  Handle(Handle&& other) noexcept : handle_(std::exchange(other.handle_, nullptr)) {}
  Handle& operator=(Handle&& other) noexcept {
    std::swap(handle_, other.handle_);
    return *this;
  }
  ~Handle();
  void* get() const { return handle_; }
  bool is_open() const;

 private:
  void* handle_;
};

// "cannot open: Access is denied." from a number of GetLastError.
std::string system_message(const std::string& what, unsigned long number);

std::wstring wide(std::string_view utf8);
std::string narrow(std::wstring_view utf16);

// The path for the system's functions: absolute, and beyond 260 characters with the prefix that
// lifts the limit (Microsoft, "Maximum Path Length Limitation").
std::wstring long_path(const std::filesystem::path& path);

}  // namespace mastwise::platform
