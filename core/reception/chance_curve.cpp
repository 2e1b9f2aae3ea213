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

// The interference on a station at each heading.
struct Disturbed {
  ChanceCurve::Values sum_mw = {};
  ChanceCurve::Values spread = {};  // sum of squares of weighted power times deviation
  SameSite site = {};               // the same at every heading: both come from one direction
};

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
  double weighted_mw(const Disturbance& other) const;
  void find_overload();
  Disturbed disturbed(const Measurement& own, const std::vector<Disturbance>& others) const;
  ChanceCurve::Values percent(const Measurement& own, double needed_mw, double needed_alone_mw,
                              const std::vector<Disturbance>& others) const;
  std::optional<std::size_t> avoided(const Measurement& own, const ChanceCurve::Values& percent,
                                     const std::vector<Disturbance>& others) const;
  double needed_mw(const Measurement& own, bool with_amplifier) const;

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
  ChanceCurve::Values sum_mw = {};
  for (const Measurement& each : measurements) {
    if (!each.heard()) continue;
    const double aimed_mw = milliwatts(exactly_aimed_dbm(each));
    const ChanceCurve::Values response = table(each).response(each.outlook.bearing);
    for (std::size_t h = 0; h < sum_mw.size(); ++h) sum_mw[h] += aimed_mw * response[h];
  }
  for (std::size_t h = 0; h < sum_mw.size(); ++h) {
    const std::array sum_dbm{dbm(sum_mw[h])};
    overloaded[h] = sum_mw[h] > 0.0 && gear::overload(budget.receiver().gear, sum_dbm).has_value();
  }
}

// For exact aim.
double ChanceCurves::State::weighted_mw(const Disturbance& other) const {
  return milliwatts(other.on_axis_dbm + measurements[other.station].detail.heading_db +
                    other.ratio_db);
}

Disturbed ChanceCurves::State::disturbed(const Measurement& own,
                                         const std::vector<Disturbance>& others) const {
  Disturbed result;
  for (const Disturbance& other : others) {
    const Measurement& measurement = measurements[other.station];
    const double aimed_mw = weighted_mw(other);
    if (other.same_site) {
      result.site.add(aimed_mw, milliwatts(exactly_aimed_dbm(own)), other.deviation_db);
      continue;
    }
    const double deviation_squared = other.deviation_db * other.deviation_db;
    const ChanceCurve::Values response = table(measurement).response(measurement.outlook.bearing);
    for (std::size_t h = 0; h < response.size(); ++h) {
      const double weighted_mw = aimed_mw * response[h];
      result.sum_mw[h] += weighted_mw;
      result.spread[h] += weighted_mw * weighted_mw * deviation_squared;
    }
  }
  return result;
}

double ChanceCurves::State::needed_mw(const Measurement& own, bool with_amplifier) const {
  const gear::ReceiveChain chain = budget.chain(own, with_amplifier);
  return milliwatts(chain.noise_power_dbm + chain.required_cn_db);
}

// With the axis exactly at each heading.
ChanceCurve::Values ChanceCurves::State::percent(const Measurement& own, double needed_mw,
                                                 double needed_alone_mw,
                                                 const std::vector<Disturbance>& others) const {
  Deviations deviations = own.outlook.deviations;
  deviations.heading_db = deviations.interference_db = 0.0;
  const double own_deviation_db = deviations.total_db();
  const double aimed_dbm = exactly_aimed_dbm(own);
  ChanceCurve::Values values = table(own).response_db(own.outlook.bearing);
  if (others.empty()) {
    const double needed_dbm = dbm(needed_mw);
    const double needed_alone_dbm = dbm(needed_alone_mw);
    for (std::size_t h = 0; h < values.size(); ++h) {
      values[h] =
          chance_percent(aimed_dbm + values[h] - (overloaded[h] ? needed_alone_dbm : needed_dbm),
                         own_deviation_db);
    }
    return values;
  }
  const Disturbed disturbed = this->disturbed(own, others);
  for (std::size_t h = 0; h < values.size(); ++h) {
    const double against_mw = (overloaded[h] ? needed_alone_mw : needed_mw) + disturbed.sum_mw[h];
    const double deviation_db = std::sqrt(own_deviation_db * own_deviation_db +
                                          disturbed.spread[h] / (against_mw * against_mw));
    values[h] =
        disturbed.site.chance_percent(aimed_dbm + values[h] - dbm(against_mw), deviation_db);
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
    const double less_mw = weighted_mw(other) * (response(own.outlook.bearing) - response(heading));
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
  const double needed_mw = state_->needed_mw(own, true);
  const double needed_alone_mw = state_->needed_mw(own, false);
  std::vector<Disturbance> others;
  // Too weak to matter is judged without the mean loss already subtracted from the interferer's
  // level.
  find_disturbers(state_->stations, state_->measurements, index,
                  dbm(needed_mw) - own.detail.heading_db, others);
  ChanceCurve::Exact exactly{state_->percent(own, needed_mw, needed_alone_mw, others),
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
