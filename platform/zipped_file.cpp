#include "platform/zipped_file.hpp"

#include "platform/zip_handles.hpp"

#include <optional>
#include <string>

#include <fmt/format.h>

namespace mastwise::platform {
namespace {

Error damaged(const std::filesystem::path& archive, const std::string& how) {
  return {.what = "cannot unpack the zip archive: " + how,
          .where = archive.string(),
          .remedy = "copy the file again from its source"};
}

std::string_view name_without_folders(std::string_view name) {
  const auto slash = name.find_last_of("/\\");
  return slash == std::string_view::npos ? name : name.substr(slash + 1);
}

Result<zip_stat_t> find_one(const std::filesystem::path& path, zip_t* archive,
                            const std::function<bool(std::string_view)>& wanted) {
  std::optional<zip_stat_t> found;
  for (zip_int64_t i = 0; i < zip_get_num_entries(archive, 0); ++i) {
    zip_stat_t status;
    zip_stat_init(&status);
    constexpr zip_uint64_t kNeeded = ZIP_STAT_NAME | ZIP_STAT_INDEX | ZIP_STAT_SIZE;
    const bool known = zip_stat_index(archive, static_cast<zip_uint64_t>(i), 0, &status) == 0 &&
                       (status.valid & kNeeded) == kNeeded;
    if (!known || !wanted(name_without_folders(status.name))) continue;
    if (found) return damaged(path, "it contains more than one matching file");
    found = status;
  }
  if (!found) return damaged(path, "it contains no matching file");
  return *found;
}

}  // namespace

Result<std::vector<std::byte>> unpack_one(
    const std::filesystem::path& path, const std::function<bool(std::string_view)>& wanted,
    const std::function<bool(std::uintmax_t)>& size_is_right) {
  int code = 0;
  const Archive archive(zip_open(path.string().c_str(), ZIP_RDONLY, &code));
  if (!archive) {
    zip_error_t error;
    zip_error_init_with_code(&error, code);
    const Error told = damaged(path, zip_error_strerror(&error));
    zip_error_fini(&error);
    return told;
  }
  const auto status = find_one(path, archive.get(), wanted);
  if (!status) return status.error();
  if (!size_is_right(status->size)) {
    return damaged(path,
                   fmt::format("{} has the wrong size, {} bytes", status->name, status->size));
  }
  const Entry entry(zip_fopen_index(archive.get(), status->index, 0));
  if (!entry) return damaged(path, zip_strerror(archive.get()));
  std::vector<std::byte> bytes(status->size);
  const zip_int64_t got = zip_fread(entry.get(), bytes.data(), bytes.size());
  // The checksum is compared when the end is read.
  std::byte behind{};
  if (got < 0 || zip_fread(entry.get(), &behind, 1) != 0) {
    return damaged(path, zip_file_strerror(entry.get()));
  }
  if (static_cast<zip_uint64_t>(got) != status->size) return damaged(path, "it ends too early");
  return bytes;
}

}  // namespace mastwise::platform
