#include "platform/pack_file.hpp"

#include "platform/sha256.hpp"
#include "platform/zip_handles.hpp"

#include <array>
#include <chrono>
#include <fstream>
#include <span>

#include <fmt/format.h>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;

constexpr const char* kManifestName = "manifest.json";
constexpr std::uint64_t kLargestManifest = std::uint64_t{32} << 20;
// Of all entries: archives of equal parts are equal. The first day that zip can tell.
constexpr std::time_t kEntryTime = 315'532'800;

Error bad_pack(const fs::path& path, std::string how) {
  return {.what = "this pack cannot be read: " + std::move(how),
          .where = path.string(),
          .remedy = "copy or make it again",
          .damaged = true};
}

Error unwritable(const fs::path& path, std::string how) {
  return {.what = "the pack cannot be written: " + std::move(how),
          .where = path.string(),
          .remedy = "check that the folder may be written to and has free space"};
}

struct Sum {
  std::uint64_t bytes = 0;
  std::string sha256 = {};
};

Result<Sum> sum_of_file(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  Sha256 sum;
  Sum found;
  std::vector<char> piece(std::size_t{1} << 20);
  while (in.read(piece.data(), static_cast<std::streamsize>(piece.size())) || in.gcount() > 0) {
    const auto got = static_cast<std::size_t>(in.gcount());
    sum.add(std::as_bytes(std::span(piece.data(), got)));
    found.bytes += got;
  }
  if (!in.eof()) {
    return Error{.what = "the file cannot be read",
                 .where = file.string(),
                 .remedy = "check that it is there and that you may read it"};
  }
  found.sha256 = sum.take_hex();
  return found;
}

Result<pack::Part> part_of(const PackInput& input) {
  pack::Part part{.kind = input.kind, .file = input.name, .origin = input.origin};
  if (input.file.empty()) {
    Sha256 sum;
    sum.add(std::as_bytes(std::span(input.text)));
    part.bytes = input.text.size();
    part.sha256 = sum.take_hex();
    return part;
  }
  const auto sum = sum_of_file(input.file);
  if (!sum) return sum.error();
  part.bytes = sum->bytes;
  part.sha256 = sum->sha256;
  return part;
}

// The archive owns a source once its entry is added.
bool add_entry(zip_t* archive, const std::string& name, zip_source_t* source) {
  if (source == nullptr) return false;
  const zip_int64_t index = zip_file_add(archive, name.c_str(), source, ZIP_FL_ENC_UTF_8);
  if (index < 0) {
    zip_source_free(source);
    return false;
  }
  return zip_file_set_mtime(archive, static_cast<zip_uint64_t>(index), kEntryTime, 0) == 0;
}

struct PackWatch {
  const PackProgress& progress;
  std::uint64_t all = 0;
  bool stopped = false;
};

}  // namespace

Result<std::string> sha256_of(const fs::path& file) {
  const auto sum = sum_of_file(file);
  if (!sum) return sum.error();
  return sum->sha256;
}

Result<pack::Manifest> write_pack(const fs::path& to, pack::Manifest head,
                                  const std::vector<PackInput>& inputs,
                                  const PackProgress& progress) {
  for (const PackInput& input : inputs) {
    auto part = part_of(input);
    if (!part) return part.error();
    head.parts.push_back(std::move(part).value());
  }
  const std::string manifest = pack::write_manifest(head);
  // What was written is read back as strictly as any other.
  if (const auto same = pack::read_manifest(manifest); !same) return same.error();

  int code = 0;
  Archive archive(zip_open(to.string().c_str(), ZIP_CREATE | ZIP_TRUNCATE, &code));
  if (!archive) return unwritable(to, "the archive cannot be opened");
  bool added = add_entry(archive.get(), kManifestName,
                         zip_source_buffer(archive.get(), manifest.data(), manifest.size(), 0));
  for (const PackInput& input : inputs) {
    zip_source_t* source =
        input.file.empty()
            ? zip_source_buffer(archive.get(), input.text.data(), input.text.size(), 0)
            : zip_source_file(archive.get(), input.file.string().c_str(), 0, -1);
    added = added && add_entry(archive.get(), input.name, source);
  }
  if (!added) return unwritable(to, zip_strerror(archive.get()));

  PackWatch watch{progress, pack::total_bytes(head)};
  if (progress) {
    zip_register_progress_callback_with_state(
        archive.get(), 0.002,
        [](zip_t*, double done, void* state) {
          auto& here = *static_cast<PackWatch*>(state);
          const auto bytes = static_cast<std::uint64_t>(done * static_cast<double>(here.all));
          here.stopped = here.stopped || !here.progress(bytes, here.all);
        },
        nullptr, &watch);
    zip_register_cancel_callback_with_state(
        archive.get(),
        [](zip_t*, void* state) { return static_cast<PackWatch*>(state)->stopped ? 1 : 0; },
        nullptr, &watch);
  }
  if (zip_close(archive.get()) != 0) {
    if (watch.stopped) return Error{.what = "stopped: no pack was written", .where = to.string()};
    return unwritable(to, zip_strerror(archive.get()));
  }
  (void)archive.release();  // closing has freed it
  return head;
}

struct PackFile::Open {
  Archive archive;

  Result<std::vector<std::byte>> entry(const fs::path& path, const std::string& name,
                                       std::uint64_t most) const;
};

Result<std::vector<std::byte>> PackFile::Open::entry(const fs::path& path, const std::string& name,
                                                     std::uint64_t most) const {
  zip_stat_t status;
  zip_stat_init(&status);
  if (zip_stat(archive.get(), name.c_str(), 0, &status) != 0 ||
      (status.valid & ZIP_STAT_SIZE) == 0) {
    return bad_pack(path, fmt::format("{} is missing", name));
  }
  if (status.size > most) return bad_pack(path, fmt::format("{} is too large", name));
  const Entry entry(zip_fopen(archive.get(), name.c_str(), 0));
  if (!entry) return bad_pack(path, zip_strerror(archive.get()));
  std::vector<std::byte> bytes(status.size);
  const zip_int64_t got = zip_fread(entry.get(), bytes.data(), bytes.size());
  if (got < 0 || static_cast<zip_uint64_t>(got) != status.size) {
    return bad_pack(path, fmt::format("{} is damaged", name));
  }
  return bytes;
}

PackFile::PackFile(fs::path path, std::unique_ptr<Open> open, pack::Manifest manifest)
    : path_(std::move(path)), open_(std::move(open)), manifest_(std::move(manifest)) {}
PackFile::PackFile(PackFile&&) noexcept = default;
PackFile& PackFile::operator=(PackFile&&) noexcept = default;
PackFile::~PackFile() = default;

Result<PackFile> PackFile::open(const fs::path& path) {
  int code = 0;
  auto open =
      std::make_unique<Open>(Open{Archive(zip_open(path.string().c_str(), ZIP_RDONLY, &code))});
  if (!open->archive) {
    zip_error_t error;
    zip_error_init_with_code(&error, code);
    const std::string how = zip_error_strerror(&error);
    zip_error_fini(&error);
    return bad_pack(path, how);
  }
  const auto bytes = open->entry(path, kManifestName, kLargestManifest);
  if (!bytes) return bytes.error();
  auto manifest =
      pack::read_manifest({reinterpret_cast<const char*>(bytes->data()), bytes->size()});
  if (!manifest) return bad_pack(path, manifest.error().message());
  for (const pack::Part& part : manifest->parts) {
    zip_stat_t status;
    zip_stat_init(&status);
    const bool there = zip_stat(open->archive.get(), part.file.c_str(), 0, &status) == 0;
    if (!there || status.size != part.bytes) {
      return bad_pack(path, fmt::format("{} is missing or has another size", part.file));
    }
  }
  return PackFile(path, std::move(open), std::move(manifest).value());
}

Result<std::vector<std::byte>> PackFile::bytes(const pack::Part& part) {
  auto bytes = open_->entry(path_, part.file, part.bytes);
  if (!bytes) return bytes.error();
  Sha256 sum;
  sum.add(*bytes);
  if (sum.take_hex() != part.sha256) {
    return bad_pack(path_, fmt::format("{} has another SHA-256 than it should", part.file));
  }
  return bytes;
}

}  // namespace mastwise::platform
