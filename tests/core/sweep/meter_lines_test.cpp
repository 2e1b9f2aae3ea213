#include "core/sweep/meter_lines.hpp"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;
using aim::MeterKind;
using aim::MeterLines;
using aim::MeterReading;
using aim::MeterState;

namespace {

constexpr Monotonic kStart{milliseconds(5000)};

std::vector<MeterReading> heard(MeterLines& meter, std::string_view text, Monotonic when = kStart) {
  std::vector<MeterReading> readings;
  meter.feed(text, when, [&](const MeterReading& one) { readings.push_back(one); });
  return readings;
}

}  // namespace

// Decibels by definition: 0 dBmV is 60 dBuV; 1 mW in 75 ohm is 273.9 mV, 108.75 dBuV.
TEST_CASE("each kind of a meter's line is read in its unit") {
  MeterLines meter;
  const auto all = heard(meter,
                         "SNR 21.4 dB\nquality 83 %\r\nLEVEL 57.3 dBuV\rLevel -2.7 dBmV\n"
                         "LEVEL -51.45 dBm\nBARS 4 of 5\nBARS 7 of 10\nNONE\n");
  REQUIRE(all.size() == 8);
  CHECK(all[0] == MeterReading{kStart, MeterKind::snr_db, 21.4});
  CHECK(all[1] == MeterReading{kStart, MeterKind::quality_percent, 83.0});
  for (const std::size_t i : {2U, 3U, 4U}) {
    CHECK(all[i].kind == MeterKind::level_dbuv);
    CHECK(all[i].value == Approx(57.3));
  }
  CHECK(all[5] == MeterReading{kStart, MeterKind::bars_of_5, 4.0});
  CHECK(all[6] == MeterReading{kStart, MeterKind::bars_of_10, 7.0});
  CHECK(all[7] == MeterReading{kStart, std::nullopt, 0.0});
}

TEST_CASE("lines that are not a reading are skipped") {
  MeterLines meter;
  CHECK(heard(meter,
              "\n# SNR 20 dB\nSNR 20\nSNR 20 V\nSNR twenty dB\nSNR 101 dB\nQUALITY 101 %\n"
              "QUALITY -1 %\nLEVEL 5 dBW\nBARS 6 of 5\nBARS 3 of 7\nSNR 1e999 dB\nSNR nan dB\n"
              "NONE yet\nSNR 20,5 dB\nSNR 20 dB now\n")
            .empty());
  CHECK(meter.state(kStart) == MeterState::unreadable);
  // A line without end neither grows nor hides the next.
  CHECK(heard(meter, std::string(100'000, 'x')).empty());
  CHECK(heard(meter, "\nSNR 20 dB\n").size() == 1);
}

TEST_CASE("a meter's lines may be cut anywhere") {
  const std::string text = "SNR 21.4 dB\r\nSMOOTHING 1.5 s\r\nDELAY 0.3 s\r\nQUALITY 83 %\r\n";
  MeterLines whole;
  const auto together = heard(whole, text);
  MeterLines pieces;
  std::vector<MeterReading> apart;
  for (const char byte : text) {
    for (const MeterReading& one : heard(pieces, {&byte, 1})) apart.push_back(one);
  }
  CHECK(apart == together);
  CHECK(pieces == whole);
  CHECK(whole.timing() == aim::MeterTiming{milliseconds(1500), milliseconds(300)});
  heard(whole, "SMOOTHING 11 s\nDELAY 1\nSMOOTHING 1 min\n");
  CHECK(whole.timing() == aim::MeterTiming{milliseconds(1500), milliseconds(300)});
}

TEST_CASE("a meter's state tells silent, unreadable, stale and speaking apart") {
  MeterLines meter;
  CHECK(meter.state(kStart) == MeterState::silent);
  heard(meter, "hello\n");
  CHECK(meter.state(kStart) == MeterState::unreadable);
  heard(meter, "QUALITY 50 %\n");
  CHECK(meter.state(kStart + milliseconds(2999)) == MeterState::speaking);
  CHECK(meter.state(kStart + milliseconds(3000)) == MeterState::stale);
  CHECK_FALSE(meter.latest(kStart + milliseconds(3000)));
  heard(meter, "garbage\n", kStart + milliseconds(4000));
  CHECK(meter.state(kStart + milliseconds(4000)) == MeterState::unreadable);
}

TEST_CASE("a meter that sends several kinds is used by its best") {
  MeterLines meter;
  heard(meter, "LEVEL 57 dBuV\n");
  CHECK(meter.kind(kStart) == MeterKind::level_dbuv);
  heard(meter, "QUALITY 40 %\n");
  CHECK(meter.kind(kStart) == MeterKind::quality_percent);
  heard(meter, "SNR 18 dB\n");
  CHECK(meter.kind(kStart) == MeterKind::snr_db);
  CHECK(meter.latest(kStart)->value == 18.0);
  heard(meter, "LEVEL 58 dBuV\n", kStart + milliseconds(3500));
  CHECK(meter.kind(kStart + milliseconds(3500)) == MeterKind::level_dbuv);
  heard(meter, "NONE\n", kStart + milliseconds(3600));
  CHECK_FALSE(meter.latest(kStart + milliseconds(3600))->kind);
  CHECK(aim::scale_of(MeterKind::level_dbuv) == aim::Scale::decibel);
  CHECK(aim::scale_of(MeterKind::bars_of_10) == aim::Scale::bars_of_10);
}
