#pragma once

#include "core/logbook/record.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

// A record as a row of texts, the same in the store and in an exported table: unknown values are
// empty, and numbers have the fewest digits that read back the same.
namespace mastwise::record_cells {

template <class Record>
struct Field {
  std::string_view name;  // with its unit
  std::string (*get)(const Record&);
  bool (*set)(Record&, std::string_view);  // false if the text cannot be read
};

// The fields of a record, those of its name first.
template <class Record>
std::span<const Field<Record>> fields();
template <>
std::span<const Field<StopRecord>> fields();
template <>
std::span<const Field<OutcomeRecord>> fields();
template <>
std::span<const Field<SweepRecord>> fields();

// The number of fields in the name of a record.
template <class Record>
constexpr std::size_t kKeyFields = 1;
template <>
inline constexpr std::size_t kKeyFields<OutcomeRecord> = 3;

template <class Record>
std::vector<std::string> cells(const Record& record) {
  std::vector<std::string> result;
  for (const auto& field : fields<Record>()) result.push_back(field.get(record));
  return result;
}

inline StopRecord blank(const StopRecord*) {
  return {.position = *Position::at_deg(0.0, 0.0)};
}
template <class Record>
Record blank(const Record*) {
  return {};
}

// The record of as many cells as it has fields. Fails with the field that cannot be read, or like
// fault().
template <class Record>
Result<Record> read(std::span<const std::string> cells) {
  Record record = blank(static_cast<const Record*>(nullptr));
  const auto all = fields<Record>();
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (all[i].set(record, cells[i])) continue;
    return Error{.what = "\"" + cells[i] + "\" is not a valid " + std::string(all[i].name)};
  }
  if (const auto wrong = fault(record)) return *wrong;
  return record;
}

// Whether this version of a record wins over another. The later one does; at the same millisecond
// both tablets still agree on one of them: the longer one, so that a table's rounded figures never
// replace those they were rounded from.
template <class Record>
bool holds_over(const Record& one, const Record& other) {
  const auto order = [](const Mark& mark) {
    return std::tie(mark.changed, mark.tablet, mark.deleted);
  };
  if (order(one.mark) != order(other.mark)) return order(one.mark) > order(other.mark);
  const auto these = cells(one), those = cells(other);
  const auto length = [](const std::vector<std::string>& texts) {
    std::size_t sum = 0;
    for (const std::string& text : texts) sum += text.size();
    return sum;
  };
  if (length(these) != length(those)) return length(these) > length(those);
  return these > those;
}

}  // namespace mastwise::record_cells
