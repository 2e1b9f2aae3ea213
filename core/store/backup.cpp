#include "core/store/backup.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>

namespace mastwise::store {

Result<Done> save_copy(Database& database, const std::string& path) {
  const std::string begun = path + ".new";
  std::remove(begun.c_str());
  auto save = database.prepare("VACUUM INTO ?");
  if (!save) return save.error();
  if (const auto saved = save->bind(std::string_view(begun)).run(); !saved) {
    for (const char* end : {"", "-journal"}) std::remove((begun + end).c_str());
    Error error = saved.error();
    error.where = path;  // not the file that is copied
    return error;
  }
  return rename_file(begun, path);
}

Result<Done> rename_file(const std::string& from, const std::string& to) {
  if (std::rename(from.c_str(), to.c_str()) == 0) return Done{};
  return Error{.what = std::string("cannot write the file: ") + std::strerror(errno),
               .where = to,
               .remedy = "check that you may write to the folder"};
}

}  // namespace mastwise::store
