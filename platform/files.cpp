#include "platform/files.hpp"

#include "platform/system_paths.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <system_error>

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
  constexpr std::size_t kPiece = std::size_t{1} << 16;
  std::size_t piece =
      ignored || too_large ? kPiece : static_cast<std::size_t>(size) + 1;  // one more shows the end
  while (file && !too_large) {
    const std::size_t have = bytes.size();
    bytes.resize(have + piece);
    file.read(bytes.data() + have, static_cast<std::streamsize>(piece));
    bytes.resize(have + static_cast<std::size_t>(file.gcount()));
    too_large = bytes.size() > kLargestFile;
    piece = kPiece;
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
