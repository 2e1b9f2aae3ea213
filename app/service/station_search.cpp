#include "app/service/station_search.hpp"

#include "app/service/plan_words.hpp"
#include "core/geo/geodesic.hpp"
#include "core/reception/chance_curve.hpp"
#include "core/reception/compare.hpp"
#include "core/stations/note_names.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <memory>

namespace mastwise {
namespace {

constexpr std::size_t kPathPoints = 240;

// Caches the survey between questions.
class Surveyor {
 public:
  explicit Surveyor(SurveySources sources) : surveyor_(std::move(sources)) {}
  StationsAnswer answer(const StationsQuestion& question, const StationsWorker::Work& work);

 private:
  StationsAnswer answer_once(const StationsQuestion& question, const StationsWorker::Work& work);

  using Prospects = std::vector<reception::Prospect>;

  Result<Country*> country(bool practice);
  Result<Done> survey(Country& country, const StationsQuestion& question,
                      const StationsWorker::Work& work);
  Result<Done> fill(StationsAnswer& answer, Country& country);
  Result<Done> fill_by_search(StationsAnswer& answer, Country& country);
  void add_target_path(StationsAnswer& answer, Country& country);
  void add_plan(StationsAnswer& answer) const;
  Result<Done> add_lost_pins(StationsAnswer& answer, Country& country) const;
  Result<Done> add_on_board(StationsAnswer& answer, Country& country) const;
  Result<Done> add_ahead(StationsAnswer& answer, Country& country,
                         const StationsWorker::Work& work);

  StopSurveyor surveyor_;
  // The last survey and its question, without search, target and plan.
  std::optional<StationsQuestion> surveyed_;
  std::optional<reception::Survey> survey_;
  std::vector<std::optional<reception::ChanceCurve>> curves_;
  Prospects prospects_;
};

Result<Country*> Surveyor::country(bool practice) {
  const auto visited = surveyor_.countries().visit(practice);
  if (!visited) return visited.error();
  if (visited->changed) surveyed_.reset();
  return visited->country;
}

Result<Done> Surveyor::survey(Country& country, const StationsQuestion& question,
                              const StationsWorker::Work& work) {
  const StationsQuestion wanted = survey_part(question);
  if (surveyed_ == wanted) return Done{};
  surveyed_.reset();
  const auto look = [&](reception::Survey& so_far, std::size_t measured) -> Result<Done> {
    if (!question.search.empty()) return Done{};
    so_far.weigh();
    prospects_ = so_far.prospects();
    StationsAnswer answer{.question = question, .measured = measured, .all = so_far.size()};
    if (const auto filled = fill(answer, country); !filled) return filled;
    work.publish(std::move(answer));
    return Done{};
  };
  auto survey =
      surveyor_.survey(country, receiver_of(question),
                       {.complete = completer(question), .stop = work.superseded, .look = look});
  if (!survey) return survey.error();
  if (!*survey) return Done{};
  survey_ = *std::move(survey);
  prospects_ = survey_->prospects();
  curves_ = surveyor_.curves(*survey_);
  surveyed_ = wanted;
  return Done{};
}

StationRow row_of(const reception::Prospect& prospect) {
  return {.station = prospect.station, .outlook = prospect.outlook, .reasons = prospect.reasons};
}

Result<Done> Surveyor::fill(StationsAnswer& answer, Country& country) {
  if (!answer.question.search.empty()) return fill_by_search(answer, country);
  for (const reception::Prospect& prospect : prospects_) answer.rows.push_back(row_of(prospect));
  return Done{};
}

// The search results in the catalog's order; stations out of reach have no forecast.
Result<Done> Surveyor::fill_by_search(StationsAnswer& answer, Country& country) {
  std::vector<Station> found;
  if (answer.question.from) {
    const auto near =
        country.catalog.search(answer.question.search, *answer.question.from, kMostStations);
    if (!near) return near.error();
    for (const NearStation& station : *near) found.push_back(station.station);
  } else {
    auto all = country.catalog.search(answer.question.search, kMostStations);
    if (!all) return all.error();
    found = *std::move(all);
  }
  for (Station& station : found) {
    add_ticked(station, answer.question.ticked_networks);
    const auto prospect = std::find_if(
        prospects_.begin(), prospects_.end(),
        [&](const reception::Prospect& p) { return key_of(p.station) == key_of(station); });
    if (prospect == prospects_.end()) {
      answer.rows.push_back({.station = std::move(station)});
    } else {
      answer.rows.push_back(row_of(*prospect));
    }
  }
  return Done{};
}

void Surveyor::add_target_path(StationsAnswer& answer, Country& country) {
  if (!answer.question.target) return;
  for (const reception::Prospect& prospect : prospects_) {
    if (key_of(prospect.station) != *answer.question.target) continue;
    answer.target_path = reception::path_picture(receiver_of(answer.question), prospect,
                                                 country.tiles, kPathPoints, surveyor_.scratch());
  }
  const auto index = index_of(*survey_, *answer.question.target);
  if (index) answer.target_budget = survey_->budget(*index);
}

void Surveyor::add_plan(StationsAnswer& answer) const {
  answer.plan = plan_for(answer.question, *survey_, curves_);
  StationsQuestion likely = answer.question;
  likely.plan_for = PlanFor::All;
  likely.plan_floor_percent = kUsualFloor_percent;
  answer.turns = plan_for(likely, *survey_, curves_).steps;
  if (!answer.question.target) return;
  const auto target = index_of(*survey_, *answer.question.target);
  if (!target || !curves_[*target]) return;
  const auto& turn = answer.question.turn;
  if (turn) answer.turn_percent = curves_[*target]->percent_at(*turn);
  answer.target_slack = slack(*curves_[*target], turn.value_or(survey_->outlook(*target)->bearing),
                              answer.question.plan_floor_percent);
  if (const auto aim = null_aim(*survey_, curves_, *target, answer.question.plan_floor_percent)) {
    answer.target_null = null_hint(*survey_, *aim);
  }
}

// The record that stands for the pinned one, if both tables list the transmitter, perhaps under
// another call sign.
const Station* covering(const std::vector<reception::Prospect>& prospects, const Station& pinned) {
  for (const reception::Prospect& prospect : prospects) {
    if (same_transmitter(prospect.station, pinned)) return &prospect.station;
  }
  return nullptr;
}

// Of stations of the pinned one's call sign: that of the same facility, else the first.
const Station* successor(const std::vector<Station>& stations, const PinNote& pin) {
  for (const Station& station : stations) {
    if (!pin.facility_id.empty() && station.facility_id == pin.facility_id) return &station;
  }
  return stations.empty() ? nullptr : &stations.front();
}

Result<Done> Surveyor::add_lost_pins(StationsAnswer& answer, Country& country) const {
  const StationsQuestion& question = answer.question;
  for (const PinNote& pin : question.pin_notes) {
    const auto found = country.catalog.find(pin.key.source, pin.key.id);
    if (!found) return found.error();
    if (*found) {
      const Station* other = covering(prospects_, **found);
      if (other != nullptr) answer.lost_pins.push_back({pin, pin_note(*other)});
      continue;
    }
    const auto named = country.catalog.with_call_sign(pin.call_sign);
    if (!named) return named.error();
    LostPin lost{.pin = pin};
    if (const Station* other = successor(*named, pin)) lost.instead = pin_note(*other);
    answer.lost_pins.push_back(std::move(lost));
  }
  return Done{};
}

Result<Done> Surveyor::add_on_board(StationsAnswer& answer, Country& country) const {
  const auto count = country.catalog.count();
  if (!count) return count.error();
  StationsOnBoard on_board{.count = *count};
  on_board.networks_named = std::any_of(
      prospects_.begin(), prospects_.end(),
      [](const reception::Prospect& prospect) { return !networks_of(prospect.station).empty(); });
  if (answer.question.from && prospects_.empty()) {
    constexpr double kAnywhere_m = 20'040e3;  // half around the earth
    const auto nearest = country.catalog.nearest(*answer.question.from, kAnywhere_m, 1);
    if (!nearest) return nearest.error();
    if (!nearest->empty()) {
      on_board.nearest_m = nearest->front().distance_m;
      on_board.nearest_bearing = nearest->front().bearing;
    }
  }
  answer.on_board = on_board;
  return Done{};
}

// The pinned networks and those of pinned stations, or all networks in reach here or at a place
// ahead, the likeliest here first.
std::vector<reception::Wish> ahead_wishes(
    const StationsQuestion& question,
    const std::vector<std::vector<reception::Prospect>>& surveys) {
  constexpr std::size_t kMost = 12;
  constexpr double kInReach_percent = 10.0;
  std::vector<reception::Wish> wishes;
  const auto add = [&](const std::string& network) {
    const reception::Wish wish{reception::Wish::Kind::network, network};
    const bool known = std::find(wishes.begin(), wishes.end(), wish) != wishes.end();
    if (!known && wishes.size() < kMost) wishes.push_back(wish);
  };
  const auto is_pinned = [&](const reception::Prospect& prospect) {
    const auto& pinned = question.pinned;
    return std::find(pinned.begin(), pinned.end(), key_of(prospect.station)) != pinned.end();
  };
  if (question.compare_pinned) {
    for (const std::string& network : question.pinned_networks) add(network);
  }
  for (const auto& survey : surveys) {
    for (const reception::Prospect& prospect : survey) {
      const bool wanted = question.compare_pinned
                              ? is_pinned(prospect)
                              : prospect.outlook.chance_percent.value_or(0.0) >= kInReach_percent;
      if (!wanted) continue;
      for (const std::string& network : networks_of(prospect.station)) add(network);
    }
  }
  return wishes;
}

// By the chance at every place.
AheadTable compared(const StationsQuestion& question,
                    const std::vector<std::vector<reception::Prospect>>& surveys,
                    const std::vector<reception::Wish>& wishes) {
  AheadTable table;
  for (const reception::Wish& wish : wishes) table.networks.push_back(wish.text);
  if (wishes.empty()) return table;
  for (const reception::PlaceOffers& row : reception::compare_places(surveys, wishes)) {
    const bool here = row.place == 0;
    AheadPlace place{.position = here ? *question.from : question.ahead[row.place - 1],
                     .here = here};
    for (const auto& offer : row.offers) {
      if (!offer) {
        place.offers.emplace_back();
        continue;
      }
      const reception::Prospect& prospect = surveys[row.place][offer->prospect];
      place.offers.push_back(AheadOffer{.call_sign = prospect.station.call_sign,
                                        .chance_percent = offer->chance_percent,
                                        .distance_m = offer->distance_m,
                                        .bearing = offer->bearing});
    }
    table.places.push_back(std::move(place));
  }
  return table;
}

Result<Done> Surveyor::add_ahead(StationsAnswer& answer, Country& country,
                                 const StationsWorker::Work& work) {
  const StationsQuestion& question = answer.question;
  std::vector<Prospects> surveys{prospects_};  // this place first
  for (const Position& place : question.ahead) {
    const auto survey =
        surveyor_.survey(country, receiver_of(elsewhere(question, place)),
                         {.complete = completer(question), .stop = work.superseded});
    if (!survey) return survey.error();
    if (!*survey) return Done{};
    surveys.push_back((*survey)->prospects());
  }
  answer.ahead = compared(question, surveys, ahead_wishes(question, surveys));
  return Done{};
}

StationsAnswer Surveyor::answer(const StationsQuestion& question,
                                const StationsWorker::Work& work) {
  return surveyor_.countries().of_whole_land(question.practice,
                                             [&] { return answer_once(question, work); });
}

StationsAnswer Surveyor::answer_once(const StationsQuestion& question,
                                     const StationsWorker::Work& work) {
  StationsAnswer answer{.question = question};
  const auto tell = [&](const Error& error) {
    answer.trouble = error.message();
    return answer;
  };
  const auto here = country(question.practice);
  if (!here) return tell(here.error());
  if (question.from) {
    const auto surveyed = survey(**here, question, work);
    if (!surveyed) return tell(surveyed.error());
    answer.measured = answer.all = prospects_.size();
  } else {
    prospects_.clear();
    surveyed_.reset();
  }
  const auto filled = fill(answer, **here);
  if (!filled) return tell(filled.error());
  if (const auto added = add_on_board(answer, **here); !added) return tell(added.error());
  if (const auto added = add_lost_pins(answer, **here); !added) return tell(added.error());
  if (question.from && surveyed_) {
    add_target_path(answer, **here);
    add_plan(answer);
  }
  if (surveyed_ && question.compare) {
    if (const auto added = add_ahead(answer, **here, work); !added) return tell(added.error());
  }
  return answer;
}

}  // namespace

StationsWorker::Answerer station_answerer(SurveySources sources) {
  auto surveyor = std::make_shared<Surveyor>(std::move(sources));
  return [surveyor](const StationsQuestion& question, const StationsWorker::Work& work) {
    return surveyor->answer(question, work);
  };
}

}  // namespace mastwise
