#include "app/service/pool.hpp"

#include <numeric>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise {

TEST_CASE("a pool runs each job once on every thread before it returns") {
  for (const unsigned threads : {1u, 2u, 5u}) {
    Pool pool(threads);
    REQUIRE(pool.threads() == threads);
    std::vector<int> runs(threads, 0);
    for (int round = 1; round <= 300; ++round) {
      // Written without a lock: each thread has its own place, and the caller reads after all.
      pool.run([&](std::size_t thread) { ++runs[thread]; });
      REQUIRE(std::accumulate(runs.begin(), runs.end(), 0) == round * static_cast<int>(threads));
    }
    CHECK(runs == std::vector<int>(threads, 300));
  }
}

}  // namespace mastwise
