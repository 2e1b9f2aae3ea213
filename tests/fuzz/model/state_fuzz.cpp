#include "tests/fuzz/model/world.hpp"

using namespace mastwise;

// Any bytes as the working state that a restart reads: what is unreadable is named, and the rest is
// kept and comes back the same.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Model model = fuzz::new_model();
  const auto restored = restore(model, std::string(fuzz::text_of(data, size)), fuzz::world());
  static_cast<void>(fuzz::read_or_told(restored));
  derive_all(model, fuzz::world());
  fuzz::check(model);
  return 0;
}
