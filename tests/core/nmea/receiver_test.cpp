#include "core/nmea/receiver.hpp"

#include "tests/support/nmea_text.hpp"

#include <string>

#include <catch2/catch.hpp>
#include <fmt/format.h>

using namespace mastwise;
using namespace mastwise::nmea;
using Catch::Matchers::WithinAbs;
using mastwise::test::sentence;
using namespace std::chrono_literals;

namespace {

const sys_days kReceiverFloor = sys_days(std::chrono::year(2026) / 11 / 25);

// A receiver on a bench: sentences without `$` and checksum, and a manual clock.
struct Bench {
  Receiver receiver{kReceiverFloor};
  Monotonic now{1000s};

  void hear(const std::string& text) { receiver.feed(sentence(text), now); }
  void rmc(int second, char status = 'A', const std::string& latitude = "4426.0000") {
    hear(fmt::format("GPRMC,1200{:02}.00,{},{},N,07140.0000,W,5.0,90.0,011226,,,{}", second, status,
                     latitude, status == 'A' ? 'A' : 'N'));
  }
  Fix fix() const { return receiver.fix(now); }
  FixTrouble why() const { return fix().why_not_good; }
};

}  // namespace

TEST_CASE("a good sentence gives a fix that is stale after three seconds") {
  Bench bench;
  CHECK(bench.why() == FixTrouble::no_data);
  bench.rmc(0);
  REQUIRE(bench.fix().good());
  CHECK_THAT(bench.fix().position->latitude_deg(), WithinAbs(44.0 + 26.0 / 60.0, 1e-9));
  CHECK(bench.fix().age == 0ms);
  CHECK(bench.fix().quality == FixQuality::autonomous);
  CHECK(bench.fix().course == Bearing<True>::degrees(90.0));
  CHECK_THAT(*bench.fix().speed_mps, WithinAbs(5.0 * 1852 / 3600, 1e-9));
  CHECK(bench.fix().time_of_day == TimeOfDay(12h));
  bench.now += 2999ms;
  CHECK(bench.fix().good());
  CHECK(bench.fix().age == 2999ms);
  bench.now += 1ms;
  CHECK(bench.why() == FixTrouble::silent);
  CHECK_FALSE(bench.fix().position);
  CHECK_FALSE(bench.fix().speed_mps);
  CHECK(bench.fix().quality == FixQuality::none);
  CHECK(bench.fix().last_position);
  CHECK(bench.fix().age == 3000ms);
}

TEST_CASE("a void sentence never moves the position and ends the fix at once") {
  const char* void_sentences[] = {
      "GPRMC,120001.00,V,4500.0000,N,07200.0000,W,5.0,90.0,011226,,,N",
      "GPRMC,120001.00,A,4500.0000,N,07200.0000,W,5.0,90.0,011226,,,N",
      "GPGGA,120001.00,4500.0000,N,07200.0000,W,0,00,,,M,,M,,",
      "GPGLL,4500.0000,N,07200.0000,W,120001.00,V,N",
      "GPGLL,4500.0000,N,07200.0000,W,120001.00,A,N",
      "GNGNS,120001.00,4500.0000,N,07200.0000,W,NN,00,,,,,",
      "GPGGA,120001.00,4500.0000,N,07200.0000,W,6,05,1.0,1.0,M,,M,,",
      "GPGGA,120001.00,4500.0000,N,07200.0000,W,7,05,1.0,1.0,M,,M,,",
      "GPGGA,120001.00,4500.0000,N,07200.0000,W,8,05,1.0,1.0,M,,M,,",
      "GPRMC,120001.00,V,4500.0000,N,07200.0000,W,5.0,90.0,011226,,,E",
      "GPGLL,4500.0000,N,07200.0000,W,120001.00,A,S",
  };
  for (const char* text : void_sentences) {
    INFO(text);
    Bench bench;
    bench.rmc(0);
    const auto before = bench.fix().last_position;
    bench.now += 1s;
    bench.hear(text);
    CHECK_FALSE(bench.fix().good());
    CHECK(bench.fix().last_position == before);
    CHECK(bench.fix().positions_taken == 1);
    Bench cold;
    cold.hear(text);
    CHECK_FALSE(cold.fix().last_position);
    CHECK_FALSE(cold.fix().time_of_day);
  }
}

TEST_CASE("every trouble has its reason") {
  Bench bench;
  bench.receiver.feed("\x80\xff noise", bench.now);
  CHECK(bench.why() == FixTrouble::not_nmea);
  bench.receiver.feed("$GPGGA,120000,4426.0,N,07140.0,W,1,05\r\n", bench.now);
  CHECK(bench.why() == FixTrouble::no_checksums);
  CHECK_FALSE(bench.fix().last_position);
  bench.receiver.feed("$GPGGA,120000,4426.0,N,07140.0,W,1,05*00\r\n", bench.now);
  CHECK(bench.why() == FixTrouble::damaged);
  bench.hear("HCHDM,238.5,M");
  CHECK(bench.why() == FixTrouble::no_position_reports);
  bench.hear("GPGGA,120000.00,,,,,0,03,,,M,,M,,");
  CHECK(bench.why() == FixTrouble::receiver_says_void);
  CHECK(bench.fix().satellites == 3);
  bench.hear("GPGGA,120000.00,,,,,0,00,,,M,,M,,");
  CHECK(bench.why() == FixTrouble::no_satellites);
  bench.hear("GPGGA,120000.00,4426.0,N,07140.0,W,6,05,,,M,,M,,");
  CHECK(bench.why() == FixTrouble::estimated);
  bench.hear("GPGGA,120000.00,4426.0,N,07140.0,W,7,05,,,M,,M,,");
  CHECK(bench.why() == FixTrouble::manual);
  bench.hear("GPGGA,120000.00,4426.0,N,07140.0,W,8,05,,,M,,M,,");
  CHECK(bench.why() == FixTrouble::simulator);
  bench.hear("GPGGA,120000.00,8960.0,N,00000.0,E,1,05,,,M,,M,,");
  CHECK(bench.why() == FixTrouble::impossible_position);
  bench.hear("GPGGA,,4426.0,N,07140.0,W,1,05,,,M,,M,,");
  CHECK(bench.why() == FixTrouble::no_time);
  bench.now += 42s;
  CHECK(bench.why() == FixTrouble::silent);
  CHECK(bench.fix().silent_for == 42s);
  bench.rmc(0);
  CHECK(bench.why() == FixTrouble::none);
  bench.now += 4s;
  bench.receiver.feed("\x80\xff noise", bench.now);
  CHECK(bench.why() == FixTrouble::damaged);
}

TEST_CASE("each UTC epoch gives only its first position") {
  Bench bench;
  bench.rmc(0);
  bench.hear("GPGGA,120000.00,4426.0010,N,07140.0000,W,1,05,1.1,100.0,M,,M,,");
  bench.hear("GPGLL,4426.0020,N,07140.0000,W,120000.00,A,A");
  CHECK(bench.fix().positions_taken == 1);
  CHECK_THAT(bench.fix().position->latitude_deg(), WithinAbs(44.0 + 26.0 / 60.0, 1e-12));
  CHECK(bench.fix().altitude_m == 100.0);
  CHECK(bench.fix().satellites == 5);
  bench.now += 1s;
  bench.rmc(1);
  CHECK(bench.fix().positions_taken == 2);
  // An older time, as from a delayed sentence, does not count.
  bench.rmc(0, 'A', "4427.0000");
  CHECK(bench.fix().positions_taken == 2);
}

TEST_CASE("midnight is a later epoch, and a clock set back is trusted if nothing else is left") {
  Bench bench;
  bench.hear("GPGLL,4426.0,N,07140.0,W,235959.00,A,A");
  bench.hear("GPGLL,4426.0,N,07140.0,W,000000.00,A,A");
  CHECK(bench.fix().positions_taken == 2);
  bench.hear("GPGLL,4426.0,N,07140.0,W,210000.00,A,A");
  CHECK(bench.fix().positions_taken == 2);
  bench.now += 3s;
  bench.hear("GPGLL,4426.0,N,07140.0,W,210001.00,A,A");
  CHECK(bench.fix().positions_taken == 3);
}

TEST_CASE("a receiver that repeats a frozen time has lost its fix") {
  Bench bench;
  for (int second = 0; second < 10; ++second) {
    bench.rmc(0);
    CHECK(bench.fix().good() == (second < 3));
    CHECK(bench.fix().positions_taken == 1);
    bench.now += 1s;
  }
  CHECK(bench.why() == FixTrouble::frozen_time);
  bench.rmc(1);
  CHECK(bench.fix().good());
}

TEST_CASE("one constellation without a fix does not clear the fix") {
  Bench bench;
  bench.rmc(0);
  bench.hear("GNGSA,A,3,13,16,21,,,,,,,,,,1.05,0.64,0.83,1");
  bench.hear("GNGSA,A,1,,,,,,,,,,,,,,,,2");
  CHECK(bench.fix().good());
  CHECK(bench.fix().dimensions == 3);
  CHECK(bench.fix().hdop == 0.64);
}

TEST_CASE("the best quality within an epoch counts, only for that epoch") {
  Bench bench;
  bench.hear("GNGGA,133900.00,4134.5,N,09345.0,W,4,19,0.7,280.8,M,,M,,");
  bench.hear("GNRMC,133900.00,A,4134.5,N,09345.0,W,0.0,0.0,180320,,,D");
  CHECK(bench.fix().quality == FixQuality::rtk_fixed);
  bench.now += 1s;
  bench.hear("GNRMC,133901.00,A,4134.5,N,09345.0,W,0.0,0.0,180320,,");
  CHECK(bench.fix().quality ==
        FixQuality::rtk_fixed);  // this RMC has no mode, so the quality stays
  bench.hear("GNGGA,133901.00,4134.5,N,09345.0,W,1,19,0.7,280.8,M,,M,,");
  CHECK(bench.fix().quality == FixQuality::autonomous);
}

TEST_CASE("velocity comes only from the source that gave the position") {
  Bench bench;
  bench.hear("GPGGA,120000.00,4426.0,N,07140.0,W,1,05,1.0,1.0,M,,M,,");
  bench.hear("IIVTG,10.0,T,,M,30.0,N,,K,A");
  CHECK_FALSE(bench.fix().speed_mps);
  bench.hear("IIRMC,120001.00,A,4500.0,N,07200.0,W,30.0,10.0,011226,,,A");
  CHECK(bench.fix().positions_taken == 1);
  bench.hear("GNVTG,90.0,T,,M,5.0,N,,K,A");
  CHECK(bench.fix().course == Bearing<True>::degrees(90.0));
  // A void of another source does not affect this one.
  bench.hear("IIRMC,120001.00,V,,,,,,,,,,N");
  CHECK(bench.fix().good());
  // When this source is stale, the other one takes over without old values.
  bench.now += 3s;
  bench.hear("IIGGA,120004.00,4500.0,N,07200.0,W,2,,,,M,,M,,");
  CHECK(bench.fix().good());
  CHECK_FALSE(bench.fix().speed_mps);
  CHECK_FALSE(bench.fix().hdop);
  CHECK(bench.fix().quality == FixQuality::differential);
}

TEST_CASE("headings are stored by north and expire") {
  Bench bench;
  bench.hear("HEHDT,4.0,T");
  bench.hear("HCHDG,101.1,3.0,W,7.1,W");
  const HeadingSensor heading = bench.receiver.heading(bench.now);
  CHECK(heading.true_heading == Bearing<True>::degrees(4.0));
  CHECK_THAT(heading.magnetic_heading->degrees(), WithinAbs(98.1, 1e-9));
  CHECK(heading.declination == Declination::east_deg(-7.1));
  CHECK(bench.receiver.heading(bench.now + 2999ms) == heading);
  CHECK(heading.taken == 2);
  CHECK(bench.receiver.heading(bench.now + 3s) == HeadingSensor{{}, {}, {}, 2});
}

TEST_CASE("a receiver one era behind is corrected and reported after several epochs") {
  Bench bench;
  for (int second = 0; second < 10; ++second) {
    // 2007-04-17 is 1024 weeks before 2026-12-01.
    bench.hear(fmt::format("GPRMC,1200{:02}.00,A,4426.0,N,07140.0,W,0.0,,170407,,,A", second));
    CHECK(bench.receiver.date().has_value() == (second + 1 >= DateKeeper::kAgreeingEpochs));
    bench.now += 1s;
  }
  CHECK(bench.receiver.date()->weeks_shifted == 1024);
  CHECK(bench.receiver.date()->date == sys_days(std::chrono::year(2026) / 12 / 1));
  CHECK(bench.fix().utc == sys_days(std::chrono::year(2026) / 12 / 1) + 12h + 9s);
}

TEST_CASE("the date of a receiver without a fix is not trusted") {
  Bench bench;
  for (int second = 0; second < 10; ++second) bench.rmc(second, 'V');
  CHECK_FALSE(bench.receiver.date());
  // GGA alone has no date: the time of day is known, the moment is not.
  for (int second = 0; second < 10; ++second) {
    bench.hear(fmt::format("GPGGA,1200{:02},4426.0,N,07140.0,W,1,05,1.0,1.0,M,,M,,", second));
  }
  CHECK(bench.fix().time_of_day == TimeOfDay(12h + 9s));
  CHECK_FALSE(bench.fix().utc);
  CHECK_FALSE(bench.receiver.date());
}

TEST_CASE("a receiver is a value that can be copied and compared") {
  Bench bench;
  bench.rmc(0);
  const Receiver copy = bench.receiver;
  CHECK(copy == bench.receiver);
  bench.receiver.feed("$", bench.now);
  CHECK_FALSE(copy == bench.receiver);
}
