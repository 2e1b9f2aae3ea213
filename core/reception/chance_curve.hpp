#pragma once

#include "core/angles/bearing.hpp"

#include <array>
#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

namespace mastwise::reception {

class Survey;

// The chance of one station with the antenna's axis at every heading, averaged over the error of
// the heading.
class ChanceCurve {
 public:
  // One value a whole degree of true bearing. Averaged over a usual error of 6 degrees a curve
  // bends by at most 100 * 4 phi(1) / 6^2 = 2.7 percent points a square degree, so that straight
  // lines between whole degrees are within 0.34 points of it, and far less where it is used.
  static constexpr std::size_t kHeadings = 360;
  using Values = std::array<double, kHeadings>;

  // `toward` is where the station lies; `avoided` see below.
  ChanceCurve(Bearing<True> toward, const Values& percent, std::optional<std::size_t> avoided = {})
      : toward_(toward), percent_(percent), avoided_(avoided) {}

  Bearing<True> toward() const { return toward_; }
  const Values& percent() const { return percent_; }

  // Straight between whole degrees.
  double percent_at(Bearing<True> heading) const;

  // The highest value.
  double best_percent() const;

  // The station, by its number in the survey, from which the best heading turns the antenna away:
  // of those that disturb less there than with the axis straight on this station, the one that
  // disturbs so much less. Only where that gains a percent point or more.
  std::optional<std::size_t> avoided() const { return avoided_; }

 private:
  Bearing<True> toward_;
  Values percent_;
  std::optional<std::size_t> avoided_;
};

// The curves of a survey that has been weighed, which must outlive them and not be measured or
// weighed meanwhile. curve() may be called from any number of threads at once.
//
// At each heading the margin is that of the link budget with the pattern's response toward the
// station in place of the budget's mean loss by the heading's error, against noise and the
// disturbance of the others through the pattern at the same heading (interference.hpp); the
// amplifier is off at headings where all stations together overload it. The chance there is
// P(margin > 0) over all spreads but the heading's. The average of these over the heading's error,
// normal with Receiver::heading_error_deg and wrapped round the circle, counts that error once and
// in full, where the survey's own figure, on the axis, takes it for a mean loss and a normal
// spread.
class ChanceCurves {
 public:
  explicit ChanceCurves(const Survey& survey);
  ChanceCurves(ChanceCurves&&) noexcept;
  ChanceCurves& operator=(ChanceCurves&&) noexcept;
  ~ChanceCurves();

  // Nothing where the station's chance is not known; `index` below the survey's size.
  std::optional<ChanceCurve> curve(std::size_t index) const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

// All of them on the calling thread, by their numbers in the survey.
std::vector<std::optional<ChanceCurve>> chance_curves(const Survey& survey);

}  // namespace mastwise::reception
