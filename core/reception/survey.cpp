#include "core/reception/survey.hpp"

#include "core/geo/geodesic.hpp"
#include "core/reception/path_fields.hpp"
#include "core/reception/reasons.hpp"
#include "core/reception/signal_steps.hpp"
#include "core/reception/survey_state.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

namespace mastwise::reception {
namespace {

constexpr double kFarthestCoast_m = 1'000e3;

// What a station is ranked by: its chance, below every chance if it is unknown, and lowest if the
// TV cannot decode it.
double rank(const Outlook& outlook) {
  if (outlook.decoding == gear::Decoding::impossible) return -2.0;
  return outlook.chance_percent.value_or(-1.0);
}

}  // namespace

gear::NoiseSources noise_sources(const Receiver& receiver) {
  return {receiver.noise.value_or(figures(receiver.surroundings).noise), receiver.inverter_on,
          receiver.appliances};
}

Survey::State::State(Receiver receiver, std::vector<Station> given, const Land& land_around)
    : budget(std::move(receiver)),
      stations(std::move(given)),
      measurements(stations.size()),
      land(land_around),
      interference(budget, stations) {
  if (land.coasts == nullptr) return;
  const Position stop = budget.receiver().position;
  double farthest_m = 0.0;
  for (const Station& station : stations) {
    farthest_m = std::max(farthest_m, path_between(stop, station.position).distance_m);
  }
  shore = map::Shore::around(*land.coasts, stop, std::min(farthest_m, kFarthestCoast_m));
}

Survey::Survey(Receiver receiver, std::vector<Station> stations, const Land& land)
    : state_(std::make_unique<State>(std::move(receiver), std::move(stations), land)) {}
Survey::Survey(Survey&&) noexcept = default;
Survey& Survey::operator=(Survey&&) noexcept = default;
Survey::~Survey() = default;

std::size_t Survey::size() const {
  return state_->stations.size();
}

void Survey::measure(std::size_t first, std::size_t end, Scratch& scratch) {
  for (std::size_t i = first; i < end; ++i) {
    const Station& station = state_->stations[i];
    Measurement measurement = start_measurement(station);
    compute_path(station, state_->budget.receiver(), state_->land,
                 state_->shore ? &*state_->shore : nullptr, measurement, scratch);
    state_->budget.apply(station, measurement, true);
    measurement.measured = true;
    state_->measurements[i] = measurement;
  }
}

void Survey::weigh() {
  state_->interference.weigh(state_->measurements);
}

const Receiver& Survey::receiver() const {
  return state_->budget.receiver();
}

const Station& Survey::station(std::size_t index) const {
  return state_->stations[index];
}

const Outlook* Survey::outlook(std::size_t index) const {
  const Measurement& measurement = state_->measurements[index];
  return measurement.measured ? &measurement.outlook : nullptr;
}

std::optional<SignalBudget> Survey::budget(std::size_t index) const {
  return signal_budget(state_->budget, state_->stations, state_->measurements, index);
}

std::vector<Prospect> Survey::prospects(std::size_t limit) const {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < size(); ++i) {
    if (state_->measurements[i].measured) order.push_back(i);
  }
  std::stable_sort(order.begin(), order.end(), [this](std::size_t a, std::size_t b) {
    const Outlook& one = state_->measurements[a].outlook;
    const Outlook& other = state_->measurements[b].outlook;
    if (rank(one) != rank(other)) return rank(one) > rank(other);
    return one.distance_m < other.distance_m;
  });
  order.resize(std::min(limit, order.size()));
  std::vector<Prospect> list;
  list.reserve(order.size());
  for (const std::size_t i : order) {
    list.push_back({.station = state_->stations[i],
                    .outlook = state_->measurements[i].outlook,
                    .reasons = reasons(state_->budget, state_->stations, state_->measurements, i)});
  }
  return list;
}

std::vector<Prospect> survey(const Receiver& receiver, std::vector<Station> stations,
                             const Land& land) {
  Survey whole(receiver, std::move(stations), land);
  Scratch scratch;
  whole.measure(0, whole.size(), scratch);
  whole.weigh();
  return whole.prospects();
}

}  // namespace mastwise::reception
