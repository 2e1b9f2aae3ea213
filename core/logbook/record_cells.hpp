#pragma once

#include "core/logbook/record.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

// A record as a row of texts, the same in the store and in a table for people: what is unknown is
// empty, numbers are the shortest that give the same number back.
namespace mastwise::record_cells {

template <class Record>
struct Field {
  std::string_view name;  // with its unit
  std::string (*get)(const Record&);
  bool (*set)(Record&, std::string_view);  // false when the text is no such thing
};

// The fields of a record, those that name it first.
template <class Record>
std::span<const Field<Record>> fields();
template <>
std::span<const Field<StopRecord>> fields();
template <>
std::span<const Field<OutcomeRecord>> fields();
template <>
std::span<const Field<SweepRecord>> fields();

// How many fields name a record.
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

// The record of as many cells as it has fields. Fails with the field that cannot be read, or as
// fault() does.
template <class Record>
Result<Record> read(std::span<const std::string> cells) {
  Record record = blank(static_cast<const Record*>(nullptr));
  const auto all = fields<Record>();
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (all[i].set(record, cells[i])) continue;
    return Error{.what = "\"" + cells[i] + "\" is no " + std::string(all[i].name)};
  }
  if (const auto wrong = fault(record)) return *wrong;
  return record;
}

// Of two writings of one record, does this one hold? The later does; should two tablets have
// written in the same millisecond, both logbooks still agree on one of them.
template <class Record>
bool holds_over(const Record& one, const Record& other) {
  const auto order = [](const Mark& mark) {
    return std::tie(mark.changed, mark.tablet, mark.deleted);
  };
  if (order(one.mark) != order(other.mark)) return order(one.mark) > order(other.mark);
  return cells(one) > cells(other);
}

}  // namespace mastwise::record_cells
