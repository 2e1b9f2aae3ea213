#include "platform/written_at.hpp"

#include <system_error>

namespace mastwise::platform {

// The library of C++ has no conversion yet; its clock of files is the system's (file_clock of
// libc++).
std::optional<UtcTime> written_at(const std::filesystem::path& path) {
  std::error_code unknown;
  const auto written = std::filesystem::last_write_time(path, unknown);
  if (unknown) return std::nullopt;
  return std::chrono::floor<milliseconds>(std::chrono::sys_time<std::chrono::seconds>(
      std::chrono::duration_cast<std::chrono::seconds>(written.time_since_epoch())));
}

}  // namespace mastwise::platform
