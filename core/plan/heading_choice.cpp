#include "core/plan/heading_choice.hpp"

#include <algorithm>
#include <numeric>

namespace mastwise {
namespace {

using reception::ChanceCurve;

// This many of the smallest choices, best first, are improved.
constexpr std::size_t kMostImproved = 16;
constexpr double kGain_percent = 1e-9;

// Indexes of candidate headings.
using Choice = std::vector<std::size_t>;

class Chooser {
 public:
  Chooser(const std::vector<WishCurves>& wishes, double floor_percent);
  HeadingChoice choose(FewestSetsLimits limits);

 private:
  void add_candidate(Bearing<True> heading);
  double value(std::size_t candidate, std::size_t wish) const {
    return values_[candidate * wishes_.size() + wish];
  }
  const ChanceCurve& best_curve(std::size_t wish, Bearing<True> heading) const;
  std::optional<Slack> wish_slack(std::size_t wish, Bearing<True> heading) const;
  double sum(const Choice& choice) const;

  // The result of a choice without some of its headings.
  struct Rest {
    std::vector<double> best;  // by wish
    IndexSet needed;           // wishes that it does not fulfill
  };
  Rest rest(const Choice& choice, std::size_t first, std::size_t second) const;
  void take(Rest& rest, std::size_t candidate) const;
  double sum_with(const Rest& rest, std::size_t candidate) const;
  bool move_one(Choice& choice, std::size_t which) const;
  bool move_two(Choice& choice, std::size_t first, std::size_t second) const;
  void improve(Choice& choice) const;
  void improve_pairs(Choice& choice) const;

  void center(std::vector<Bearing<True>>& headings, std::size_t which) const;
  Bearing<True> better_face(Bearing<True> heading, const ChanceCurve& sum,
                            const std::vector<std::size_t>& needed) const;
  std::vector<bool> ahead(Bearing<True> heading) const;

  const std::vector<WishCurves>& wishes_;
  std::vector<std::vector<std::vector<HeadingArc>>> arcs_ = {};  // by wish, by its curves
  std::vector<Bearing<True>> candidates_ = {};                   // whole degrees, then ends of arcs
  std::vector<double> values_ = {};       // by candidate, then wish: the best of its curves
  std::vector<IndexSet> fulfilled_ = {};  // by candidate
};

Chooser::Chooser(const std::vector<WishCurves>& wishes, double floor_percent) : wishes_(wishes) {
  for (const WishCurves& wish : wishes_) {
    auto& of_wish = arcs_.emplace_back();
    for (const ChanceCurve* curve : wish) {
      of_wish.push_back(arcs_above(curve->percent(), floor_percent));
    }
  }
  for (std::size_t h = 0; h < ChanceCurve::kHeadings; ++h) {
    add_candidate(Bearing<True>::degrees(static_cast<double>(h)));
  }
  for (const auto& of_wish : arcs_) {
    for (const auto& of_curve : of_wish) {
      for (const HeadingArc& arc : of_curve) {
        if (arc.all_round()) continue;
        add_candidate(arc.from);
        add_candidate(Bearing<True>::degrees(arc.from.degrees() + arc.length_deg));
      }
    }
  }
}

void Chooser::add_candidate(Bearing<True> heading) {
  IndexSet fulfilled(wishes_.size());
  for (std::size_t wish = 0; wish < wishes_.size(); ++wish) {
    values_.push_back(best_curve(wish, heading).percent_at(heading));
    if (wish_slack(wish, heading)) fulfilled.add(wish);
  }
  candidates_.push_back(heading);
  fulfilled_.push_back(std::move(fulfilled));
}

const ChanceCurve& Chooser::best_curve(std::size_t wish, Bearing<True> heading) const {
  const WishCurves& curves = wishes_[wish];
  return **std::max_element(curves.begin(), curves.end(),
                            [&](const ChanceCurve* a, const ChanceCurve* b) {
                              return a->percent_at(heading) < b->percent_at(heading);
                            });
}

// The widest arc of any one curve of the wish.
std::optional<Slack> Chooser::wish_slack(std::size_t wish, Bearing<True> heading) const {
  std::optional<Slack> widest;
  for (const auto& arcs : arcs_[wish]) {
    const auto slack = slack_within(arcs, heading);
    if (!slack) continue;
    if (!widest || slack->left_deg + slack->right_deg > widest->left_deg + widest->right_deg) {
      widest = slack;
    }
  }
  return widest;
}

double Chooser::sum(const Choice& choice) const {
  double sum = 0.0;
  for (std::size_t wish = 0; wish < wishes_.size(); ++wish) {
    double best = 0.0;
    for (const std::size_t candidate : choice) best = std::max(best, value(candidate, wish));
    sum += best;
  }
  return sum;
}

Chooser::Rest Chooser::rest(const Choice& choice, std::size_t first, std::size_t second) const {
  Rest rest{std::vector<double>(wishes_.size(), 0.0), IndexSet(wishes_.size())};
  for (std::size_t wish = 0; wish < wishes_.size(); ++wish) rest.needed.add(wish);
  for (std::size_t i = 0; i < choice.size(); ++i) {
    if (i != first && i != second) take(rest, choice[i]);
  }
  return rest;
}

void Chooser::take(Rest& rest, std::size_t candidate) const {
  rest.needed.remove_all(fulfilled_[candidate]);
  for (std::size_t wish = 0; wish < rest.best.size(); ++wish) {
    rest.best[wish] = std::max(rest.best[wish], value(candidate, wish));
  }
}

double Chooser::sum_with(const Rest& rest, std::size_t candidate) const {
  double sum = 0.0;
  for (std::size_t wish = 0; wish < rest.best.size(); ++wish) {
    sum += std::max(rest.best[wish], value(candidate, wish));
  }
  return sum;
}

// Moves one heading; the others stay.
bool Chooser::move_one(Choice& choice, std::size_t which) const {
  const Rest rest = this->rest(choice, which, which);
  const std::size_t before = choice[which];
  double most = sum_with(rest, before) + kGain_percent;
  for (std::size_t candidate = 0; candidate < candidates_.size(); ++candidate) {
    if (!rest.needed.within(fulfilled_[candidate])) continue;
    const double sum = sum_with(rest, candidate);
    if (sum <= most) continue;
    most = sum;
    choice[which] = candidate;
  }
  return choice[which] != before;
}

// Moves two at once, to find what moving one at a time cannot reach.
bool Chooser::move_two(Choice& choice, std::size_t first, std::size_t second) const {
  const Rest rest = this->rest(choice, first, second);
  double most = sum(choice) + kGain_percent;
  bool moved = false;
  for (std::size_t one = 0; one < candidates_.size(); ++one) {
    Rest with_one = rest;
    take(with_one, one);
    for (std::size_t other = 0; other < one; ++other) {
      if (!with_one.needed.within(fulfilled_[other])) continue;
      const double sum = sum_with(with_one, other);
      if (sum <= most) continue;
      most = sum;
      choice[first] = one;
      choice[second] = other;
      moved = true;
    }
  }
  return moved;
}

void Chooser::improve(Choice& choice) const {
  for (bool moved = true; moved;) {
    moved = false;
    for (std::size_t i = 0; i < choice.size(); ++i) moved = move_one(choice, i) || moved;
  }
}

void Chooser::improve_pairs(Choice& choice) const {
  for (bool moved = true; moved;) {
    moved = false;
    for (std::size_t i = 0; i < choice.size(); ++i) {
      for (std::size_t j = i + 1; j < choice.size(); ++j) moved = move_two(choice, i, j) || moved;
    }
  }
}

// The wishes whose stations are in front of the antenna, not behind it.
std::vector<bool> Chooser::ahead(Bearing<True> heading) const {
  std::vector<bool> ahead;
  for (std::size_t wish = 0; wish < wishes_.size(); ++wish) {
    const Turn off = best_curve(wish, heading).toward() - heading;
    ahead.push_back(wish_slack(wish, heading) && off.size_deg() < 90.0);
  }
  return ahead;
}

// An antenna with two faces is turned so that most of its stations are ahead.
Bearing<True> Chooser::better_face(Bearing<True> heading, const ChanceCurve& sum,
                                   const std::vector<std::size_t>& needed) const {
  const Bearing<True> back = heading.reciprocal();
  if (sum.percent_at(back) < sum.percent_at(heading) - kFlat_percent) return heading;
  for (const std::size_t wish : needed) {
    if (!wish_slack(wish, back)) return heading;
  }
  const std::vector<bool> before = ahead(heading), behind = ahead(back);
  const auto count = std::count(before.begin(), before.end(), true);
  const auto count_behind = std::count(behind.begin(), behind.end(), true);
  if (count != count_behind) return count > count_behind ? heading : back;
  return before >= behind ? heading : back;
}

void Chooser::center(std::vector<Bearing<True>>& headings, std::size_t which) const {
  std::vector<double> others(wishes_.size(), 0.0);
  std::vector<std::size_t> needed;
  for (std::size_t wish = 0; wish < wishes_.size(); ++wish) {
    bool elsewhere = false;
    for (std::size_t i = 0; i < headings.size(); ++i) {
      if (i == which) continue;
      elsewhere = elsewhere || wish_slack(wish, headings[i]).has_value();
      others[wish] = std::max(others[wish], best_curve(wish, headings[i]).percent_at(headings[i]));
    }
    if (!elsewhere) needed.push_back(wish);
  }
  ChanceCurve::Values sums = {};
  for (std::size_t h = 0; h < sums.size(); ++h) {
    for (std::size_t w = 0; w < others.size(); ++w) sums[h] += std::max(others[w], value(h, w));
  }
  const ChanceCurve sum({}, sums);
  Bearing<True>& heading = headings[which];
  Slack room = *slack(sum, heading, sum.percent_at(heading) - kFlat_percent);
  for (const std::size_t wish : needed) {
    const Slack own = *wish_slack(wish, heading);
    if (own.all_round()) continue;
    room.left_deg = std::min(room.left_deg, own.left_deg);
    room.right_deg = std::min(room.right_deg, own.right_deg);
  }
  if (room.all_round()) {
    heading = best_curve(needed.empty() ? 0 : needed.front(), heading).toward();
    return;
  }
  heading = heading + Turn::clockwise_deg((room.right_deg - room.left_deg) / 2.0);
  heading = better_face(heading, sum, needed);
}

HeadingChoice Chooser::choose(FewestSetsLimits limits) {
  FewestSets fewest = fewest_sets(wishes_.size(), fulfilled_, limits);
  std::vector<std::pair<double, Choice>> choices;
  for (Choice& choice : fewest.choices) choices.emplace_back(-sum(choice), std::move(choice));
  std::sort(choices.begin(), choices.end());
  choices.resize(std::min(choices.size(), kMostImproved));
  Choice best;
  double most = -1.0;
  for (auto& [unused, choice] : choices) {
    improve(choice);
    if (sum(choice) <= most + kGain_percent) continue;
    most = sum(choice);
    best = choice;
  }
  improve_pairs(best);
  HeadingChoice chosen{.fewest_proved = fewest.proved};
  for (const std::size_t candidate : best) chosen.headings.push_back(candidates_[candidate]);
  for (std::size_t i = 0; i < chosen.headings.size(); ++i) center(chosen.headings, i);
  return chosen;
}

}  // namespace

HeadingChoice choose_headings(const std::vector<WishCurves>& wishes, double floor_percent,
                              FewestSetsLimits limits) {
  if (wishes.empty()) return {};
  return Chooser(wishes, floor_percent).choose(limits);
}

}  // namespace mastwise
