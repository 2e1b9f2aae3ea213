#include "core/landcover/class_table.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <array>

using namespace mastwise;
using landcover::CoverClass;

// Reads the input as a class table, and recognizes rasters by it.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto table = landcover::read_class_table(fuzz::text_of(data, size));
  if (!fuzz::read_or_told(table)) return 0;
  fuzz::require(!table->name.empty() && !table->notice.empty() && !table->rows.empty());
  landcover::RasterTraits all{.file_name = "x"};
  bool free_code = false;
  for (int code = 0; code < 256; ++code) {
    const auto byte = static_cast<std::uint8_t>(code);
    const bool known = table->of(byte) != CoverClass::unknown;
    fuzz::require(known == (table->rows.count(byte) != 0));
    fuzz::require(!known || table->lists(byte));
    free_code |= !known;
    all.codes[static_cast<std::size_t>(code)] = known;
  }
  fuzz::require(free_code);
  const std::array tables{*table};
  const bool enough = table->rows.size() >= 3;
  const bool named = !table->files.empty();
  const auto found = landcover::recognize(tables, all, "");
  fuzz::require(fuzz::read_or_told(found) || !enough);
  fuzz::require(enough || named || !found);
  fuzz::require(static_cast<bool>(landcover::recognize(tables, all, table->name)));
  return 0;
}
