#pragma once

#include "core/time.hpp"

#include <cstdint>
#include <optional>
#include <string_view>

namespace mastwise {

// Whether a table's age matters to who aims by it.
enum class SourceFreshness : std::uint8_t {
  fresh,   // under a year
  ageing,  // a year and more: here and there a translator is new, gone, moved or on another channel
  stale,   // three years and more: a whole band may have been replanned since
};

// How old a table is, in whole calendar years, and months beyond them.
struct SourceAge {
  int years = 0;
  int months = 0;
  int days = 0;  // in all, for the age of a table younger than a month
  SourceFreshness freshness = SourceFreshness::fresh;
  bool operator==(const SourceAge&) const = default;
};

// The age of a source of that date ("2017-04-13") at `now`; nothing where the date is unknown or
// later than now (a clock that is wrong, or a table dated ahead). Thresholds: sites and heights
// hold for decades, so that a heading stays right, but channels do not: after the US auction of
// 2017 some 1,000 stations changed theirs within 39 months [from memory; the reference table's
// columns PC and Ch show it]. A year is common practice, no source.
std::optional<SourceAge> source_age(std::string_view date, UtcTime now);

}  // namespace mastwise
