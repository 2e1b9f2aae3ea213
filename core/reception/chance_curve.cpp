#include "core/reception/chance_curve.hpp"

#include "core/reception/circle_average.hpp"
#include "core/reception/interference.hpp"
#include "core/reception/pattern_lookup.hpp"
#include "core/reception/survey_state.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace mastwise::reception {
namespace {

constexpr double kWorthTelling_percent = 1.0;

// Power at the antenna's terminals with the axis exactly on the station.
double exactly_aimed_dbm(const Measurement& measurement) {
  return measurement.detail.received_dbm + measurement.detail.heading_db;
}

}  // namespace

double ChanceCurve::percent_at(Bearing<True> heading) const {
  const double whole = std::floor(heading.degrees());
  const auto before = static_cast<std::size_t>(whole) % kHeadings;
  const double from = percent_[before];
  return from + (heading.degrees() - whole) * (percent_[(before + 1) % kHeadings] - from);
}

double ChanceCurve::best_percent() const {
  return *std::max_element(percent_.begin(), percent_.end());
}

ChanceCurve::Values ChanceCurve::assured_percent() const {
  if (!exact_) return percent_;
  Values lowest = exact_->percent;
  // A fixed ladder of errors: a larger error climbs all the rungs of a smaller one.
  const double rung = std::pow(2.0, 1.0 / 8.0);
  bool enough = exact_->heading_error_deg <= 0.0;
  for (double error_deg = 1.0; !enough; error_deg *= rung) {
    const Values average = CircleAverage(error_deg)(exact_->percent);
    for (std::size_t h = 0; h < kHeadings; ++h) lowest[h] = std::min(lowest[h], average[h]);
    enough = error_deg >= exact_->heading_error_deg;
  }
  return lowest;
}

struct ChanceCurves::State {
  explicit State(const Survey& survey);

  const PatternLookup& table(const Measurement& measurement) const {
    return tables[static_cast<std::size_t>(measurement.outlook.band)];
  }
  double weighted_dbm(const Disturbance& other) const;
  void find_overload();
  ChanceCurve::Values wanted_dbm(std::size_t index) const;
  ChanceCurve::Values percent(std::size_t index, double needed_dbm, double without_amplifier_dbm,
                              const std::vector<Disturbance>& others) const;
  std::optional<std::size_t> avoided(const Measurement& own, const ChanceCurve::Values& percent,
                                     const std::vector<Disturbance>& others) const;
  double needed_dbm(const Measurement& own, bool with_amplifier) const;

  const LinkBudget& budget;
  std::span<const Station> stations;
  std::span<const Measurement> measurements;
  std::array<PatternLookup, 3> tables;  // in the order of Band
  CircleAverage average;
  std::array<bool, ChanceCurve::kHeadings> overloaded = {};
};

ChanceCurves::State::State(const Survey& survey)
    : budget(survey.state_->budget),
      stations(survey.state_->stations),
      measurements(survey.state_->measurements),
      tables{PatternLookup(budget.receiver().gear.antenna.low_vhf.pattern),
             PatternLookup(budget.receiver().gear.antenna.high_vhf.pattern),
             PatternLookup(budget.receiver().gear.antenna.uhf.pattern)},
      average(budget.receiver().heading_error_deg) {
  if (budget.receiver().gear.amplifier) find_overload();
}

void ChanceCurves::State::find_overload() {
  const Receiver& receiver = budget.receiver();
  const auto towers_dbm = gear::near_towers_dbm(receiver.gear.antenna, receiver.towers);
  ChanceCurve::Values sum_mw = {};
  if (towers_dbm) sum_mw.fill(milliwatts(*towers_dbm));
  for (const Measurement& each : measurements) {
    if (!each.heard()) continue;
    const double aimed_mw = milliwatts(exactly_aimed_dbm(each) + each.detail.local.side_db);
    const ChanceCurve::Values response = table(each).response(each.outlook.bearing);
    for (std::size_t h = 0; h < sum_mw.size(); ++h) sum_mw[h] += aimed_mw * response[h];
  }
  for (std::size_t h = 0; h < sum_mw.size(); ++h) {
    const std::array sum_dbm{dbm(sum_mw[h])};
    overloaded[h] = sum_mw[h] > 0.0 && gear::overload(receiver.gear, sum_dbm).has_value();
  }
}

// For exact aim.
double ChanceCurves::State::weighted_dbm(const Disturbance& other) const {
  return other.on_axis.median_dbm + measurements[other.station].detail.heading_db + other.ratio_db;
}

// The station's power with the axis exactly at each heading, with its helpers'.
ChanceCurve::Values ChanceCurves::State::wanted_dbm(std::size_t index) const {
  const Measurement& own = measurements[index];
  ChanceCurve::Values values = table(own).response_db(own.outlook.bearing);
  for (double& value : values) value += exactly_aimed_dbm(own);
  std::vector<std::size_t> helpers;
  find_helpers(stations, measurements, index, helpers);
  for (const std::size_t helper : helpers) {
    const Measurement& other = measurements[helper];
    const ChanceCurve::Values more_db = table(other).response_db(other.outlook.bearing);
    for (std::size_t h = 0; h < values.size(); ++h) {
      values[h] = dbm(milliwatts(values[h]) + milliwatts(exactly_aimed_dbm(other) + more_db[h]));
    }
  }
  return values;
}

double ChanceCurves::State::needed_dbm(const Measurement& own, bool with_amplifier) const {
  const gear::ReceiveChain chain = budget.chain(own, with_amplifier);
  return chain.noise_power_dbm + chain.required_cn_db;
}

// With the axis exactly at each heading.
ChanceCurve::Values ChanceCurves::State::percent(std::size_t index, double needed_dbm,
                                                 double without_amplifier_dbm,
                                                 const std::vector<Disturbance>& others) const {
  const Measurement& own = measurements[index];
  Deviations deviations = own.outlook.deviations;
  deviations.heading_db = 0.0;
  const Spread spread = own_spread(deviations);
  ChanceCurve::Values values = wanted_dbm(index);
  struct Rival {
    const Disturbance& disturbance;
    double aimed_dbm;
    ChanceCurve::Values response_db;
  };
  std::vector<Rival> rivals;
  SameSite site;  // the same at every heading: both come from one direction
  for (const Disturbance& other : others) {
    if (other.same_site) {
      site.add(milliwatts(weighted_dbm(other)), milliwatts(exactly_aimed_dbm(own)),
               other.on_axis.deviation_db);
    } else {
      const Measurement& measurement = measurements[other.station];
      rivals.push_back({other, weighted_dbm(other),
                        table(measurement).response_db(measurement.outlook.bearing)});
    }
  }
  FromElsewhere elsewhere(stations);
  for (std::size_t h = 0; h < values.size(); ++h) {
    elsewhere.clear();
    for (const Rival& rival : rivals) {
      elsewhere.add(rival.disturbance.station, {rival.aimed_dbm + rival.response_db[h],
                                                rival.disturbance.on_axis.deviation_db});
    }
    Rivals against{.needed_alone_dbm = overloaded[h] ? without_amplifier_dbm : needed_dbm,
                   .site = site};
    elsewhere.put_into(against);
    values[h] = Requirement(against).chance_percent(values[h], spread);
  }
  return values;
}

std::optional<std::size_t> ChanceCurves::State::avoided(
    const Measurement& own, const ChanceCurve::Values& percent,
    const std::vector<Disturbance>& others) const {
  const ChanceCurve curve(own.outlook.bearing, percent);
  const auto best = std::max_element(percent.begin(), percent.end());
  if (*best < curve.percent_at(own.outlook.bearing) + kWorthTelling_percent) return std::nullopt;
  const auto heading = Bearing<True>::degrees(static_cast<double>(best - percent.begin()));
  std::optional<std::size_t> most;
  double most_mw = 0.0;
  for (const Disturbance& other : others) {
    if (other.same_site) continue;
    const Outlook& outlook = measurements[other.station].outlook;
    const auto response = [&](Bearing<True> axis) {
      return milliwatts(budget.off_axis_db(outlook.band, outlook.bearing - axis));
    };
    const double less_mw =
        milliwatts(weighted_dbm(other)) * (response(own.outlook.bearing) - response(heading));
    if (less_mw <= most_mw) continue;
    most_mw = less_mw;
    most = other.station;
  }
  return most;
}

ChanceCurves::ChanceCurves(const Survey& survey) : state_(std::make_unique<State>(survey)) {}
ChanceCurves::ChanceCurves(ChanceCurves&&) noexcept = default;
ChanceCurves& ChanceCurves::operator=(ChanceCurves&&) noexcept = default;
ChanceCurves::~ChanceCurves() = default;

std::optional<ChanceCurve> ChanceCurves::curve(std::size_t index) const {
  const Measurement& own = state_->measurements[index];
  if (!own.heard() || !own.outlook.chance_percent) return std::nullopt;
  const double needed_dbm = state_->needed_dbm(own, true);
  const double without_amplifier_dbm = state_->needed_dbm(own, false);
  std::vector<Disturbance> others;
  // Too weak to matter is judged without the mean loss already subtracted from the interferer's
  // level.
  find_disturbers(state_->stations, state_->measurements, index, needed_dbm - own.detail.heading_db,
                  others);
  ChanceCurve::Exact exactly{state_->percent(index, needed_dbm, without_amplifier_dbm, others),
                             state_->budget.receiver().heading_error_deg};
  for (double& percent : exactly.percent) {
    percent = std::min(percent, own.outlook.chance_cap_percent);
  }
  const auto exact = std::make_shared<const ChanceCurve::Exact>(exactly);
  const ChanceCurve::Values percent = state_->average(exact->percent);
  return ChanceCurve(own.outlook.bearing, percent, state_->avoided(own, percent, others), exact);
}

std::vector<std::optional<ChanceCurve>> chance_curves(const Survey& survey) {
  const ChanceCurves curves(survey);
  std::vector<std::optional<ChanceCurve>> all;
  all.reserve(survey.size());
  for (std::size_t i = 0; i < survey.size(); ++i) all.push_back(curves.curve(i));
  return all;
}

}  // namespace mastwise::reception
