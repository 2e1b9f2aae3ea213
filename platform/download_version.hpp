#pragma once

#include "core/result.hpp"

#include <cstdint>
#include <filesystem>
#include <string>

namespace mastwise::platform {

// Which version of a remote file the beginning on the disk is of.
struct FileVersion {
  std::string address = {};
  std::uint64_t bytes = 0;    // of the whole file; 0: not known
  std::string tag = {};       // the server's ETag
  std::string modified = {};  // the server's Last-Modified
};

// What to send as If-Range: a strong tag, else the date; empty if there is neither.
std::string validator(const FileVersion& version);

// Keeps the version beside a part, as "<part>.of", and reads it again: empty if there is none, it
// is damaged or of another address.
Result<Done> note_version(const std::filesystem::path& part, const FileVersion& version);
FileVersion noted_version(const std::filesystem::path& part, const std::string& address);

// Deletes the note, and the part with it.
void forget_version(const std::filesystem::path& part);
void forget_part(const std::filesystem::path& part);

}  // namespace mastwise::platform
