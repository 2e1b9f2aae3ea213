#pragma once

#include "core/plan/index_set.hpp"

#include <cstddef>
#include <vector>

namespace mastwise {

// Choices of the fewest sets that together have every element.
struct FewestSets {
  // Each a list of set numbers, ascending; all of the same length. Sets within other sets are in
  // none of them. At most as many as asked for.
  std::vector<std::vector<std::size_t>> choices = {};
  // That fewer do not suffice is proved. Else the search was given up and the one choice is the
  // greedy one.
  bool proved = true;
};

// The search's limits. Covering with stretches of a circle is quick to solve exactly with one
// stretch an element; with several it is set cover in general, so that no bound is known that
// holds for all. See the benchmark for what is met in practice.
struct FewestSetsLimits {
  std::size_t choices = 256;
  std::size_t steps = 100'000;
};

// Elements are numbered from 0 to `elements` - 1, and each is in at least one set; no element, no
// set. An exact search: sets within others and elements that come with others are dropped; then
// for one set, two, ... it tries the sets of the element that has the fewest, cutting off where as
// many elements of which no two share a set remain as sets may still be taken.
FewestSets fewest_sets(std::size_t elements, const std::vector<IndexSet>& sets,
                       FewestSetsLimits limits = {});

}  // namespace mastwise
