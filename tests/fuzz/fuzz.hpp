#pragma once

#include "core/result.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>
#include <system_error>

#include <unistd.h>

// Shared by the fuzz targets.
namespace mastwise::fuzz {

inline void require(bool holds) {
  if (!holds) std::abort();
}

inline std::string_view text_of(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

// Whether a value was read; what was not must say why.
template <class T>
bool read_or_told(const Result<T>& result) {
  require(result || !result.error().what.empty());
  return static_cast<bool>(result);
}

// A folder of this process for readers that need a file; deleted at its end.
class Scratch {
 public:
  Scratch()
      : folder_(std::filesystem::temp_directory_path() /
                ("mastwise-fuzz-" + std::to_string(::getpid()))) {
    std::filesystem::create_directories(folder_);
  }
  ~Scratch() {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;

  std::string file(const std::string& name) const { return (folder_ / name).string(); }
  // The path of a file with this text.
  std::string write(const std::string& name, std::string_view text) const {
    std::ofstream(folder_ / name, std::ios::binary) << text;
    return file(name);
  }

 private:
  std::filesystem::path folder_;
};

}  // namespace mastwise::fuzz
