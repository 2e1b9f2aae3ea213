#include "tests/support/temporary_folder.hpp"

#include "tests/support/reference.hpp"

#include <algorithm>
#include <fstream>
#include <random>
#include <utility>

#include <catch2/catch.hpp>

namespace mastwise::test {

TemporaryFolder::TemporaryFolder() {
  std::random_device random;
  do {
    path_ = std::filesystem::temp_directory_path() / ("mastwise-test-" + std::to_string(random()));
  } while (!std::filesystem::create_directory(path_));
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

std::vector<std::pair<std::string, std::string>> TemporaryFolder::content() const {
  std::vector<std::pair<std::string, std::string>> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(path_)) {
    const std::string name = std::filesystem::relative(entry.path(), path_).string();
    files.emplace_back(name, entry.is_regular_file() ? read_file(entry.path()) : "a folder");
  }
  std::sort(files.begin(), files.end());
  return files;
}

void write_bytes(const std::filesystem::path& path, std::span<const std::byte> bytes) {
  std::ofstream file(path, std::ios::binary);
  file.write(reinterpret_cast<const char*>(bytes.data()),
             static_cast<std::streamsize>(bytes.size()));
  file.close();
  INFO("writing " << path);
  REQUIRE(file);
}

}  // namespace mastwise::test
