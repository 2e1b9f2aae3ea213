#include "platform/download.hpp"

namespace mastwise::platform {

Result<Download> download(const DownloadWish& wish, const DownloadWatch&) {
  return Error{.what = "Mastwise downloads nothing in a browser",
               .where = wish.address,
               .remedy = "get the file in another tab, and import it here"};
}

}  // namespace mastwise::platform
