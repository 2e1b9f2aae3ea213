#include "platform/connection.hpp"

namespace mastwise::platform {

// Mastwise loads nothing itself in a browser.
LineKind line_kind(const std::filesystem::path&) {
  return LineKind::none;
}

}  // namespace mastwise::platform
