#pragma once

#include "core/text/iso_time.hpp"

#include <string>

namespace mastwise::test {

// "2026-07-02T18:00:00Z", as in the reference tables.
inline UtcTime utc(const std::string& text) {
  return parse_iso_utc(text).value();
}

}  // namespace mastwise::test
