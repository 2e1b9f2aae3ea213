#include "core/publishers/publishers.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <array>

using namespace mastwise;

// Reads the input as a table of publishers, and names the files of some squares: each is asked of
// an https server without a pattern left over, and its name is no path.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto sets = publishers::read_publishers(fuzz::text_of(data, size));
  if (!fuzz::read_or_told(sets)) return 0;
  const std::array<terrain::TileCell, 4> cells{{{-90, -180}, {-1, -1}, {44, -72}, {89, 179}}};
  for (const auto& set : *sets) {
    fuzz::require(static_cast<bool>(publishers::choose_set(*sets, set.kind, set.id)));
    std::size_t covered = 0;
    for (const auto& file : publishers::files_for(set, cells)) {
      covered += file.cells.size();
      fuzz::require(file.address.starts_with("https://"));
      fuzz::require(file.address.find("{lat}") == std::string::npos);
      fuzz::require(!file.name.empty() && file.name[0] != '.' &&
                    file.name.find('/') == std::string::npos);
      fuzz::require(publishers::at_base(file.address, "http://127.0.0.1:1")
                        .starts_with("http://127.0.0.1:1/"));
    }
    fuzz::require(covered == (set.square_deg > 0 ? cells.size() : 0));
  }
  return 0;
}
