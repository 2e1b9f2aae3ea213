#pragma once

#include "core/angles/bearing.hpp"

#include <array>
#include <cstddef>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace mastwise::reception {

class Survey;

// The chance of one station with the antenna's axis at every heading, averaged over the heading
// error.
class ChanceCurve {
 public:
  // One value for each whole degree of true bearing. Averaged over a usual error of 6 degrees a
  // curve bends by at most 100 * 4 phi(1) / 6^2 = 2.7 percentage points per square degree. So
  // straight lines between whole degrees are within 0.34 points of it, and far closer in practice.
  static constexpr std::size_t kHeadings = 360;
  using Values = std::array<double, kHeadings>;

  // The chances with the axis exactly at each heading, and the error they are averaged over.
  struct Exact {
    Values percent;
    double heading_error_deg;
  };

  // `toward` is the station's bearing; `avoided` see below. Without `exact` the values count as
  // free of error.
  ChanceCurve(Bearing<True> toward, const Values& percent, std::optional<std::size_t> avoided = {},
              std::shared_ptr<const Exact> exact = nullptr)
      : toward_(toward), percent_(percent), avoided_(avoided), exact_(std::move(exact)) {}

  Bearing<True> toward() const { return toward_; }
  const Values& percent() const { return percent_; }

  // Linear between whole degrees.
  double percent_at(Bearing<True> heading) const;

  // The highest value.
  double best_percent() const;

  // The lowest average over the heading error, rounded up by at most 9 %, and over every smaller
  // one. An average alone can rise with the error: in a dip between two lobes, and on a flank below
  // 50 %. What must hold for a less exact way to point must hold for an exact one too.
  Values assured_percent() const;

  // The station, by its index in the survey, that the best heading turns the antenna away from: of
  // those that interfere less there than with the axis straight on this station, the one with the
  // largest reduction. Only if that gains a percentage point or more.
  std::optional<std::size_t> avoided() const { return avoided_; }

 private:
  Bearing<True> toward_;
  Values percent_;
  std::optional<std::size_t> avoided_;
  std::shared_ptr<const Exact> exact_;
};

// The curves of a survey after weigh(). The survey must outlive them and must not be measured or
// weighed meanwhile. Any number of threads may call curve() at once.
//
// At each heading the margin is that of the link budget, with the pattern's response toward the
// station instead of the budget's mean loss from the heading error. It counts noise and the
// interference of others through the pattern at the same heading (interference.hpp). The amplifier
// is off at headings where all stations together overload it. The chance there is P(margin > 0)
// over all spreads except the heading's. The average of these over the heading error, normal with
// Receiver::heading_error_deg and wrapped around the circle, counts that error once and in full.
// The survey's figure, on the axis, approximates it by a mean loss and a normal spread.
class ChanceCurves {
 public:
  explicit ChanceCurves(const Survey& survey);
  ChanceCurves(ChanceCurves&&) noexcept;
  ChanceCurves& operator=(ChanceCurves&&) noexcept;
  ~ChanceCurves();

  // std::nullopt if the station's chance is unknown, or if the TV cannot decode it; `index` below
  // the survey's size.
  std::optional<ChanceCurve> curve(std::size_t index) const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

// All curves, computed on the calling thread, by index in the survey.
std::vector<std::optional<ChanceCurve>> chance_curves(const Survey& survey);

}  // namespace mastwise::reception
