#include "core/reception/pattern_lookup.hpp"

#include <cmath>

namespace mastwise::reception {
namespace {

constexpr std::size_t kSteps = 4;  // a degree
constexpr std::size_t kEntries = kSteps * ChanceCurve::kHeadings;

ChanceCurve::Values look_up(const std::vector<double>& table, Bearing<True> bearing) {
  const double place = bearing.degrees() * static_cast<double>(kSteps);
  const double whole = std::floor(place);
  const double part = place - whole;
  std::size_t entry = static_cast<std::size_t>(whole) % kEntries;
  ChanceCurve::Values values;
  for (double& value : values) {
    value = table[entry] + part * (table[entry + 1] - table[entry]);
    entry = entry < kSteps ? entry + kEntries - kSteps : entry - kSteps;
  }
  return values;
}

}  // namespace

PatternLookup::PatternLookup(const gear::Pattern& pattern) {
  decibel_.reserve(kEntries + 1);
  ratio_.reserve(kEntries + 1);
  for (std::size_t i = 0; i <= kEntries; ++i) {
    const double angle_deg = static_cast<double>(i) / static_cast<double>(kSteps);
    decibel_.push_back(pattern.relative_db(Turn::clockwise_deg(angle_deg)));
    ratio_.push_back(std::pow(10.0, decibel_.back() / 10.0));
  }
}

ChanceCurve::Values PatternLookup::response_db(Bearing<True> bearing) const {
  return look_up(decibel_, bearing);
}

ChanceCurve::Values PatternLookup::response(Bearing<True> bearing) const {
  return look_up(ratio_, bearing);
}

}  // namespace mastwise::reception
