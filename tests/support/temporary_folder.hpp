#pragma once

#include <cstddef>
#include <filesystem>
#include <span>
#include <string>
#include <vector>

namespace mastwise::test {

// A new empty folder that is deleted with its content at the end of the test.
class TemporaryFolder {
 public:
  TemporaryFolder();
  ~TemporaryFolder();
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;

  const std::filesystem::path& path() const { return path_; }
  std::string file(const std::string& name) const { return (path_ / name).string(); }
  std::filesystem::path operator/(const std::string& name) const { return path_ / name; }

  // Every file in it and its subfolders: path from here, and its bytes.
  std::vector<std::pair<std::string, std::string>> content() const;

 private:
  std::filesystem::path path_;
};

void write_bytes(const std::filesystem::path& path, std::span<const std::byte> bytes);

}  // namespace mastwise::test
