#include "app/service/intake_look.hpp"
#include "core/import/program_table.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <algorithm>

using namespace mastwise;

namespace {

void check(const std::string& path, const sources::MappingMemory& memory) {
  const TableLook look = look_into(path, std::nullopt, memory, {});
  fuzz::require(look.sample.size() <= 10 && look.rejected <= look.rows);
  fuzz::require(!look.sample.empty() || !look.programs.empty() || !look.trouble.empty() ||
                look.reading.kind == TableReading::Kind::Joined);
  if (look.reading.kind == TableReading::Kind::Programs) {
    const auto text = sources::read_whole(path);
    if (fuzz::read_or_told(text)) {
      static_cast<void>(fuzz::read_or_told(read_program_csv(*text, look.reading.source)));
    }
    return;
  }
  const auto way = way_of(look.reading);
  if (!fuzz::read_or_told(way)) return;
  auto catalog = Catalog::open(":memory:");
  fuzz::require(static_cast<bool>(catalog));
  const auto report = sources::import_stations(path, *way, *catalog);
  if (!fuzz::read_or_told(report)) return;
  fuzz::require(report->stations_added + report->rows_rejected == report->rows_read);
  // What the sample showed is what the import brings.
  for (const CheckedStation& shown : look.sample) {
    const auto found = catalog->with_call_sign(shown.call_sign);
    fuzz::require(found && std::any_of(found->begin(), found->end(), [&](const Station& station) {
                    return station.position == shown.position;
                  }));
  }
  if (look.reading.kind != TableReading::Kind::Mapped) return;
  const auto head = sources::head_of(path);
  fuzz::require(head && memory.remember(*head, look.reading.mapping));
  TableMapping remembered = look.reading.mapping;
  remembered.optional_columns = false;  // never written
  if (const auto recalled = memory.recall(*head)) fuzz::require(*recalled == remembered);
}

}  // namespace

// Any bytes as a file that a person chooses to import: as a table, and as a zip archive.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const fuzz::Scratch scratch;
  const sources::MappingMemory memory(scratch.file("mappings"));
  const std::string_view text = fuzz::text_of(data, size);
  check(scratch.write(text.starts_with("PK") ? "table.zip" : "table.csv", text), memory);
  std::error_code ignored;
  std::filesystem::remove_all(scratch.file("mappings"), ignored);
  return 0;
}
