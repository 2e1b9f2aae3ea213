#include "core/import/program_table.hpp"
#include "tests/fuzz/fuzz.hpp"

using namespace mastwise;

// Any bytes as a table of programs, and below its right header: all rows are counted, every program
// has a station and says something, and programs merged twice are as after the first time.
namespace {

void check(std::string_view text) {
  const auto table = read_program_csv(text, {"fuzz", ""});
  if (!fuzz::read_or_told(table)) return;
  fuzz::require(table->programs.size() + table->rejected.size() + table->rows_without_program ==
                table->rows_read);
  for (const RejectedRow& row : table->rejected) {
    fuzz::require(row.line >= 2 && row.line <= text.size() + 1 && !row.reason.empty());
  }
  std::vector<Program> added;
  for (const StationProgram& read : table->programs) {
    fuzz::require(!read.call_sign.empty() || !read.facility_id.empty());
    const Program& program = read.program;
    fuzz::require(
        !(program.virtual_channel.empty() && program.name.empty() && program.network.empty()));
    if (read.rf_channel)
      fuzz::require(parse_rf_channel(to_text(*read.rf_channel)).value() == *read.rf_channel);
    added.push_back(read.program);
  }
  const auto once = merged_programs({}, added);
  fuzz::require(once.size() <= added.size() && merged_programs(once, added) == once);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  check(text);
  check("call_sign,facility_id,rf_channel,virtual_channel,name,network,language\n" +
        std::string(text));
  return 0;
}
