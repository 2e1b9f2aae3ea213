#include "app/service/gear_survey.hpp"

#include "app/words/chances.hpp"
#include "core/plan/wanted_ways.hpp"
#include "core/reception/compare_gears.hpp"

#include <algorithm>
#include <memory>
#include <utility>

namespace mastwise {
namespace {

using reception::Survey;

// The survey with each gear; all have the same stations in the same order.
class GearSurveys {
 public:
  GearSurveys(StopSurveyor& surveyor, const GearsQuestion& question)
      : surveyor_(surveyor), question_(question) {}

  // False if stopped.
  Result<bool> measure(const std::function<bool()>& stop);
  void fill(GearsAnswer& answer) const;

 private:
  WantedByName wanted() const;
  std::vector<KeptSector> sectors(std::size_t gear) const;
  SectorStation seen(std::size_t gear, std::size_t station) const;
  std::string call_sign(const std::optional<reception::Watchable::Best>& best) const {
    return best ? surveys_.front().station(best->station).call_sign : std::string();
  }

  StopSurveyor& surveyor_;
  const GearsQuestion& question_;
  std::vector<Survey> surveys_ = {};
  std::vector<Station> stations_ = {};
};

Result<bool> GearSurveys::measure(const std::function<bool()>& stop) {
  const auto country = surveyor_.countries().visit(question_.here.practice);
  if (!country) return country.error();
  for (std::size_t gear = 0; gear < question_.gears.size(); ++gear) {
    StationsQuestion with = question_.here;
    with.gear = question_.gears[gear];
    if (gear < question_.learned.size()) with.learned = question_.learned[gear];
    auto survey = surveyor_.survey(*country->country, receiver_of(with),
                                   {.complete = completer(question_.here), .stop = stop});
    if (!survey) return survey.error();
    if (!*survey) return false;
    surveys_.push_back(**std::move(survey));
  }
  if (surveys_.empty()) return false;
  for (std::size_t i = 0; i < surveys_.front().size(); ++i) {
    stations_.push_back(surveys_.front().station(i));
  }
  return true;
}

WantedByName GearSurveys::wanted() const {
  WantedByName wanted{.networks = question_.here.pinned_networks};
  for (std::size_t i = 0; i < stations_.size(); ++i) {
    const auto& pinned = question_.here.pinned;
    if (std::find(pinned.begin(), pinned.end(), key_of(stations_[i])) != pinned.end()) {
      wanted.stations.push_back(i);
    }
  }
  return wanted;
}

SectorStation GearSurveys::seen(std::size_t gear, std::size_t station) const {
  const reception::Outlook& outlook = *surveys_[gear].outlook(station);
  return {.title = words::title(stations_[station]),
          .carries = words::carries(stations_[station]),
          .bearing = outlook.bearing,
          .chance_percent = outlook.chance_percent};
}

std::vector<KeptSector> GearSurveys::sectors(std::size_t gear) const {
  std::vector<SeenStation> seen_with;
  for (std::size_t i = 0; i < stations_.size(); ++i) {
    const reception::Outlook& outlook = *surveys_[gear].outlook(i);
    seen_with.push_back({outlook.chance_percent, outlook.bearing});
  }
  std::vector<std::size_t> watched;
  std::vector<WantedWay> ways;
  for (const std::size_t station : stations_to_keep_clear(stations_, seen_with, wanted())) {
    const reception::Outlook& outlook = *surveys_[gear].outlook(station);
    // Its channel plan does not have the channel.
    if (outlook.frequency_mhz <= 0.0) continue;
    watched.push_back(station);
    ways.push_back({.bearing = outlook.bearing, .frequency_mhz = outlook.frequency_mhz});
  }
  std::vector<KeptSector> kept;
  for (const ClearSector& sector : clear_sectors(ways, question_.here.heading_error_deg)) {
    kept.push_back({.arc = sector.arc,
                    .harmless_m = surveys_[gear].receiver().gear.height_m - sector.clearance_m});
    for (const std::size_t way : sector.ways) {
      kept.back().stations.push_back(seen(gear, watched[way]));
    }
  }
  return kept;
}

void GearSurveys::fill(GearsAnswer& answer) const {
  std::vector<reception::GearChances> chances(surveys_.size());
  for (std::size_t gear = 0; gear < surveys_.size(); ++gear) {
    for (std::size_t i = 0; i < stations_.size(); ++i) {
      chances[gear].push_back(surveys_[gear].outlook(i)->chance_percent);
    }
  }
  const auto comparison = reception::compare_gears(stations_, chances);
  for (const reception::Watchable& one : comparison.networks) {
    answer.networks.push_back(one.network);
  }
  answer.unnamed = comparison.unnamed.size();
  answer.enough = reception::enough(comparison);
  for (std::size_t gear = 0; gear < surveys_.size(); ++gear) {
    const reception::GearReach& reach = comparison.gears[gear];
    const gear::Gear& used = surveys_[gear].receiver().gear;
    GearRow row{.name = used.name,
                .height_m = used.height_m,
                .networks = reach.networks,
                .unnamed = reach.unnamed,
                .sectors = sectors(gear)};
    for (const reception::Watchable& one : comparison.networks) {
      const auto& best = one.by_gear[gear];
      row.offers.push_back({.call_sign = call_sign(best)});
      if (best) row.offers.back().chance_percent = best->chance_percent;
    }
    for (const std::size_t station : reach.only)
      row.only.push_back(words::title(stations_[station]));
    answer.rows.push_back(std::move(row));
  }
}

}  // namespace

GearsAnswer compare_rig_gears(StopSurveyor& surveyor, const GearsQuestion& question,
                              const std::function<bool()>& stop) {
  return surveyor.countries().of_whole_land(question.here.practice, [&] {
    GearsAnswer answer{.question = question};
    GearSurveys surveys(surveyor, question);
    const auto measured = surveys.measure(stop);
    if (!measured) {
      answer.trouble = measured.error().message();
    } else if (*measured) {
      surveys.fill(answer);
    }
    return answer;
  });
}

GearsWorker::Answerer gears_answerer(SurveySources sources) {
  // Its threads start with the first question.
  return [sources = std::move(sources), surveyor = std::shared_ptr<StopSurveyor>()](
             const GearsQuestion& question, const GearsWorker::Work& work) mutable {
    if (!surveyor) surveyor = std::make_shared<StopSurveyor>(sources);
    return compare_rig_gears(*surveyor, question, work.superseded);
  };
}

}  // namespace mastwise
