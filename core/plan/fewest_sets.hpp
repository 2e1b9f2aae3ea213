#pragma once

#include "core/plan/index_set.hpp"

#include <cstddef>
#include <vector>

namespace mastwise {

// Choices of the fewest sets that together contain every element.
struct FewestSets {
  // Each is a list of set numbers, ascending; all have the same length. Subsets of other sets are
  // in none of them. At most as many as requested.
  std::vector<std::vector<std::size_t>> choices = {};
  // True if no smaller choice exists. False: the search gave up, and the only choice is the greedy
  // one.
  bool proved = true;
};

// The search's limits. Covering with arcs of a circle is quick to solve exactly with one arc per
// element; with several arcs it is set cover in general, without a bound for all inputs. See the
// benchmark for practical inputs.
struct FewestSetsLimits {
  std::size_t choices = 256;
  std::size_t steps = 100'000;
};

// Elements are numbered from 0 to `elements` - 1, and each is in at least one set; zero elements
// need zero sets. An exact search: it drops subsets of other sets and implied elements. Then, for
// one set, two, ... it tries the sets of the element that has the fewest, and cuts off when the
// remaining elements without a common set exceed the remaining sets.
FewestSets fewest_sets(std::size_t elements, const std::vector<IndexSet>& sets,
                       FewestSetsLimits limits = {});

}  // namespace mastwise
