#pragma once

#include "core/sweep/sweep.hpp"
#include "core/time.hpp"

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

// The text that a signal meter sends, one reading a line:
//
//   SNR 21.4 dB         signal to noise, -50 to 100 dB
//   QUALITY 83 %        0 to 100
//   LEVEL 57.3 dBuV     or dBmV, or dBm; 75 ohm; -200 to 200 in its unit
//   BARS 4 of 5         or of 10
//   NONE                the receiver has no lock
//   SMOOTHING 1.5 s     the time constant of the meter's averaging, 0 to 10 s; 1 s until it is
//   given DELAY 0.3 s         from the antenna to the line, 0 to 10 s; 0 until it is given # a
//   remark          skipped, like an empty line
//
// ASCII, words in any case, separated by blanks, the unit after a blank; a point as decimal mark;
// lines end with LF, CR or both and have at most 80 characters. Two to ten readings a second are
// best. A meter without a reading for 3 seconds counts as silent. A meter may send several kinds;
// a sweep uses one.
namespace mastwise::aim {

// In the order in which a sweep prefers them: error ratio before strength [ATSC A/74, 2010, has
// receivers fail by C/N, not by level].
enum class MeterKind : std::uint8_t { snr_db, quality_percent, level_dbuv, bars_of_5, bars_of_10 };
inline constexpr std::size_t kMeterKinds = 5;

// The scale of the sweep that such readings make.
Scale scale_of(MeterKind kind);

// Lag of a meter behind the antenna.
struct MeterTiming {
  milliseconds smoothing{1000};  // time constant [common practice, no source]
  milliseconds delay{0};
  bool operator==(const MeterTiming&) const = default;
};

// One reading; without a kind the receiver has no lock, in any kind.
struct MeterReading {
  Monotonic when = {};
  std::optional<MeterKind> kind = {};
  double value = 0.0;  // in the kind's unit
  bool operator==(const MeterReading&) const = default;
};

enum class MeterState : std::uint8_t { silent, unreadable, stale, speaking };

// What a meter has said: a plain value that can be copied and compared. The same bytes at the same
// times give the same state, however the bytes are cut.
class MeterLines {
 public:
  static constexpr milliseconds kLifetime{3000};
  static constexpr std::size_t kLongestLine = 80;

  // Reads the next bytes; `hear` gets each reading. `now` must not run backward.
  void feed(std::string_view bytes, Monotonic now,
            const std::function<void(const MeterReading&)>& hear);

  MeterState state(Monotonic now) const;
  // The kind to use: the preferred one of those heard within kLifetime.
  std::optional<MeterKind> kind(Monotonic now) const;
  // The latest reading of that kind, or that there is no lock, if that is newer; std::nullopt
  // unless the meter speaks.
  std::optional<MeterReading> latest(Monotonic now) const;
  const MeterTiming& timing() const { return timing_; }
  bool operator==(const MeterLines&) const = default;

 private:
  std::optional<MeterReading> read_line(Monotonic now);

  std::string line_ = {};
  bool too_long_ = false;
  std::optional<Monotonic> bytes_ = {};    // the last ones
  std::optional<Monotonic> reading_ = {};  // the last one
  std::array<std::optional<MeterReading>, kMeterKinds> heard_ = {};
  std::optional<MeterReading> no_lock_ = {};
  MeterTiming timing_ = {};
};

}  // namespace mastwise::aim
