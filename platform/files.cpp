#include "platform/files.hpp"

#include "platform/system_paths.hpp"

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <system_error>

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
  std::ostringstream bytes;
  bytes << file.rdbuf();
  if (file.bad()) return failed("cannot read", path, std::strerror(errno));
  return bytes.str();
}

std::string assets_folder() {
  if (const char* folder = std::getenv("MASTWISE_ASSETS")) return folder;
  return (fs::path(program_folder()) / "assets").string();
}

Result<std::string> data_folder() {
  const char* given = std::getenv("MASTWISE_DATA");
  const fs::path folder = given != nullptr ? fs::path(given) : fs::path(user_data_folder());
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
