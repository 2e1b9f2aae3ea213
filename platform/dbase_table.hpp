#pragma once

#include "core/text/byte_stream.hpp"

#include <filesystem>
#include <memory>

namespace mastwise::platform {

// Whether it is a dBase table, by its name.
bool is_dbase(const std::filesystem::path& file);

// A dBase table as comma-separated text with a header line, in UTF-8, read by GDAL row by row.
// Texts without a named encoding count as ISO 8859-1. Error if GDAL cannot read the file.
Result<std::unique_ptr<ByteStream>> open_dbase(const std::filesystem::path& file);

}  // namespace mastwise::platform
