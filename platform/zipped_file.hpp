#pragma once

#include "core/result.hpp"

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <string_view>
#include <vector>

namespace mastwise::platform {

// Unpacks into memory the one entry of a zip archive whose name `wanted` accepts (called without
// the path within the archive). Errors: not an archive, no such entry or more than one, an entry
// whose unpacked size `size_is_right` refuses (nothing is unpacked then), damaged or encrypted
// data. The checksum of the entry is verified.
Result<std::vector<std::byte>> unpack_one(const std::filesystem::path& archive,
                                          const std::function<bool(std::string_view)>& wanted,
                                          const std::function<bool(std::uintmax_t)>& size_is_right);

}  // namespace mastwise::platform
