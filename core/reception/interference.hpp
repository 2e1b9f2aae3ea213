#pragma once

#include "core/reception/link_budget.hpp"
#include "core/reception/measurement.hpp"
#include "core/reception/rivals.hpp"

#include <optional>
#include <span>
#include <vector>

namespace mastwise::reception {

// The spread of the ratio of two signals from one site: what remains of both fadings between
// neighboring channels [own choice].
inline constexpr double kSameSiteDeviation_db = 2.0;

// A station that interferes with another one.
struct Disturbance {
  std::size_t station = 0;  // its index in the survey
  bool same_channel = false;
  // From the wanted station's site: it fades with the wanted signal.
  bool same_site = false;
  // At the antenna's terminals, with the axis on the interferer, including the heading error. Its
  // deviation is that of the field over places, evenings and models; from the same site, of the
  // ratio to the wanted signal.
  Level on_axis = {};
  double ratio_db = 0.0;  // required protection of the wanted station against it
};

// Finds the stations that interfere with the wanted one if the antenna's axis is on them, and
// stores them in `found`. `needed_dbm` is the wanted station's requirement without them; stations
// that could not take 0.01 dB off its margin even on their strongest evenings in ten are left out.
void find_disturbers(std::span<const Station> stations, std::span<const Measurement> measurements,
                     std::size_t wanted, double needed_dbm, std::vector<Disturbance>& found);

// Other transmitters of the wanted station's program on its channel whose signals the receiver adds
// to the wanted one: those of the same call sign, from another site, whose way to the stop differs
// by no more than the standard's guard interval allows (OFDM), or the equalizer (ATSC 1.0).
void find_helpers(std::span<const Station> stations, std::span<const Measurement> measurements,
                  std::size_t wanted, std::vector<std::size_t>& found);

// The weighted powers of interfering stations from other sites. Those of one site fade together and
// are added first. Of the sites the one that is strongest for a tenth of the time stays apart,
// because a sum of powers with different spreads is not normal in dB.
class FromElsewhere {
 public:
  explicit FromElsewhere(std::span<const Station> stations) : stations_(stations) {}
  void clear() { sites_.clear(); }
  void add(std::size_t station, const Level& weighted);
  // Their part of a station's rivals.
  void put_into(Rivals& rivals) const;

 private:
  struct Site {
    std::size_t station;
    Level level;
  };
  std::span<const Station> stations_;
  std::vector<Site> sites_ = {};
};

// What a station would compete with if one of the others were not there, with the antenna aimed at
// it. The measurement has its own power and its helpers'.
Rivals rivals_without(const LinkBudget& budget, std::span<const Station> stations,
                      std::span<const Measurement> measurements, std::size_t wanted,
                      std::size_t without);

// The mutual effects of stations at the stop, with the antenna aimed at the wanted one.
//
// Overload: the median powers of all stations through the antenna's pattern, summed. If they
// overload the amplifier, the wanted station is computed without it, and the reasons advise to turn
// it off. Stations 40 dB and more below the limit on the antenna's axis are left out: 400 of them
// together would be 14 dB below it. Near towers of other services count on the antenna's axis at
// every heading, since nobody said where they stand.
//
// Interference from the wanted station's own site: both signals cross the same ground and fade
// together, so the wanted one keeps its median lead. With w the interferer's weighted share of the
// wanted power, D >= N + w D, and the requirement grows by 1 / (1 - w).
//
// Interference from elsewhere: the median fields on the same and on neighboring channels with their
// spreads, through the pattern, weighted by protection.hpp and independent of the wanted signal
// (rivals.hpp). A station on the same channel within some 500 m counts as the wanted one. One of
// the same call sign or multiplex elsewhere adds to the wanted power, or interferes if its echo is
// too late.
//
// What overloads or interferes counts as if no obstacle of the ring stood on its side: a person's
// marks are too rough to promise shelter, and a marked obstacle never raises a chance.
class Interference {
 public:
  Interference(const LinkBudget& budget, std::span<const Station> stations)
      : budget_(budget), stations_(stations) {}

  // Computes the effects of all measured stations on each other.
  void weigh(std::span<Measurement> measurements);

 private:
  void find_strong(std::span<const Measurement> measurements);
  void check_overload(std::span<Measurement> measurements, std::size_t wanted);
  void add_up(std::span<Measurement> measurements, std::size_t wanted);
  double helped_db(std::span<const Measurement> measurements, std::size_t wanted);

  const LinkBudget& budget_;
  std::span<const Station> stations_;
  std::vector<std::size_t> strong_ = {};
  std::optional<double> towers_dbm_ = {};
  std::vector<double> powers_dbm_ = {};
  std::vector<Disturbance> disturbers_ = {};
  std::vector<std::size_t> helpers_ = {};
  FromElsewhere elsewhere_{stations_};
};

}  // namespace mastwise::reception
