#pragma once

#include <array>
#include <cstddef>

namespace mastwise::reception {

// Ground that reaches into the path from the station, or nearly so.
struct Obstacle {
  double distance_m = 0.0;  // from the stop
  double ground_amsl_m = 0.0;
  // Above the straight ray between its neighbors, antennas or a worse obstacle, on an earth of 4/3
  // radius; negative: below it.
  double above_line_m = 0.0;
  double loss_db = 0.0;      // as a single knife edge [Recommendation ITU-R P.526 (31)]
  bool earth_curve = false;  // above the ray only because of the earth's curve
  bool operator==(const Obstacle&) const = default;
};

// The few obstacles that matter, worst first.
class Obstacles {
 public:
  static constexpr std::size_t kMost = 3;
  // Inserts it in order; at most kMost calls.
  void add(const Obstacle& obstacle) {
    std::size_t place = count_++;
    for (; place > 0 && obstacles_[place - 1].loss_db < obstacle.loss_db; --place) {
      obstacles_[place] = obstacles_[place - 1];
    }
    obstacles_[place] = obstacle;
  }
  const Obstacle* begin() const { return obstacles_.data(); }
  const Obstacle* end() const { return obstacles_.data() + count_; }
  std::size_t size() const { return count_; }
  bool empty() const { return count_ == 0; }
  const Obstacle& operator[](std::size_t i) const { return obstacles_[i]; }
  bool operator==(const Obstacles&) const = default;

 private:
  std::array<Obstacle, kMost> obstacles_ = {};
  std::size_t count_ = 0;
};

}  // namespace mastwise::reception
