#include "app/parking/sight.hpp"

#include "app/words/chances.hpp"
#include "core/plan/wanted_ways.hpp"

#include <algorithm>
#include <variant>

namespace mastwise {
namespace {

// The chance if nothing stood on the station's side.
std::optional<double> free_percent(const StationRow& row) {
  if (!row.outlook || !row.outlook->chance_percent) return std::nullopt;
  double percent = *row.outlook->chance_percent;
  for (const reception::Reason& reason : row.reasons) {
    if (reason.kind() == reception::ReasonKind::on_its_side) percent += reason.gain_percent;
  }
  return std::min(percent, row.outlook->chance_cap_percent);
}

WantedByName wanted_by_name(const StationsAnswer& answer) {
  WantedByName wanted{.networks = answer.question.pinned_networks};
  const auto& pinned = answer.question.pinned;
  for (std::size_t i = 0; i < answer.rows.size(); ++i) {
    if (std::find(pinned.begin(), pinned.end(), key_of(answer.rows[i].station)) != pinned.end()) {
      wanted.stations.push_back(i);
    }
  }
  return wanted;
}

// How each wanted station stands, for any nose.
class Judge {
 public:
  Judge(const std::vector<WantedSight>& wanted, const reception::ObstacleRing& ring,
        Neighbors neighbors) {
    for (const WantedSight& station : wanted) ways_.push_back(way_of(station, ring, neighbors));
  }

  Sight sight(std::size_t station, const std::optional<RigHeading>& nose) const {
    const Way& way = ways_[station];
    if (way.sure) return *way.sure;
    const bool neighbor_meets =
        nose && std::any_of(way.clearing.begin(), way.clearing.end(),
                            [&](const auto& noses) { return !slack_within(noses, nose->nose()); });
    return neighbor_meets ? Sight::blocked : Sight::unseen;
  }
  std::size_t blocked(const std::vector<WantedSight>& wanted, RigHeading nose) const {
    std::size_t count = 0;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
      if (sight(i, nose) == Sight::blocked) count += wanted[i].counts();
    }
    return count;
  }

 private:
  struct Way {
    std::optional<Sight> sure = {};                      // whatever the nose
    std::vector<std::vector<HeadingArc>> clearing = {};  // noses, for each neighbor expected
  };

  static Way way_of(const WantedSight& station, const reception::ObstacleRing& ring,
                    Neighbors neighbors) {
    if (station.side_db >= kStillClear_db) return {.sure = Sight::blocked};
    const reception::Side& side = ring.sides[ring.side_toward(station.bearing)];
    if (side.kind != reception::SideKind::unmarked) return {.sure = Sight::clear};
    Way way;
    for (const bool right : {true, false}) {
      if (!(right ? on_right(neighbors) : on_left(neighbors))) continue;
      const RigSector occupied = neighbor_sector(right);
      way.clearing.push_back(noses_that_clear({station.arc}, {&occupied, 1}));
    }
    return way;
  }

  std::vector<Way> ways_;
};

}  // namespace

std::optional<std::vector<WantedSight>> wanted_sights(const StationsAnswer& answer) {
  if (!answer.question.search.empty() || answer.measured < answer.all) return std::nullopt;
  std::vector<Station> stations;
  std::vector<SeenStation> seen;
  for (const StationRow& row : answer.rows) {
    stations.push_back(row.station);
    seen.push_back({free_percent(row), row.outlook ? row.outlook->bearing : Bearing<True>()});
  }
  std::vector<WantedSight> wanted;
  const std::vector<std::string>& named = answer.question.pinned_networks;
  std::vector<std::string> told;
  for (const std::size_t i : stations_to_keep_clear(stations, seen, wanted_by_name(answer))) {
    const StationRow& row = answer.rows[i];
    if (!row.outlook || row.outlook->frequency_mhz <= 0.0) continue;
    WantedSight sight{.title = words::title(row.station),
                      .bearing = row.outlook->bearing,
                      .side_db = row.outlook->side_db};
    const double half_deg =
        clearance_deg(row.outlook->frequency_mhz) + answer.question.heading_error_deg;
    sight.arc = {Bearing<True>::degrees(sight.bearing.degrees() - half_deg),
                 std::min(360.0, 2.0 * half_deg)};
    for (const std::string& network : networks_of(row.station)) {
      const bool asked = named.empty() || has_network(named, network);
      if (!asked || has_network(told, network)) continue;
      told.push_back(network);
      sight.networks.push_back(network);
    }
    wanted.push_back(std::move(sight));
  }
  return wanted;
}

ParkVerdict judge(std::vector<WantedSight>& wanted, const reception::ObstacleRing& ring,
                  Neighbors neighbors, const std::optional<RigHeading>& nose) {
  const Judge judge(wanted, ring, neighbors);
  ParkVerdict verdict;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    WantedSight& station = wanted[i];
    station.sight = judge.sight(i, nose);
    verdict.wanted += station.counts();
    if (station.sight == Sight::clear) verdict.clear += station.counts();
    if (station.sight == Sight::unseen) verdict.unseen += station.counts();
  }
  if (!nose || verdict.blocked() == 0) return verdict;
  constexpr int kStep_deg = 5;
  verdict.better_blocked = verdict.blocked();
  double least_turn_deg = 360.0;
  for (int degrees = kStep_deg; degrees < 360; degrees += kStep_deg) {
    const auto turned = RigHeading::nose_at(nose->nose() + Turn::clockwise_deg(degrees));
    const std::size_t blocked = judge.blocked(wanted, turned);
    const double turn_deg = std::min(degrees, 360 - degrees);
    const bool better =
        blocked < verdict.better_blocked ||
        (verdict.better && blocked == verdict.better_blocked && turn_deg < least_turn_deg);
    if (!better) continue;
    verdict.better = turned;
    verdict.better_blocked = blocked;
    least_turn_deg = turn_deg;
  }
  return verdict;
}

}  // namespace mastwise
