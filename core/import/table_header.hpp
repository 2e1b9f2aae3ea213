#pragma once

#include "core/result.hpp"
#include "core/text/delimited.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// The columns of a table, found by name, ignoring case and surrounding blanks.
class TableHeader {
 public:
  // Error if the row has a fault or a column appears twice.
  static Result<TableHeader> read(const DelimitedRow& row);

  std::optional<std::size_t> place(std::string_view column) const;
  const std::vector<std::string>& names() const { return names_; }
  // The error for a missing column, which lists the existing ones.
  Error lacks(std::string_view column) const;

 private:
  std::vector<std::string> names_;
  std::map<std::string, std::size_t> places_;
};

// The error for cells that are not text, as of a picture or a spreadsheet's own file.
std::optional<Error> unreadable_text(const std::vector<std::string>& cells);

}  // namespace mastwise
