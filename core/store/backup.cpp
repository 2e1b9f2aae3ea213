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
  if (const auto saved = save->bind(std::string_view(begun)).run(); !saved) return saved;
  std::remove(path.c_str());
  if (std::rename(begun.c_str(), path.c_str()) == 0) return Done{};
  return Error{.what = std::string("cannot keep the backup: ") + std::strerror(errno),
               .where = path,
               .remedy = "check that you may write to the folder"};
}

}  // namespace mastwise::store
