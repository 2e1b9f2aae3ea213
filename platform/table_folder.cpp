#include "platform/table_folder.hpp"

#include "core/text/words.hpp"
#include "platform/zip_handles.hpp"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <optional>
#include <system_error>

#include <fmt/format.h>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;

constexpr std::uint64_t kLargestUnpacked = std::uint64_t{2} << 30;

Error damaged(const std::string& archive, const std::string& how) {
  return {.what = "cannot unpack the zip archive: " + how,
          .where = archive,
          .remedy = "copy the file again from its source"};
}

struct CloseFile {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

class FileStream : public ByteStream {
 public:
  FileStream(std::ifstream file, std::string path, std::uint64_t size)
      : file_(std::move(file)), path_(std::move(path)), size_(size) {}
  Result<std::size_t> read(std::span<char> into) override {
    file_.read(into.data(), static_cast<std::streamsize>(into.size()));
    if (file_.bad()) return Error{.what = "cannot read the rest of the file", .where = path_};
    return static_cast<std::size_t>(file_.gcount());
  }
  std::uint64_t size() const override { return size_; }

 private:
  std::ifstream file_;
  std::string path_;
  std::uint64_t size_;
};

// The checksum is compared when the end is read.
class ZipStream : public ByteStream {
 public:
  ZipStream(Archive archive, Entry entry, std::string path, std::uint64_t size)
      : archive_(std::move(archive)),
        entry_(std::move(entry)),
        path_(std::move(path)),
        size_(size) {}
  Result<std::size_t> read(std::span<char> into) override {
    const zip_int64_t got = zip_fread(entry_.get(), into.data(), into.size());
    if (got < 0) return damaged(path_, zip_file_strerror(entry_.get()));
    given_ += static_cast<std::uint64_t>(got);
    if (given_ > size_) return damaged(path_, "it is larger than it states");
    if (got == 0 && given_ < size_) return damaged(path_, "it ends too early");
    return static_cast<std::size_t>(got);
  }
  std::uint64_t size() const override { return size_; }

 private:
  Archive archive_;  // outlives its entry
  Entry entry_;
  std::string path_;
  std::uint64_t size_;
  std::uint64_t given_ = 0;
};

std::string last_part(std::string_view name) {
  const auto slash = name.find_last_of("/\\");
  return std::string(slash == std::string_view::npos ? name : name.substr(slash + 1));
}

Result<Archive> open_archive(const fs::path& path) {
  int code = 0;
  Archive archive(zip_open(path.string().c_str(), ZIP_RDONLY, &code));
  if (archive) return archive;
  zip_error_t error;
  zip_error_init_with_code(&error, code);
  const Error told{
      .what = std::string("cannot open the zip archive: ") + zip_error_strerror(&error),
      .where = path.string(),
      .remedy = "copy the file again from its source"};
  zip_error_fini(&error);
  return told;
}

std::vector<std::string> entries_of(zip_t* archive) {
  std::vector<std::string> names;
  for (zip_int64_t i = 0; i < zip_get_num_entries(archive, 0); ++i) {
    const char* name = zip_get_name(archive, static_cast<zip_uint64_t>(i), 0);
    names.push_back(name != nullptr ? last_part(name) : std::string());
  }
  return names;
}

std::string zipped_name(const std::string& name) {
  return fs::path(name).replace_extension(".zip").string();
}

std::optional<zip_uint64_t> place_of(const std::vector<std::string>& names,
                                     const std::string& name) {
  const auto found = std::find_if(names.begin(), names.end(), [&](const std::string& one) {
    return words::same_word(one, name);
  });
  if (found == names.end()) return std::nullopt;
  return static_cast<zip_uint64_t>(found - names.begin());
}

Result<std::unique_ptr<ByteStream>> open_entry(Archive archive, const std::string& path,
                                               zip_uint64_t index, const std::string& name) {
  zip_stat_t status;
  zip_stat_init(&status);
  if (zip_stat_index(archive.get(), index, 0, &status) != 0 ||
      (status.valid & ZIP_STAT_SIZE) == 0) {
    return damaged(path, "the size of " + name + " is unknown");
  }
  if (status.size > kLargestUnpacked) {
    return Error{.what = fmt::format("{} unpacks to {} MB; the most read from an archive is {} MB",
                                     name, status.size >> 20, kLargestUnpacked >> 20),
                 .where = path,
                 .remedy = "if you trust the archive, unpack it and choose its folder"};
  }
  Entry entry(zip_fopen_index(archive.get(), index, 0));
  if (!entry) return damaged(path, zip_strerror(archive.get()));
  return std::unique_ptr<ByteStream>(
      std::make_unique<ZipStream>(std::move(archive), std::move(entry), path, status.size));
}

// The archive within an archive, by way of a temporary file that has no name: nothing is left of it
// however the import ends.
Result<Archive> open_inner(Archive outer, const std::string& path, zip_uint64_t index,
                           const std::string& name) {
  auto packed = open_entry(std::move(outer), path, index, name);
  if (!packed) return packed.error();
  std::unique_ptr<std::FILE, CloseFile> copy(std::tmpfile());
  const Error no_room{.what = "cannot write a temporary file to unpack " + name,
                      .where = path,
                      .remedy = "unpack the archive and choose its folder"};
  if (!copy) return no_room;
  std::vector<char> piece(std::size_t{1} << 18);
  while (true) {
    const auto got = (*packed)->read(piece);
    if (!got) return got.error();
    if (*got == 0) break;
    if (std::fwrite(piece.data(), 1, *got, copy.get()) != *got) return no_room;
  }
  if (std::fflush(copy.get()) != 0) return no_room;
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* const source = zip_source_filep_create(copy.get(), 0, -1, &error);
  if (source == nullptr) {
    zip_error_fini(&error);
    return no_room;
  }
  static_cast<void>(copy.release());  // the source closes it
  Archive inner(zip_open_from_source(source, ZIP_RDONLY, &error));
  if (!inner) zip_source_free(source);
  const std::string why = inner ? std::string() : zip_error_strerror(&error);
  zip_error_fini(&error);
  if (!inner) return damaged(path + ", " + name, why);
  return inner;
}

Error missing(const std::string& path, const std::string& name,
              const std::vector<std::string>& names) {
  return Error{.what = fmt::format("missing file {}", name),
               .where = path,
               .remedy = fmt::format("the files are: {}", fmt::join(names, ", "))};
}

// A table of an archive, or of an archive of the table's name in it.
Result<std::unique_ptr<ByteStream>> open_zipped(const fs::path& path, const std::string& name) {
  auto archive = open_archive(path);
  if (!archive) return archive.error();
  const auto names = entries_of(archive->get());
  if (const auto index = place_of(names, name)) {
    return open_entry(std::move(archive).value(), path.string(), *index, name);
  }
  const auto index = place_of(names, zipped_name(name));
  if (!index) return missing(path.string(), name, names);
  auto inner = open_inner(std::move(archive).value(), path.string(), *index, zipped_name(name));
  if (!inner) return inner.error();
  const auto within = entries_of(inner->get());
  const std::string where = path.string() + ", " + zipped_name(name);
  const auto inner_index = place_of(within, name);
  if (!inner_index) return missing(where, name, within);
  return open_entry(std::move(inner).value(), where, *inner_index, name);
}

}  // namespace

Result<std::unique_ptr<ByteStream>> open_file(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) {
    return Error{.what = std::string("cannot read: ") + std::strerror(errno),
                 .where = path.string()};
  }
  std::error_code unknown;
  const auto size = fs::file_size(path, unknown);
  return std::unique_ptr<ByteStream>(std::make_unique<FileStream>(
      std::move(file), path.string(), unknown ? std::uintmax_t{0} : size));
}

Result<TableFolder> TableFolder::at(const fs::path& path) {
  std::error_code trouble;
  std::vector<std::string> names;
  const bool folder = fs::is_directory(path, trouble);
  if (folder) {
    for (fs::directory_iterator at(path, trouble), end; !trouble && at != end;
         at.increment(trouble)) {
      if (at->is_regular_file(trouble)) names.push_back(at->path().filename().string());
    }
    if (trouble) return Error{.what = trouble.message(), .where = path.string()};
  } else {
    const auto archive = open_archive(path);
    if (!archive) return archive.error();
    names = entries_of(archive->get());
  }
  std::sort(names.begin(), names.end());
  return TableFolder(path, !folder, std::move(names));
}

Result<std::unique_ptr<ByteStream>> TableFolder::open(const std::string& name) {
  if (zipped_) return open_zipped(path_, name);
  const std::string zipped = zipped_name(name);
  for (const std::string& one : names_) {
    if (words::same_word(one, name)) return open_file(path_ / one);
  }
  for (const std::string& one : names_) {
    if (words::same_word(one, zipped)) return open_zipped(path_ / one, name);
  }
  return Error{.what = fmt::format("missing file: neither {} nor {} exists", name, zipped),
               .where = path_.string(),
               .remedy = fmt::format("the files are: {}", fmt::join(names_, ", "))};
}

bool TableFolder::has(const std::string& name) const {
  const std::string zipped = zipped_name(name);
  return std::any_of(names_.begin(), names_.end(), [&](const std::string& one) {
    return words::same_word(one, name) || words::same_word(one, zipped);
  });
}

}  // namespace mastwise::platform
