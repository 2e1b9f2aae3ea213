#pragma once

#include "core/text/iso_time.hpp"

#include <string>

namespace mastwise::test {

// "2026-07-02T18:00:00Z", as the reference tables write it.
inline UtcTime utc(const std::string& text) {
  return parse_iso_utc(text).value();
}

}  // namespace mastwise::test
