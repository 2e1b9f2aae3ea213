#pragma once

#include "core/nmea/dates.hpp"
#include "core/nmea/fix.hpp"
#include "core/nmea/framing.hpp"
#include "core/nmea/timed.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace mastwise::nmea {

// The state decoded from the bytes of one device: a plain value that can be copied and compared.
// The same bytes at the same times give the same receiver, however the bytes are cut.
//
// - A void sentence never moves the position. Neither does dead reckoning, a typed or a simulated
// one.
// - Each UTC epoch gives one position: the first good sentence's. A time that does not advance
// gives none, so that the position of a receiver that repeats itself becomes stale.
// - Position, speed, course and precision come from one source until it has been stale for
// kPositionLifetime. All satellite talkers (GP, GL, GA, GB, GN...) are one source, since one
// receiver switches among them; every other talker is a separate source.
class Receiver {
 public:
  // `date_floor`: see repair_date.
  explicit Receiver(sys_days date_floor) : dates_(date_floor) {}

  // Reads the next bytes of the stream. `now` must not run backward.
  void feed(std::string_view bytes, Monotonic now);

  Fix fix(Monotonic now) const;
  HeadingSensor heading(Monotonic now) const;
  // The latest trusted date, with the shift that repaired it.
  const std::optional<RepairedDate>& date() const { return dates_.trusted(); }
  const SentenceCounts& counts() const { return framer_.counts(); }
  bool operator==(const Receiver&) const = default;

  static constexpr milliseconds kPositionLifetime{3000};
  static constexpr milliseconds kHeadingLifetime{3000};
  // Some receivers send these only with every fifth epoch.
  static constexpr milliseconds kPrecisionLifetime{10000};

 private:
  struct Epoch {
    TimeOfDay time;
    Monotonic began;
    FixQuality quality;
    bool operator==(const Epoch&) const = default;
  };
  struct Motion {
    double speed_mps;
    std::optional<Bearing<True>> course;
    bool operator==(const Motion&) const = default;
  };

  void take(const Report& report, Monotonic now);
  void take_heading(const Report& report, Monotonic now);
  void take_position(const Report& report, Monotonic now);
  void begin_epoch(const Report& report, Monotonic now);
  void forget_source();
  void take_precision(const Report& report, Monotonic now);
  void take_motion(const Report& report, Monotonic now);
  bool hears(std::string_view source, Monotonic now) const;
  bool is_later_epoch(TimeOfDay time, Monotonic now) const;
  bool has_fix(Monotonic now) const;
  FixTrouble trouble_of(const Report& report, Monotonic now) const;
  FixTrouble trouble(Monotonic now) const;

  Framer framer_;
  Timed<bool> bytes_{kPositionLifetime};     // any byte
  Timed<bool> sentence_{kPositionLifetime};  // any with a correct checksum
  std::string source_;                       // of the position
  std::optional<Epoch> epoch_;               // of the last good position
  Timed<Position> position_{kPositionLifetime};
  Timed<FixTrouble> trouble_{kPositionLifetime};  // of the sentences since the last good position
  std::uint64_t positions_taken_ = 0;
  Timed<Motion> motion_{kPositionLifetime};
  Timed<FixQuality> quality_{kPrecisionLifetime};
  Timed<int> satellites_{kPrecisionLifetime};
  Timed<int> dimensions_{kPrecisionLifetime};
  Timed<double> hdop_{kPrecisionLifetime};
  Timed<double> error_m_{kPrecisionLifetime};
  Timed<double> altitude_m_{kPrecisionLifetime};
  Timed<Declination> declination_{kPrecisionLifetime};
  Timed<Bearing<True>> true_heading_{kHeadingLifetime};
  Timed<Bearing<Magnetic>> magnetic_heading_{kHeadingLifetime};
  Timed<Declination> heading_declination_{kHeadingLifetime};
  std::uint64_t headings_taken_ = 0;
  DateKeeper dates_;
};

}  // namespace mastwise::nmea
