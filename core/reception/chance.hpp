#pragma once

#include <cstdint>
#include <string_view>

namespace mastwise::reception {

// The words for a chance, from certain to hopeless.
enum class ChanceWord : std::uint8_t { steady, likely, even_odds, long_shot, out_of_reach };

// 90 % and more is steady, 70 likely, 40 even odds, 10 a long shot, below that out of reach. The
// displayed percentage counts, rounded to whole percent: 89.5 is 90 and steady.
ChanceWord chance_word(double percent);

// "steady", "likely", "even odds", "long shot", "out of reach".
std::string_view to_text(ChanceWord word);

// Uncertainty of one station's margin, as standard deviations in dB, assumed independent and
// normally distributed.
struct Deviations {
  double location_db = 0.0;      // from spot to spot around the computed one
  double time_db = 0.0;          // from evening to evening
  double model_db = 0.0;         // differences between paths that a model sees as equal
  double ground_db = 0.0;        // what unknown ground may hold
  double heading_db = 0.0;       // variation of the antenna's loss with the heading error
  double station_db = 0.0;       // of an unknown pattern of the transmitter
  double interference_db = 0.0;  // the same spreads of interfering stations, weighted
  double logbook_db = 0.0;       // of the gear, or of the logbook's correction
  double noise_db = 0.0;         // of man-made noise, by its share of all noise
  bool operator==(const Deviations&) const = default;
  double total_db() const;  // root of the sum of squares
};

// P(margin > 0) in percent for a median margin in dB: 100 Phi(margin / deviation). A median margin
// of 0 is 50 %. The deviation is positive.
double chance_percent(double margin_db, double deviation_db);

// The distribution of a margin around its median.
struct Spread {
  double deviation_db = 0.0;  // of the normal part
  // Besides, the station's loss by an unknown pattern varies around its mean (unknown_pattern.hpp).
  bool unknown_pattern = false;
};
double chance_percent(double margin_db, const Spread& spread);

// Where this share of the path and more has terrain, no chance is capped.
inline constexpr double kKnownEnough = 0.9;

// The highest chance to show where only this share of the path, within [0, 1], has terrain. Below
// 90 % nothing is steady; below 50 % nothing is likely either, unless the chance over rough ground
// is (own choice, checked by taking away tiles in tests/app/service/missing_tiles_test.cpp). 100 if
// all is known.
double chance_cap_percent(double terrain_coverage, double rough_percent);

// The highest chance of a station that the TV may be unable to decode: less than likely (own
// choice: what the TV may not show is never ranked as likely).
inline constexpr double kMayNotDecode_percent = 69.0;

}  // namespace mastwise::reception
