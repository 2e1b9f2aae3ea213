#include "core/reception/ground_costs.hpp"

#include <cmath>
#include <utility>

namespace mastwise::reception {
namespace {

double whole_cost_db(const Outlook& outlook, std::size_t index) {
  const double loss_db = outlook.obstacles[index].loss_db;
  if (index > 0) return loss_db;
  const double distance_km = outlook.distance_m / 1000.0;
  return loss_db + (1.0 - std::exp(-loss_db / 6.0)) * (10.0 + 0.02 * distance_km);
}

}  // namespace

GroundCosts ground_costs(const Outlook& outlook, double excess_db) {
  GroundCosts costs;
  const std::size_t count = outlook.obstacles.size();
  double sum_db = 0.0;
  for (std::size_t i = 0; i < count; ++i) sum_db += whole_cost_db(outlook, i);
  const double share = sum_db > excess_db ? excess_db / sum_db : 1.0;
  costs.rest_db = excess_db - share * sum_db;
  for (std::size_t i = 0; i < count; ++i) {
    costs.obstacle_db[i] = share * whole_cost_db(outlook, i);
  }
  if (count > 0 && outlook.obstacles[0].earth_curve) {
    costs.obstacle_db[0] += std::exchange(costs.rest_db, 0.0);
  }
  return costs;
}

}  // namespace mastwise::reception
