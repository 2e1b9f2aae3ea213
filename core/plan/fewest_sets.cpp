#include "core/plan/fewest_sets.hpp"

#include <algorithm>

namespace mastwise {
namespace {

class Search {
 public:
  Search(std::size_t elements, const std::vector<IndexSet>& sets, FewestSetsLimits limits)
      : sets_(sets), limits_(limits), needed_(elements) {
    keep_largest_sets();
    list_sets_of(elements);
    keep_leading_elements(elements);
  }

  FewestSets run();

 private:
  void keep_largest_sets();
  void list_sets_of(std::size_t elements);
  void keep_leading_elements(std::size_t elements);
  std::size_t least_needed(IndexSet left) const;
  std::vector<std::size_t> greedy() const;
  void descend(const IndexSet& left, std::size_t more);

  const std::vector<IndexSet>& sets_;
  FewestSetsLimits limits_;
  std::vector<std::size_t> kept_ = {};                  // sets that are not subsets of another
  std::vector<std::vector<std::size_t>> sets_of_ = {};  // by element
  std::vector<IndexSet> met_with_ = {};  // by element: all elements that share a set with it
  std::vector<std::size_t> order_ = {};  // leading elements, those with the fewest sets first
  IndexSet needed_;                      // the same
  std::vector<std::size_t> taken_ = {};
  std::vector<std::vector<std::size_t>> found_ = {};
  std::size_t steps_ = 0;
};

void Search::keep_largest_sets() {
  std::vector<std::size_t> by_size(sets_.size());
  for (std::size_t i = 0; i < by_size.size(); ++i) by_size[i] = i;
  std::stable_sort(by_size.begin(), by_size.end(), [this](std::size_t a, std::size_t b) {
    return sets_[a].count() > sets_[b].count();
  });
  for (const std::size_t set : by_size) {
    const bool within = std::any_of(kept_.begin(), kept_.end(), [&](std::size_t larger) {
      return sets_[set].within(sets_[larger]);
    });
    if (!within) kept_.push_back(set);
  }
}

void Search::list_sets_of(std::size_t elements) {
  for (std::size_t element = 0; element < elements; ++element) {
    IndexSet met(elements);
    std::vector<std::size_t> sets;
    for (const std::size_t set : kept_) {
      if (!sets_[set].has(element)) continue;
      sets.push_back(set);
      met.add_all(sets_[set]);
    }
    std::sort(sets.begin(), sets.end());
    sets_of_.push_back(std::move(sets));
    met_with_.push_back(std::move(met));
  }
}

// An element is implied by another one whose sets are all among its sets.
void Search::keep_leading_elements(std::size_t elements) {
  std::vector<std::size_t> by_sets(elements);
  for (std::size_t i = 0; i < elements; ++i) by_sets[i] = i;
  std::stable_sort(by_sets.begin(), by_sets.end(), [this](std::size_t a, std::size_t b) {
    return sets_of_[a].size() < sets_of_[b].size();
  });
  for (const std::size_t element : by_sets) {
    const auto& sets = sets_of_[element];
    const bool comes_along = std::any_of(order_.begin(), order_.end(), [&](std::size_t leading) {
      const auto& fewer = sets_of_[leading];
      return std::includes(sets.begin(), sets.end(), fewer.begin(), fewer.end());
    });
    if (comes_along) continue;
    order_.push_back(element);
    needed_.add(element);
  }
}

std::size_t Search::least_needed(IndexSet left) const {
  std::size_t least = 0;
  for (const std::size_t element : order_) {
    if (!left.has(element)) continue;
    ++least;
    left.remove_all(met_with_[element]);
  }
  return least;
}

std::vector<std::size_t> Search::greedy() const {
  std::vector<std::size_t> chosen;
  IndexSet left = needed_;
  while (!left.empty()) {
    std::size_t best = kept_.front(), most = 0;
    for (const std::size_t set : kept_) {
      IndexSet after = left;
      after.remove_all(sets_[set]);
      const std::size_t gain = left.count() - after.count();
      if (gain > most) {
        most = gain;
        best = set;
      }
    }
    chosen.push_back(best);
    left.remove_all(sets_[best]);
  }
  std::sort(chosen.begin(), chosen.end());
  return chosen;
}

void Search::descend(const IndexSet& left, std::size_t more) {
  if (left.empty()) {
    std::vector<std::size_t> choice = taken_;
    std::sort(choice.begin(), choice.end());
    if (std::find(found_.begin(), found_.end(), choice) == found_.end()) {
      found_.push_back(std::move(choice));
    }
    return;
  }
  if (++steps_ > limits_.steps || least_needed(left) > more) return;
  const std::size_t element =
      *std::find_if(order_.begin(), order_.end(), [&](std::size_t each) { return left.has(each); });
  for (const std::size_t set : sets_of_[element]) {
    if (found_.size() >= limits_.choices || steps_ > limits_.steps) return;
    IndexSet after = left;
    after.remove_all(sets_[set]);
    taken_.push_back(set);
    descend(after, more - 1);
    taken_.pop_back();
  }
}

FewestSets Search::run() {
  for (std::size_t size = least_needed(needed_); found_.empty(); ++size) {
    descend(needed_, size);
    if (!found_.empty() || steps_ <= limits_.steps) continue;
    const std::vector<std::size_t> choice = greedy();
    return {.choices = {choice}, .proved = choice.size() == size};
  }
  return {.choices = std::move(found_), .proved = true};
}

}  // namespace

FewestSets fewest_sets(std::size_t elements, const std::vector<IndexSet>& sets,
                       FewestSetsLimits limits) {
  if (elements == 0) return {.choices = {{}}};
  return Search(elements, sets, limits).run();
}

}  // namespace mastwise
