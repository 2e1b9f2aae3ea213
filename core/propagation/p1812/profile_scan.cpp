#include "core/propagation/p1812/profile_scan.hpp"

#include "core/propagation/p1812/lanes.hpp"

#include <cmath>
#include <limits>

namespace mastwise::p1812 {

namespace {

constexpr double kLowest = -std::numeric_limits<double>::infinity();

// Positions of the points: distance from the transmitter and the inverse distances from both ends,
// for one point (Value is double) or two neighbors (Value is Lanes).
struct SurveyedSteps {
  const double* distances_km;

  template <class Value>
  Value distance(std::size_t point) const {
    return read<Value>(distances_km + point);
  }
  template <class Value>
  Value per_start_km(std::size_t, Value from_start_km) const {
    return 1.0 / from_start_km;
  }
  template <class Value>
  Value per_end_km(std::size_t, Value to_end_km) const {
    return 1.0 / to_end_km;
  }
};

struct EvenSteps {
  const double* reciprocals;
  std::size_t last;
  double spacing_km;
  double per_spacing;

  template <class Value>
  Value distance(std::size_t point) const {
    return count_from<Value>(static_cast<double>(point)) * spacing_km;
  }
  template <class Value>
  Value per_start_km(std::size_t point, Value) const {
    return read<Value>(reciprocals + point) * per_spacing;
  }
  template <class Value>
  Value per_end_km(std::size_t point, Value) const {
    return read_backwards<Value>(reciprocals + (last - point)) * per_spacing;
  }
};

// A point, or two neighbors, between the antennas.
template <class Value>
struct Sight {
  Value from_start_km;
  Value to_end_km;
  Value per_start_km;
  Value per_end_km;
  Value transmitter_slope;
  Value receiver_slope;
  Value above_line_m;
};

template <class Steps>
class Pass {
 public:
  Pass(const Steps& steps, const Section& section, const double* heights_m, Line antennas)
      : steps_(steps),
        heights_m_(heights_m),
        length_km_(section.length_km),
        antennas_(antennas),
        rise_((antennas.end_m - antennas.start_m) / section.length_km) {}

  template <class Value>
  Sight<Value> at(std::size_t point) const {
    const Value height = read<Value>(heights_m_ + point);
    Sight<Value> sight;
    sight.from_start_km = steps_.template distance<Value>(point);
    sight.to_end_km = length_km_ - sight.from_start_km;
    sight.per_start_km = steps_.template per_start_km<Value>(point, sight.from_start_km);
    sight.per_end_km = steps_.template per_end_km<Value>(point, sight.to_end_km);
    const Value above_transmitter = height - antennas_.start_m;
    sight.transmitter_slope = above_transmitter * sight.per_start_km;
    sight.receiver_slope = (height - antennas_.end_m) * sight.per_end_km;
    sight.above_line_m = above_transmitter - rise_ * sight.from_start_km;
    return sight;
  }

 private:
  Steps steps_;
  const double* heights_m_;
  double length_km_;
  Line antennas_;
  double rise_;
};

template <class Use>
auto with_pass(const Section& section, const double* heights_m, Line antennas, Use use) {
  if (section.distances_km != nullptr) {
    const SurveyedSteps steps{section.distances_km};
    return use(Pass<SurveyedSteps>(steps, section, heights_m, antennas));
  }
  const EvenSteps steps{section.reciprocals, section.points - 1, section.spacing_km,
                        1.0 / section.spacing_km};
  return use(Pass<EvenSteps>(steps, section, heights_m, antennas));
}

// Calls `visit` with the first point of every pair in [first, last], at least two points. The last
// pair may overlap the previous one, which is harmless for a maximum.
template <class Visit>
void visit_pairs(std::size_t first, std::size_t last, Visit visit) {
  for (std::size_t point = first; point + 1 < last; point += kLanes) visit(point);
  visit(last - 1);
}

template <class Value>
Value transmitter_horizon(const Sight<Value>& sight, double bulge) {
  return sight.transmitter_slope - bulge * sight.from_start_km;
}

template <class Value>
Value receiver_horizon(const Sight<Value>& sight, double bulge) {
  return sight.receiver_slope - bulge * sight.to_end_km;
}

template <class Value>
Value clearance(const Sight<Value>& sight, double bulge) {
  const Value obstruction = sight.above_line_m + bulge * sight.from_start_km * sight.to_end_km;
  return obstruction * larger(obstruction, -obstruction) * sight.per_start_km * sight.per_end_km;
}

// The point between the ends, nearest to the transmitter or to the receiver, whose `measure`
// reaches `maximum`.
template <class Measure>
std::size_t find_from_transmitter(const Section& section, const double* heights_m, Line antennas,
                                  double maximum, Measure measure) {
  return with_pass(section, heights_m, antennas, [&](const auto& pass) {
    std::size_t point = 1;
    while (point + 2 < section.points && measure(pass.template at<double>(point)) < maximum) {
      ++point;
    }
    return point;
  });
}

template <class Measure>
std::size_t find_from_receiver(const Section& section, const double* heights_m, Line antennas,
                               double maximum, Measure measure) {
  return with_pass(section, heights_m, antennas, [&](const auto& pass) {
    std::size_t point = section.points - 2;
    while (point > 1 && measure(pass.template at<double>(point)) < maximum) --point;
    return point;
  });
}

// Sums and extremes over segments or points, one at a time or in pairs.
template <class Value>
struct Running {
  Value first_sum = {};
  Value second_sum = {};
  Value lowest = Value{} - kLowest;
  Value highest = Value{} + kLowest;
  Value shortest_step = Value{} - kLowest;

  void take_height(Value height) {
    lowest = smaller(height, lowest);
    highest = larger(height, highest);
  }
};

Running<double> together(const Running<Lanes>& pairs) {
  return {.first_sum = sum(pairs.first_sum),
          .second_sum = sum(pairs.second_sum),
          .lowest = smallest(pairs.lowest),
          .highest = largest(pairs.highest),
          .shortest_step = smallest(pairs.shortest_step)};
}

// The sums of `add(running, point)` over [first, end), in pairs and a last single one.
template <class Add>
Running<double> run(std::size_t first, std::size_t end, Add add) {
  Running<Lanes> pairs;
  std::size_t point = first;
  for (; point + 1 < end; point += kLanes) add(pairs, point);
  Running<double> all = together(pairs);
  if (point < end) add(all, point);
  return all;
}

GroundSums sum_surveyed(const Section& section, const double* heights_m) {
  const double* distances = section.distances_km;
  Running<double> all =
      run(1, section.points, [=]<class Value>(Running<Value>& sums, std::size_t point) {
        const Value near = read<Value>(distances + point - 1);
        const Value far = read<Value>(distances + point);
        const Value near_height = read<Value>(heights_m + point - 1);
        const Value far_height = read<Value>(heights_m + point);
        const Value step = far - near;
        sums.first_sum += step * (far_height + near_height);
        sums.second_sum +=
            step * (far_height * (2.0 * far + near) + near_height * (far + 2.0 * near));
        sums.shortest_step = smaller(step, sums.shortest_step);
        sums.take_height(far_height);
      });
  all.take_height(heights_m[0]);
  return {all.first_sum, all.second_sum, all.lowest, all.highest, all.shortest_step};
}

// With even steps s and points 0 .. n the sums of (83) and (84) reduce to those of h and of i h.
GroundSums sum_even(const Section& section, const double* heights_m) {
  const std::size_t last = section.points - 1;
  Running<double> all = run(1, last, [=]<class Value>(Running<Value>& sums, std::size_t point) {
    const Value height = read<Value>(heights_m + point);
    sums.first_sum += height;
    sums.second_sum += count_from<Value>(static_cast<double>(point)) * height;
    sums.take_height(height);
  });
  all.take_height(heights_m[0]);
  all.take_height(heights_m[last]);
  const double step = section.spacing_km;
  const double ends_m = heights_m[0] + heights_m[last];
  const double last_weight = 3.0 * static_cast<double>(last) - 1.0;
  return {.v1 = step * (2.0 * all.first_sum + ends_m),
          .v2 = step * step * (6.0 * all.second_sum + heights_m[0] + last_weight * heights_m[last]),
          .lowest_m = all.lowest,
          .highest_m = all.highest,
          .shortest_step_km = step};
}

Obstacles scan_obstacles(const Section& section, const double* heights_m, Line antennas,
                         Bulges bulges) {
  return with_pass(section, heights_m, antennas, [&](const auto& pass) {
    Lanes above = spread(kLowest);
    Lanes start_slope = above, start_median = above, start_beta = above;
    Lanes end_slope = above, end_median = above, end_beta = above;
    visit_pairs(1, section.points - 2, [&](std::size_t point) {
      const Sight<Lanes> sight = pass.template at<Lanes>(point);
      above = larger(sight.above_line_m, above);
      start_slope = larger(sight.transmitter_slope, start_slope);
      end_slope = larger(sight.receiver_slope, end_slope);
      start_median = larger(transmitter_horizon(sight, bulges.median), start_median);
      start_beta = larger(transmitter_horizon(sight, bulges.beta), start_beta);
      end_median = larger(receiver_horizon(sight, bulges.median), end_median);
      end_beta = larger(receiver_horizon(sight, bulges.beta), end_beta);
    });
    return Obstacles{largest(above),        largest(start_slope), largest(end_slope),
                     largest(start_median), largest(start_beta),  largest(end_median),
                     largest(end_beta)};
  });
}

Clearances scan_clearances(const Section& section, const double* heights_m, Line antennas,
                           Bulges bulges) {
  return with_pass(section, heights_m, antennas, [&](const auto& pass) {
    Lanes median = spread(kLowest);
    Lanes beta = median;
    visit_pairs(1, section.points - 2, [&](std::size_t point) {
      const Sight<Lanes> sight = pass.template at<Lanes>(point);
      median = larger(clearance(sight, bulges.median), median);
      beta = larger(clearance(sight, bulges.beta), beta);
    });
    return Clearances{largest(median), largest(beta)};
  });
}

}  // namespace

GroundSums sum_ground(const Section& section, const double* heights_m) {
  return section.distances_km != nullptr ? sum_surveyed(section, heights_m)
                                         : sum_even(section, heights_m);
}

Outlook look_along(const Section& section, const double* heights_m, Line antennas, Bulges bulges) {
  Outlook outlook;
  outlook.obstacles = scan_obstacles(section, heights_m, antennas, bulges);
  const double d = section.length_km;
  const double rise = (antennas.end_m - antennas.start_m) / d;
  if (outlook.obstacles.transmitter_horizon_median <= rise - bulges.median * d ||
      outlook.obstacles.transmitter_horizon_beta <= rise - bulges.beta * d) {
    outlook.clearances = scan_clearances(section, heights_m, antennas, bulges);
  }
  return outlook;
}

std::size_t find_transmitter_horizon(const Section& section, const double* heights_m, Line antennas,
                                     double bulge, double maximum) {
  return find_from_transmitter(
      section, heights_m, antennas, maximum,
      [=](const Sight<double>& sight) { return transmitter_horizon(sight, bulge); });
}

std::size_t find_receiver_horizon(const Section& section, const double* heights_m, Line antennas,
                                  double bulge, double maximum) {
  return find_from_receiver(section, heights_m, antennas, maximum, [=](const Sight<double>& sight) {
    return receiver_horizon(sight, bulge);
  });
}

std::size_t find_clearance(const Section& section, const double* heights_m, Line antennas,
                           double bulge, double maximum) {
  return find_from_transmitter(section, heights_m, antennas, maximum,
                               [=](const Sight<double>& sight) { return clearance(sight, bulge); });
}

double highest_above(const Section& section, const double* heights_m, Line line, std::size_t first,
                     std::size_t last) {
  return with_pass(section, heights_m, line, [&](const auto& pass) {
    if (first == last) return pass.template at<double>(first).above_line_m;
    Lanes highest = spread(kLowest);
    visit_pairs(first, last, [&](std::size_t point) {
      highest = larger(pass.template at<Lanes>(point).above_line_m, highest);
    });
    return largest(highest);
  });
}

}  // namespace mastwise::p1812
