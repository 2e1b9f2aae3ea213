#include "app/service/area_work.hpp"

#include <algorithm>
#include <atomic>

namespace mastwise {
namespace {

constexpr std::size_t kSlicesInRound = 48;  // a slice takes a thread some two milliseconds

}  // namespace

bool AreaWork::complete(reception::AreaScan& scan, const std::function<bool(double done)>& go_on) {
  const auto cells = static_cast<double>(scan.grid().size());
  for (double before = 0.0; scan.next_pass(); before = static_cast<double>(scan.covered())) {
    const double in_pass = static_cast<double>(scan.covered()) - before;
    for (std::size_t first = 0; first < scan.slices(); first += kSlicesInRound) {
      const std::size_t end = std::min(first + kSlicesInRound, scan.slices());
      std::atomic<std::size_t> next{first};
      pool_.run([&](std::size_t thread) {
        for (std::size_t slice = next++; slice < end; slice = next++) {
          scan.measure(slice, scratches_[thread]);
        }
      });
      const double part = static_cast<double>(end) / static_cast<double>(scan.slices());
      if (!go_on((before + in_pass * part) / cells)) return false;
    }
  }
  return true;
}

}  // namespace mastwise
