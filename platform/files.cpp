#include "platform/files.hpp"

#include "platform/system_paths.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <system_error>
#include <vector>

#include <fmt/format.h>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;

Error failed(const char* what, const std::string& path, const std::string& reason) {
  return Error{.what = std::string(what) + ": " + reason, .where = path};
}

}  // namespace

bool exists(const std::string& path) {
  std::error_code ignored;
  return fs::exists(path, ignored);
}

Result<std::string> read_file(const std::string& path) {
  std::error_code ignored;
  if (fs::is_directory(path, ignored)) return failed("cannot read", path, "it is a folder");
  std::ifstream file(path, std::ios::binary);
  if (!file) return failed("cannot read", path, std::strerror(errno));
  std::string bytes;
  const auto size = fs::file_size(path, ignored);  // unknown for a device
  bool too_large = !ignored && size > kLargestFile;
  if (!ignored && !too_large) bytes.reserve(size);
  std::vector<char> piece(std::size_t{1} << 16);
  while (file && !too_large) {
    file.read(piece.data(), static_cast<std::streamsize>(piece.size()));
    bytes.append(piece.data(), static_cast<std::size_t>(file.gcount()));
    too_large = bytes.size() > kLargestFile;
  }
  if (too_large) {
    return failed("cannot read", path, fmt::format("larger than {} MB", kLargestFile >> 20));
  }
  if (file.bad()) return failed("cannot read", path, std::strerror(errno));
  return bytes;
}

std::string assets_folder() {
  return environment("MASTWISE_ASSETS").value_or(assets_beside(program_folder()));
}

Result<std::string> data_folder() {
  const fs::path folder = environment("MASTWISE_DATA").value_or(user_data_folder());
  std::error_code trouble;
  fs::create_directories(folder, trouble);
  if (trouble) {
    return Error{.what = "cannot create the data folder: " + trouble.message(),
                 .where = folder.string(),
                 .remedy = "set MASTWISE_DATA to a folder that you may write to"};
  }
  return folder.string();
}

}  // namespace mastwise::platform
