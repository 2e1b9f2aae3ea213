#include "platform/mapped_file.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>
#include <system_error>

namespace mastwise::platform {

// A browser maps no files: the bytes are read as a whole.
struct MappedFile::Guard {
  std::unique_ptr<std::byte[]> bytes;
};

Result<MappedFile> MappedFile::open(const std::filesystem::path& path, Lost) {
  const auto failed = [&](const std::string& why) {
    return Error{.what = "cannot read: " + why, .where = path.string()};
  };
  std::error_code trouble;
  const auto size = static_cast<std::size_t>(std::filesystem::file_size(path, trouble));
  if (trouble) return failed(trouble.message());
  if (size == 0) return MappedFile(nullptr, 0, nullptr);
  // In one call: each makes a thread wait for the page.
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "rb"),
                                                             std::fclose);
  // make_unique would first write zeros, which takes a browser longer than reading.
  auto guard = std::make_unique<Guard>(Guard{std::unique_ptr<std::byte[]>(new std::byte[size])});
  if (!file || std::fread(guard->bytes.get(), 1, size, file.get()) != size) {
    return failed(std::strerror(errno));
  }
  const std::byte* const start = guard->bytes.get();
  return MappedFile(start, size, guard.release());
}

MappedFile::~MappedFile() {
  delete guard_;
}

bool MappedFile::lost_bytes() const {
  return false;
}

bool MappedFile::cut(std::size_t) const {
  return false;
}

void MappedFile::forget() const {}

}  // namespace mastwise::platform
