#pragma once

#include "core/time.hpp"

#include <filesystem>
#include <optional>

namespace mastwise::platform {

// When the file was last written; std::nullopt if that cannot be read. One source file for each
// library of C++.
std::optional<UtcTime> written_at(const std::filesystem::path& path);

}  // namespace mastwise::platform
