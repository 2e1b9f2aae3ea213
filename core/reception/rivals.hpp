#pragma once

#include "core/reception/chance.hpp"
#include "core/reception/same_site.hpp"

#include <array>
#include <cstddef>
#include <optional>

namespace mastwise::reception {

// A power whose decibels are normally distributed.
struct Level {
  double median_dbm = 0.0;
  double deviation_db = 0.0;
  bool operator==(const Level&) const = default;
};

// The sum of two powers that vary independently, as the normal distribution in dB with the mean and
// the deviation of the sum's decibels [the method of Schwartz and Yeh, Bell System Technical
// Journal 61, 1982, from memory; the moments by quadrature].
Level independent_sum(const Level& a, const Level& b);

// The sum of two powers that fade together, as from one site; with the larger one's deviation.
Level joint_sum(const Level& a, const Level& b);

// What a station competes with at the stop.
struct Rivals {
  // The wanted power that noise alone requires, with stations too weak for their spread to matter.
  double needed_alone_dbm = 0.0;
  std::optional<Level> strongest = {};  // weighted power from another site
  std::optional<Level> others = {};     // the sum of those from further sites; not without it
  SameSite site = {};                   // from its own

  // The median requirement.
  double needed_dbm() const;
  // The deviation that they add to the margin, dB.
  double deviation_db() const;
  bool operator==(const Rivals&) const = default;
};

// The distribution of the wanted power that is required against rivals. The powers from elsewhere
// vary independently of the wanted one, so a chance is its average over theirs: they are not there
// always, as their strongest tenth would have it, nor is their spread one among others.
class Requirement {
 public:
  explicit Requirement(const Rivals& rivals);

  // P(wanted power > requirement) in percent, for the wanted power's median and spread.
  double chance_percent(double wanted_dbm, const Spread& spread) const;

 private:
  // A required power without the own site's share, and its probability.
  struct Node {
    double needed_dbm;
    double probability;
  };
  static constexpr std::size_t kMostNodes = 48;

  void add(double needed_dbm, double probability);
  void spread_out(const Level& strongest, const Level& others);
  double over_site_percent(double wanted_dbm, double needed_dbm, const Spread& spread) const;

  double alone_dbm_;
  SameSite site_;
  std::array<Node, kMostNodes> nodes_;
  std::size_t count_ = 0;
};

}  // namespace mastwise::reception
