#include "core/import/table_header.hpp"

#include "core/text/words.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace mastwise {

Result<TableHeader> TableHeader::read(const DelimitedRow& row) {
  if (!row.fault.empty()) return Error{.what = row.fault, .where = "the header line"};
  TableHeader header;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    const std::string name(words::trimmed(row.cells[i]));
    header.names_.push_back(name);
    if (!name.empty() && !header.places_.emplace(words::upper(name), i).second) {
      return Error{.what = fmt::format("the column \"{}\" appears twice", name),
                   .where = "the header line",
                   .remedy = "give each column a different name"};
    }
  }
  return header;
}

std::optional<std::size_t> TableHeader::place(std::string_view column) const {
  const auto found = places_.find(words::upper(words::trimmed(column)));
  if (found == places_.end()) return std::nullopt;
  return found->second;
}

Error TableHeader::lacks(std::string_view column) const {
  return Error{.what = fmt::format("missing column \"{}\"", column),
               .where = "the header line",
               .remedy = fmt::format("the columns are: {}", fmt::join(names_, ", "))};
}

std::optional<Error> unreadable_text(const std::vector<std::string>& cells) {
  const auto binary = [](const std::string& cell) { return cell.find('\0') != std::string::npos; };
  if (std::none_of(cells.begin(), cells.end(), binary)) return std::nullopt;
  return Error{.what = "this is not a text table", .remedy = "save the table as CSV in UTF-8"};
}

}  // namespace mastwise
