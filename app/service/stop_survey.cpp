#include "app/service/stop_survey.hpp"

#include <algorithm>
#include <utility>

namespace mastwise {
namespace {

// Number of paths between two checks whether to stop.
constexpr std::size_t kBatch = 64;

}  // namespace

reception::Receiver receiver_of(const StationsQuestion& question) {
  return {.position = *question.from,
          .surroundings = question.surroundings,
          .in_leaf = reception::in_leaf(question.leaves, question.from->latitude_deg(),
                                        std::chrono::month(question.month)),
          .gear = gear_of(question.gear),
          .heading_error_deg = question.heading_error_deg,
          .learned = question.learned,
          .noise = question.noise,
          .inverter_on = question.inverter_on,
          .ring = question.ring,
          .appliances = gear::rises_of(question.appliances),
          .towers = question.towers};
}

std::function<void(Station&)> completer(const StationsQuestion& question) {
  return [&question](Station& station) { add_ticked(station, question.ticked_networks); };
}

StopSurveyor::StopSurveyor(SurveySources sources, unsigned threads)
    : countries_(std::move(sources)), pool_(threads) {
  scratches_.resize(pool_.threads());
}

void StopSurveyor::measure(reception::Survey& survey, std::size_t first, std::size_t end) {
  const std::size_t threads = pool_.threads();
  const std::size_t share = (end - first + threads - 1) / threads;
  pool_.run([&](std::size_t thread) {
    const std::size_t begin = std::min(end, first + thread * share);
    survey.measure(begin, std::min(end, begin + share), scratches_[thread]);
  });
}

Result<std::optional<reception::Survey>> StopSurveyor::survey(Country& country,
                                                              const reception::Receiver& receiver,
                                                              const Between& between) {
  using Made = std::optional<reception::Survey>;
  const auto near = country.catalog.nearest(receiver.position, kReachM, kMostStations);
  if (!near) return near.error();
  std::vector<Station> stations;
  for (const NearStation& station : *near) {
    stations.push_back(station.station);
    between.complete(stations.back());
  }
  reception::Survey survey(receiver, std::move(stations), country.land());
  for (std::size_t first = 0; first < survey.size(); first += kBatch) {
    if (between.stop()) return Made();
    const std::size_t end = std::min(survey.size(), first + kBatch);
    measure(survey, first, end);
    if (end == survey.size()) break;
    if (const auto looked = between.look(survey, end); !looked) return looked.error();
  }
  survey.weigh();
  return Made(std::move(survey));
}

// Each thread takes every n-th station: near ones come first and have the costliest curves.
std::vector<std::optional<reception::ChanceCurve>> StopSurveyor::curves(
    const reception::Survey& survey) {
  std::vector<std::optional<reception::ChanceCurve>> result(survey.size());
  const reception::ChanceCurves curves(survey);
  pool_.run([&](std::size_t thread) {
    for (std::size_t i = thread; i < result.size(); i += pool_.threads()) {
      result[i] = curves.curve(i);
    }
  });
  return result;
}

}  // namespace mastwise
