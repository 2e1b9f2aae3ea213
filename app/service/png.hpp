#pragma once

#include "core/result.hpp"

#include <string>
#include <vector>

namespace mastwise::service {

// Writes a picture of red, green and blue bytes, row by row from the top.
Result<Done> write_png(const std::string& path, int width, int height,
                       const std::vector<unsigned char>& pixels);

}  // namespace mastwise::service
