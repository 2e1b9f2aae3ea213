#include "core/reception/reasons.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace mastwise::reception {
namespace {

constexpr double kLeastCost_db = 1.0;
constexpr double kLeastFading_db = 6.0;
constexpr double kLeastSpread_db = 6.0;
constexpr double kLeastRoughGround_db = 3.0;
constexpr double kAmplifier_db = 15.0;  // what a usual amplifier gives [cp: 12 to 20 dB]

class Collector {
 public:
  Collector(const Receiver& receiver, std::span<const Station> stations,
            std::span<const Measurement> measurements, std::size_t index, Lengths lengths)
      : receiver_(receiver),
        stations_(stations),
        measurements_(measurements),
        station_(stations[index]),
        measurement_(measurements[index]),
        outlook_(measurement_.outlook),
        detail_(measurement_.detail),
        lengths_(lengths) {}

  std::vector<Reason> collect();

 private:
  void add(ReasonKind kind, double decibel, std::string text) {
    found_.push_back({kind, decibel, std::move(text)});
  }
  void cost(ReasonKind kind, double decibel, std::string text) {
    if (decibel >= kLeastCost_db) add(kind, decibel, std::move(text));
  }
  std::string distance(double distance_m) const { return distance_words(distance_m, lengths_); }
  std::string height(double height_m) const { return height_words(height_m, lengths_); }

  void missing_fact();
  void ground();
  void stop();
  void gear();
  void others();
  void uncertain();
  void notes();

  const Receiver& receiver_;
  std::span<const Station> stations_;
  std::span<const Measurement> measurements_;
  const Station& station_;
  const Measurement& measurement_;
  const Outlook& outlook_;
  const Detail& detail_;
  Lengths lengths_;
  std::vector<Reason> found_ = {};
};

void Collector::missing_fact() {
  const auto note = [this](std::string text) {
    add(ReasonKind::unknown_fact, 0.0, std::move(text));
  };
  switch (detail_.missing) {
    case Missing::nothing:
      break;
    case Missing::channel:
      return note(
          fmt::format("RF channel {} is not one of the raster", to_text(station_.rf_channel)));
    case Missing::power:
      return note("the station's power is not known, so its field cannot be told");
    case Missing::height:
      return note("the height of the station's antenna is not known");
    case Missing::distance:
      return note(fmt::format("only {:.0f} m from the transmitter: too near to compute",
                              outlook_.distance_m));
    case Missing::model:
      return note("the heights on this path are beyond what the models take");
  }
}

// The worst edge is counted as the Bullington construction counts a whole path of that one edge
// [Recommendations ITU-R P.526 section 4.5 and P.1812 (21)], the others as knife edges; together
// they cost no more than the models say, and what is left is the ground's.
void Collector::ground() {
  const double excess_db = std::max(0.0, detail_.excess_db);
  const auto whole_cost_db = [this](const Obstacle& obstacle) {
    const double loss_db = obstacle.loss_db;
    if (&obstacle != outlook_.obstacles.begin()) return loss_db;
    const double distance_km = outlook_.distance_m / 1000.0;
    return loss_db + (1.0 - std::exp(-loss_db / 6.0)) * (10.0 + 0.02 * distance_km);
  };
  double sum_db = 0.0;
  for (const Obstacle& obstacle : outlook_.obstacles) sum_db += whole_cost_db(obstacle);
  const double share = sum_db > excess_db ? excess_db / sum_db : 1.0;
  double rest_db = excess_db - share * sum_db;
  for (const Obstacle& obstacle : outlook_.obstacles) {
    double cost_db = share * whole_cost_db(obstacle);
    if (&obstacle == outlook_.obstacles.begin() && obstacle.earth_curve) {
      cost_db += std::exchange(rest_db, 0.0);
    }
    cost(ReasonKind::obstacle, cost_db,
         fmt::format("{}, costs {:.0f} dB", obstacle_words(obstacle, lengths_), cost_db));
  }
  if (rest_db >= kLeastRoughGround_db) {
    add(ReasonKind::rough_ground, rest_db,
        fmt::format("{} over {} costs {:.0f} dB{}",
                    outlook_.mode == PathMode::area ? "ordinary hilly ground" : "uneven ground",
                    distance(outlook_.distance_m), rest_db,
                    outlook_.obstacles.empty() ? "" : " more"));
  }
  if (outlook_.mode == PathMode::point_to_point && outlook_.obstacles.empty()) {
    add(ReasonKind::clear_line, 0.0,
        fmt::format("nothing in the way over {}", distance(outlook_.distance_m)));
  }
}

void Collector::stop() {
  const SurroundingsFigures around = figures(receiver_.surroundings);
  const double local_db = detail_.local.surroundings_db;
  if (around.built) {
    cost(ReasonKind::surroundings, local_db,
         fmt::format("{} around the stop, {} high against an antenna at {}, costs {:.0f} dB",
                     to_text(receiver_.surroundings), height(around.clutter_height_m),
                     height(receiver_.gear.height_m), local_db));
  } else {
    cost(ReasonKind::surroundings, local_db,
         fmt::format("an antenna only {} above the ground of the stop costs {:.0f} dB",
                     height(receiver_.gear.height_m), local_db));
  }
  const double leaves_m = receiver_.leaves_m.value_or(around.leaves_m);
  cost(ReasonKind::leaves, detail_.local.leaves_db,
       fmt::format("{} of leaves in front at the stop cost {:.0f} dB", height(leaves_m),
                   detail_.local.leaves_db));
  if (detail_.external_noise_db >= kLeastCost_db) {
    add(ReasonKind::noise, detail_.external_noise_db,
        fmt::format("noise at {:.0f} MHz ({} surroundings) costs {:.0f} dB", outlook_.frequency_mhz,
                    to_text(around.noise), detail_.external_noise_db));
  }
}

void Collector::gear() {
  cost(ReasonKind::polarization, detail_.polarization_db,
       fmt::format("sent {}, received {}: costs {:.0f} dB",
                   receiver_.gear.antenna.horizontal ? "upright" : "level",
                   receiver_.gear.antenna.horizontal ? "level" : "upright",
                   detail_.polarization_db));
  cost(ReasonKind::aim, detail_.heading_db,
       fmt::format("a heading give or take {:.0f} degrees costs {:.0f} dB on this beam",
                   receiver_.heading_error_deg, detail_.heading_db));
  if (detail_.overload_db > 0.0) {
    add(ReasonKind::overload, detail_.overload_db,
        fmt::format("strong signals add up to {:.0f} dBm, {:.0f} dB over what the amplifier bears: "
                    "turn the amplifier off",
                    detail_.overload_sum_dbm, detail_.overload_db));
  }
  const double short_db = -outlook_.margin_db.value_or(0.0);
  if (short_db < kLeastCost_db) return;
  const auto amplifiers = std::lround(std::floor(short_db / kAmplifier_db));
  std::string worth;
  if (amplifiers == 1) worth = ", one amplifier's worth";
  if (amplifiers > 1) worth = fmt::format(", {} amplifiers' worth", amplifiers);
  add(ReasonKind::shortfall, short_db,
      fmt::format("{:.0f} dB short of a picture at the stop{}", short_db, worth));
}

void Collector::others() {
  const auto level = [](double over_db) {
    return over_db >= 0.0 ? fmt::format("{:.0f} dB over it", over_db)
                          : fmt::format("{:.0f} dB under it", -over_db);
  };
  const auto place = [this](const Disturber& disturber) {
    const Station& other = stations_[disturber.station];
    return fmt::format("{} {} away",
                       other.call_sign.empty() ? std::string("a station") : other.call_sign,
                       distance(measurements_[disturber.station].outlook.distance_m));
  };
  if (const auto& same = detail_.same_channel) {
    cost(ReasonKind::same_channel, same->cost_db,
         fmt::format("same channel as {}, {}, costs {:.0f} dB", place(*same), level(same->over_db),
                     same->cost_db));
  }
  if (const auto& next = detail_.next_channel) {
    cost(ReasonKind::next_channel, next->cost_db,
         fmt::format("channel next to {}, {}, costs {:.0f} dB", place(*next), level(next->over_db),
                     next->cost_db));
  }
}

void Collector::uncertain() {
  const LearnedBias& learned = receiver_.learned[static_cast<std::size_t>(outlook_.band)];
  if (learned.reason) found_.push_back(*learned.reason);
  const double fall_db = kTenthDeviate * outlook_.deviations.time_db;
  if (fall_db >= kLeastFading_db) {
    add(ReasonKind::fading, fall_db,
        fmt::format("over {} one evening in ten takes {:.0f} dB or more",
                    distance(outlook_.distance_m), fall_db));
  }
  const double spread_db = outlook_.spread_db.value_or(0.0);
  if (spread_db >= kLeastSpread_db) {
    add(ReasonKind::model_spread, spread_db / 2.0,
        fmt::format("the two models differ by {:.0f} dB on these {}", spread_db,
                    distance(outlook_.distance_m)));
  }
  const char* known = "its antenna sends {:.0f} dB less toward here than where it sends most";
  const char* assumed = "a directional station, its pattern not known: {:.0f} dB less assumed";
  cost(ReasonKind::transmitter_pattern, detail_.station_pattern_db,
       fmt::format(fmt::runtime(detail_.station_pattern_known ? known : assumed),
                   detail_.station_pattern_db));
}

void Collector::notes() {
  if (outlook_.mode == PathMode::area) {
    const bool gaps = detail_.without_terrain_m > 0.0;
    add(gaps ? ReasonKind::no_terrain : ReasonKind::unknown_fact, 0.0,
        gaps ? fmt::format("no terrain for {} of {}: ordinary hills assumed",
                           distance(detail_.without_terrain_m), distance(outlook_.distance_m))
             : std::string("the antenna's height above the sea is not known: ordinary hills "
                           "assumed"));
  }
  if (!station_.standard && !outlook_.field_dbuvm) return;
  if (!station_.standard) {
    add(ReasonKind::unknown_fact, 0.0,
        fmt::format("standard not told, taken for {}", to_text(measurement_.standard)));
  }
  for (const std::string_view warning : itm::words(detail_.itm_warnings)) {
    add(ReasonKind::model_limit, 0.0, std::string(warning));
  }
}

std::vector<Reason> Collector::collect() {
  missing_fact();
  if (outlook_.field_dbuvm) {
    ground();
    stop();
    gear();
    others();
    uncertain();
  }
  notes();
  std::stable_sort(found_.begin(), found_.end(),
                   [](const Reason& a, const Reason& b) { return a.decibel > b.decibel; });
  return std::move(found_);
}

}  // namespace

std::string distance_words(double distance_m, Lengths lengths) {
  constexpr double kMile_m = 1609.344;
  const bool miles = lengths == Lengths::miles;
  const double value = distance_m / (miles ? kMile_m : 1000.0);
  return fmt::format("{:.{}f} {}", value, value < 99.95 ? 1 : 0, miles ? "mi" : "km");
}

std::string height_words(double height_m, Lengths lengths) {
  constexpr double kFoot_m = 0.3048;
  if (lengths == Lengths::miles) return fmt::format("{:.0f} ft", height_m / kFoot_m);
  return fmt::format("{:.{}f} m", height_m, std::fabs(height_m) < 9.95 ? 1 : 0);
}

std::string obstacle_words(const Obstacle& obstacle, Lengths lengths) {
  const std::string height = height_words(std::fabs(obstacle.above_line_m), lengths);
  return fmt::format("{} {} out, {} {} the line",
                     obstacle.earth_curve ? "the curve of the earth" : "ridge",
                     distance_words(obstacle.distance_m, lengths), height,
                     obstacle.above_line_m >= 0.0 ? "above" : "below");
}

std::vector<Reason> reasons(const Receiver& receiver, std::span<const Station> stations,
                            std::span<const Measurement> measurements, std::size_t index,
                            Lengths lengths) {
  return Collector(receiver, stations, measurements, index, lengths).collect();
}

}  // namespace mastwise::reception
