#include "core/pack/manifest.hpp"
#include "tests/fuzz/fuzz.hpp"

using namespace mastwise;

// Any bytes as a pack's manifest: a part's name stays in its folder, and what was read, written and
// read again is equal.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto manifest = pack::read_manifest(fuzz::text_of(data, size));
  if (!fuzz::read_or_told(manifest)) return 0;
  for (const pack::Part& part : manifest->parts) {
    fuzz::require(part.file.find("..") == std::string::npos && part.file.front() != '/');
    fuzz::require(part.sha256.size() == 64);
  }
  fuzz::require(manifest->area.south_deg <= manifest->area.north_deg);
  const auto again = pack::read_manifest(pack::write_manifest(*manifest));
  fuzz::require(again && *again == *manifest);
  return 0;
}
