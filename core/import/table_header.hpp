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

// The columns of a table, found by name without notice of case and of blanks around.
class TableHeader {
 public:
  // An error when the row has a fault or a column is there twice.
  static Result<TableHeader> read(const DelimitedRow& row);

  std::optional<std::size_t> place(std::string_view column) const;
  const std::vector<std::string>& names() const { return names_; }
  // That a column is not there, with those that are.
  Error lacks(std::string_view column) const;

 private:
  std::vector<std::string> names_;
  std::map<std::string, std::size_t> places_;
};

// Why a text is none of the encodings that tables are read in: UTF-16 or binary.
std::optional<Error> unreadable_text(std::string_view text);

}  // namespace mastwise
