#pragma once

#include "core/pack/manifest.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace mastwise::platform {

// Called with the bytes done and all of them; returns false to stop.
using PackProgress = std::function<bool(std::uint64_t done, std::uint64_t all)>;

// A part to be packed, from a file or, if that is empty, from memory. Size and sum are found.
struct PackInput {
  pack::PartKind kind = pack::PartKind::terrain;
  std::string name = {};  // its entry
  pack::Origin origin = {};
  std::filesystem::path file = {};
  std::string text = {};
};

// Writes a pack (see core/pack/manifest.hpp); `head` gives all but the parts. The same parts give
// the same bytes. A file of that name is replaced once the pack is whole, and stays if writing
// fails or is stopped. Returns the manifest. Errors: an input that cannot be read, a full disk.
Result<pack::Manifest> write_pack(const std::filesystem::path& to, pack::Manifest head,
                                  const std::vector<PackInput>& inputs,
                                  const PackProgress& progress = {});

// An existing pack. One thread at a time.
class PackFile {
 public:
  // Reads the manifest. Errors: no zip archive, no manifest or a faulty one, a part without an
  // entry of its size.
  static Result<PackFile> open(const std::filesystem::path& path);
  PackFile(PackFile&&) noexcept;
  PackFile& operator=(PackFile&&) noexcept;
  ~PackFile();

  const pack::Manifest& manifest() const { return manifest_; }
  const std::filesystem::path& path() const { return path_; }

  // Unpacks a part into memory. Errors: damaged, or another sum than in the manifest.
  Result<std::vector<std::byte>> bytes(const pack::Part& part);

 private:
  struct Open;
  PackFile(std::filesystem::path path, std::unique_ptr<Open> open, pack::Manifest manifest);

  std::filesystem::path path_;
  std::unique_ptr<Open> open_;
  pack::Manifest manifest_;
};

// The sum of a file's bytes; an error if it cannot be read.
Result<std::string> sha256_of(const std::filesystem::path& file);

}  // namespace mastwise::platform
