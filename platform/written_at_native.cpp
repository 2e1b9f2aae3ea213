#include "platform/written_at.hpp"

#include <system_error>

namespace mastwise::platform {

std::optional<UtcTime> written_at(const std::filesystem::path& path) {
  std::error_code unknown;
  const auto written = std::filesystem::last_write_time(path, unknown);
  if (unknown) return std::nullopt;
  return std::chrono::floor<milliseconds>(std::chrono::file_clock::to_sys(written));
}

}  // namespace mastwise::platform
