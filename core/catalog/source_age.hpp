#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string_view>

namespace mastwise {

// Whether a table is old enough to affect aiming.
enum class SourceFreshness : std::uint8_t {
  fresh,   // under a year
  ageing,  // a year and more: some translators are new, gone, moved or on another channel
  stale,   // three years and more: a whole band may have been replanned since
};

// The age of a table in whole calendar years, and months beyond them.
struct SourceAge {
  int years = 0;
  int months = 0;
  int days = 0;  // in total, for a table younger than a month
  SourceFreshness freshness = SourceFreshness::fresh;
  bool operator==(const SourceAge&) const = default;
};

// The age `today`, by the calendar where the rig is, of a source with that date ("2017-04-13");
// std::nullopt if the date is unknown or in the future (a wrong clock, or a table dated ahead).
// Thresholds: sites and heights stay the same for decades, so a heading stays right, but channels
// do not. After the US auction of 2017 some 1,000 stations changed theirs within 39 months [from
// memory; the reference table's columns PC and Ch show it]. A year is common practice, no source.
std::optional<SourceAge> source_age(std::string_view date, std::chrono::local_days today);

}  // namespace mastwise
