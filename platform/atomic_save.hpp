#pragma once

#include "core/result.hpp"

#include <cstddef>
#include <filesystem>
#include <span>

namespace mastwise::platform {

// Writes a file and returns once its bytes are on the disk. A file of that name is overwritten; use
// this for names that nobody reads yet. After an error the file is gone.
Result<Done> write_durably(const std::filesystem::path& path, std::span<const std::byte> bytes);

// Renames a written file to its final name and replaces any file that has it: whoever opens `to`
// sees the old file or the new one, never a mixture, also after a power loss. Both names must be on
// one file system.
Result<Done> put_in_place(const std::filesystem::path& from, const std::filesystem::path& to);

// Both, through "<path>.part".
Result<Done> save_atomically(const std::filesystem::path& path, std::span<const std::byte> bytes);

}  // namespace mastwise::platform
