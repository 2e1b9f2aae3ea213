#include "app/service/plan_words.hpp"

#include "app/words/chances.hpp"

#include <algorithm>
#include <map>

namespace mastwise {
namespace {

// The wishes, and what each is called.
struct Wishes {
  std::vector<PlanWish> wishes = {};
  std::vector<std::string> names = {};
};

// Pinned stations, and any station of each pinned network; without any, the target.
Wishes pinned_wishes(const StationsQuestion& question, const reception::Survey& survey) {
  Wishes result;
  const bool any = !question.pinned.empty() || !question.pinned_networks.empty();
  std::vector<StationKey> keys = question.pinned;
  if (!any && question.target) keys.push_back(*question.target);
  for (const StationKey& key : keys) {
    const auto index = index_of(survey, key);
    if (!index) continue;
    result.wishes.push_back({.stations = {*index}, .pinned = any});
    result.names.push_back(words::title(survey.station(*index)));
  }
  for (const std::string& network : question.pinned_networks) {
    PlanWish wish =
        wish_for(survey, [&](const Station& station) { return carries(station, network); });
    wish.pinned = true;
    result.wishes.push_back(std::move(wish));
    result.names.push_back(network);
  }
  return result;
}

Wishes network_wishes(const reception::Survey& survey, const ChanceCurveList& curves) {
  std::map<std::string, std::vector<std::size_t>> carriers;
  for (std::size_t i = 0; i < survey.size(); ++i) {
    if (!curves[i]) continue;
    for (const std::string& network : networks_of(survey.station(i))) {
      carriers[network].push_back(i);
    }
  }
  Wishes result;
  for (const auto& [network, stations] : carriers) {
    result.wishes.push_back({.stations = stations});
    result.names.push_back(network);
  }
  return result;
}

Wishes all_wishes(const reception::Survey& survey, const ChanceCurveList& curves,
                  double floor_percent) {
  Wishes result{.wishes = likely_wishes(curves, floor_percent)};
  for (const PlanWish& wish : result.wishes) {
    result.names.push_back(words::title(survey.station(wish.stations.front())));
  }
  return result;
}

Wishes wishes_of(const StationsQuestion& question, const reception::Survey& survey,
                 const ChanceCurveList& curves) {
  switch (question.plan_for) {
    case PlanFor::Networks:
      return network_wishes(survey, curves);
    case PlanFor::All:
      return all_wishes(survey, curves, question.plan_floor_percent);
    case PlanFor::Pinned:
      break;
  }
  return pinned_wishes(question, survey);
}

std::vector<std::string> call_signs(const reception::Survey& survey,
                                    const std::vector<std::size_t>& stations) {
  std::vector<std::string> names;
  for (const std::size_t station : stations) names.push_back(survey.station(station).call_sign);
  return names;
}

class PlanWriter {
 public:
  PlanWriter(const StationsQuestion& question, const reception::Survey& survey,
             const ChanceCurveList& curves)
      : question_(question), survey_(survey), curves_(curves) {}

  PlanStep step(const PlannedHeading& planned) const {
    PlanStep step{.bearing = planned.bearing, .slack = planned.slack};
    for (const Brought& brought : planned.brings) {
      step.brings.push_back(station(brought.station, brought.chance_percent));
    }
    for (const Lost& lost : planned.loses) {
      step.loses.push_back(station(lost.station, lost.chance_percent));
    }
    for (const OffAxis& off : planned.off_axis_for) {
      step.remarks.push_back({.station = survey_.station(off.station).call_sign,
                              .interferer = survey_.station(off.interferer).call_sign,
                              .gain_percent = off.gain_percent});
      const auto aim =
          null_aim_at(survey_, curves_, off.station, planned.bearing, question_.plan_floor_percent);
      if (!aim) continue;
      step.remarks.back().on_null = true;
      step.remarks.back().loses = call_signs(survey_, aim->loses);
    }
    return step;
  }

 private:
  PlanStation station(std::size_t index, double chance_percent) const {
    const Station& station = survey_.station(index);
    const StationKey key = key_of(station);
    const auto& pinned = question_.pinned;
    const auto& networks = question_.pinned_networks;
    const bool wanted = std::any_of(networks.begin(), networks.end(),
                                    [&](const std::string& one) { return carries(station, one); });
    return {.key = key,
            .title = words::title(station),
            .rf_channel = to_text(station.rf_channel),
            .network = words::carries(station),
            .chance_percent = chance_percent,
            .pinned = wanted || std::find(pinned.begin(), pinned.end(), key) != pinned.end()};
  }

  const StationsQuestion& question_;
  const reception::Survey& survey_;
  const ChanceCurveList& curves_;
};

}  // namespace

NullHint null_hint(const reception::Survey& survey, const NullAim& aim) {
  return {.heading = aim.heading,
          .interferer = survey.station(aim.interferer).call_sign,
          .interferer_bearing = survey.outlook(aim.interferer)->bearing,
          .width_deg = aim.null.width_deg,
          .depth_db = aim.null.depth_db,
          .chance_percent = aim.chance_percent,
          .gain_percent = aim.gain_percent,
          .loses = call_signs(survey, aim.loses)};
}

std::vector<PlanWish> likely_wishes(const ChanceCurveList& curves, double least_percent) {
  std::vector<PlanWish> wishes;
  for (std::size_t i = 0; i < curves.size(); ++i) {
    if (curves[i] && curves[i]->best_percent() >= least_percent) {
      wishes.push_back({.stations = {i}});
    }
  }
  return wishes;
}

std::optional<std::size_t> index_of(const reception::Survey& survey, const StationKey& key) {
  for (std::size_t i = 0; i < survey.size(); ++i) {
    if (key_of(survey.station(i)) == key) return i;
  }
  return std::nullopt;
}

Plan plan_for(const StationsQuestion& question, const reception::Survey& survey,
              const ChanceCurveList& curves) {
  const Wishes wishes = wishes_of(question, survey, curves);
  const TurnPlan found =
      turn_plan(curves, {.wishes = wishes.wishes, .floor_percent = question.plan_floor_percent});
  const PlanWriter writer(question, survey, curves);
  Plan plan{.fewest_proved = found.fewest_proved};
  for (const PlannedHeading& heading : found.headings) plan.steps.push_back(writer.step(heading));
  if (found.again) plan.again = writer.step(*found.again);
  for (const OutOfPlan& out : found.out_of_plan) {
    plan.out.push_back({.name = wishes.names[out.wish], .best_percent = out.best_percent});
    if (out.station) plan.out.back().key = key_of(survey.station(*out.station));
  }
  constexpr std::size_t kMostWeak = 6;
  for (const Lost& weak : found.too_weak) {
    if (plan.too_weak.size() == kMostWeak) break;
    plan.too_weak.push_back({.name = words::title(survey.station(weak.station)),
                             .best_percent = weak.best_percent,
                             .key = key_of(survey.station(weak.station))});
  }
  return plan;
}

}  // namespace mastwise
