#include "app/service/png.hpp"

#include <stb/stb_image_write.h>

namespace mastwise::service {

Result<Done> write_png(const std::string& path, int width, int height,
                       const std::vector<unsigned char>& pixels) {
  if (stbi_write_png(path.c_str(), width, height, 3, pixels.data(), width * 3) == 0) {
    return Error{.what = "cannot write the picture",
                 .where = path,
                 .remedy = "choose a file in a writable folder"};
  }
  return Done{};
}

}  // namespace mastwise::service
