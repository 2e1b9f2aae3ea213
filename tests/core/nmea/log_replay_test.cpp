#include "core/nmea/log_replay.hpp"

#include "tests/support/nmea_text.hpp"
#include "tests/support/reference.hpp"

#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::nmea;
using Catch::Matchers::WithinAbs;
using namespace std::chrono;

namespace {

// A floor before every log, so that no date is shifted.
const sys_days kBeforeAllLogs = sys_days(year(2000) / 1 / 1);

struct Last {
  const char* log;
  double latitude_deg, longitude_deg;
  FixQuality quality;
  milliseconds time;
  std::uint64_t positions;
};

milliseconds at(int h, int m, int s, int ms = 0) {
  return hours(h) + minutes(m) + seconds(s) + milliseconds(ms);
}

}  // namespace

// Worked by hand from the last raw sentences of each log that have a fix: degrees + minutes / 60.
// The number of positions is the number of distinct times among them. The humminbird's RMC does not
// say how its position was found; its GGA of the second before does; its
// clock is set back from 19:41:24 to 19:41:11, which is believed with the third position
// after that, when the old time is three seconds past.
TEST_CASE("real logs give their last good fix") {
  const Last logs[] = {
      {"bu353s4", -(37 + 47.0877 / 60), 175 + 18.8941 / 60, FixQuality::autonomous, at(3, 7, 43),
       25},
      {"garmin48", -(45 + 27.458 / 60), 167 + 9.165 / 60, FixQuality::autonomous, at(22, 53, 35),
       14},
      {"gp-320fw-2019-04-07-coldboot", 48 + 8.9993 / 60, 11 + 35.0798 / 60, FixQuality::autonomous,
       at(0, 3, 45, 30), 2},
      {"hemi", 42 + 21.8235522 / 60, -(71 + 1.9438007 / 60), FixQuality::autonomous, at(19, 41, 0),
       21},
      {"humminbird-M37", 44 + 26.1219 / 60, -(71 + 40.4965 / 60), FixQuality::differential,
       at(19, 41, 19), 31},
      {"mtk-3301", 52 + 12.981832 / 60, 6 + 53.104686 / 60, FixQuality::autonomous, at(8, 14, 39),
       4},
      {"nmea-fuzzy-cases", 41 + 34.50180291 / 60, -(93 + 45.03586858 / 60), FixQuality::rtk_fixed,
       at(13, 39, 0, 900), 14},
      {"saab-r4", 50 + 12.7926 / 60, -(8 + 6.8796 / 60), FixQuality::differential, at(13, 7, 22),
       12},
      {"ublox-zed-f9p-nmea", -(45 + 52.65393 / 60), 170 + 30.0067 / 60, FixQuality::autonomous,
       at(0, 40, 24), 29},
  };
  for (const Last& expected : logs) {
    const auto path = mastwise::test::reference("nmea/" + std::string(expected.log) + ".log");
    if (!path) return;
    INFO(expected.log);
    const LogReplay replay = replay_log(mastwise::test::read_file(*path), kBeforeAllLogs);
    REQUIRE(replay.last_good.good());
    CHECK_THAT(replay.last_good.position->latitude_deg(), WithinAbs(expected.latitude_deg, 1e-9));
    CHECK_THAT(replay.last_good.position->longitude_deg(), WithinAbs(expected.longitude_deg, 1e-9));
    CHECK(replay.last_good.quality == expected.quality);
    CHECK(replay.last_good.time_of_day == expected.time);
    CHECK(replay.last_good.positions_taken == expected.positions);
  }
}

TEST_CASE("real logs give their dates") {
  struct Expected {
    const char* log;
    sys_days floor, date;
    int weeks_shifted;
  };
  const sys_days floor_2026 = sys_days(year(2026) / 11 / 25);
  const Expected logs[] = {
      {"garmin48", kBeforeAllLogs, sys_days(year(2001) / 6 / 6), 0},
      // One and two eras of 7168 days after 2001-06-06.
      {"garmin48", sys_days(year(2010) / 1 / 1), sys_days(year(2021) / 1 / 20), 1024},
      {"garmin48", floor_2026, sys_days(year(2040) / 9 / 5), 2048},
      {"bu353s4", kBeforeAllLogs, sys_days(year(2014) / 12 / 31), 0},
      {"bu353s4", floor_2026, sys_days(year(2034) / 8 / 16), 1024},
      // Void sentences of 1980-01-05 come first and are not trusted.
      {"mtk-3301", kBeforeAllLogs, sys_days(year(2008) / 8 / 23), 0},
      {"ublox-zed-f9p-nmea", kBeforeAllLogs, sys_days(year(2019) / 4 / 12), 0},
      {"humminbird-M37", kBeforeAllLogs, sys_days(year(2006) / 9 / 16), 0},
  };
  for (const Expected& expected : logs) {
    const auto path = mastwise::test::reference("nmea/" + std::string(expected.log) + ".log");
    if (!path) return;
    INFO(expected.log);
    const LogReplay replay = replay_log(mastwise::test::read_file(*path), expected.floor);
    REQUIRE(replay.receiver.date());
    CHECK(replay.receiver.date()->date == expected.date);
    CHECK(replay.receiver.date()->weeks_shifted == expected.weeks_shifted);
    CHECK(replay.last_good.utc == UtcTime(expected.date) + *replay.last_good.time_of_day);
  }
}

// The log begins with a fix on 2019-04-07, of two epochs, and goes on without one in 2006, 2010 and
// 1999: no date of it can be trusted.
TEST_CASE("a cold-started receiver ends without a fix, and its dates are not trusted") {
  const auto path = mastwise::test::reference("nmea/gp-320fw-2019-04-07-coldboot.log");
  if (!path) return;
  const LogReplay replay = replay_log(mastwise::test::read_file(*path), kBeforeAllLogs);
  CHECK(replay.receiver.counts().sentences_good == 96);
  CHECK(replay.at_end.why_not_good == FixTrouble::no_satellites);
  CHECK_FALSE(replay.at_end.position);
  CHECK(replay.at_end.last_position == replay.last_good.position);
  CHECK_FALSE(replay.receiver.date());
}

// tnt-revolution.log has only proprietary sentences and XDR; saab-r4.log's last HDT is 4.1,
// and hemi.log's 274.11.
TEST_CASE("real logs give their heading sensor") {
  const auto heading = [](const char* log) {
    const auto path = mastwise::test::reference("nmea/" + std::string(log) + ".log");
    if (!path) return std::optional<LogReplay>();
    return std::optional(replay_log(mastwise::test::read_file(*path), kBeforeAllLogs));
  };
  const auto tnt = heading("tnt-revolution");
  const auto saab = heading("saab-r4");
  const auto hemi = heading("hemi");
  if (!tnt || !saab || !hemi) return;
  CHECK(tnt->heading == HeadingSensor{});
  CHECK(tnt->at_end.why_not_good == FixTrouble::no_position_reports);
  CHECK(tnt->last_good == Fix{});
  CHECK(saab->heading.true_heading == Bearing<True>::degrees(4.1));
  CHECK(hemi->heading.true_heading == Bearing<True>::degrees(274.11));
  CHECK_FALSE(hemi->heading.magnetic_heading);
}

TEST_CASE("a log replays by its timestamps") {
  const auto gll = [](const std::string& time) {
    return test::sentence("GPGLL,4426.0,N,07140.0,W," + time + ",A,A");
  };
  // Two seconds pass in the sentences, then the same moment is repeated until it is stale.
  CHECK(replay_log(gll("120000") + gll("120002"), kBeforeAllLogs).duration == 2010ms);
  std::string frozen = gll("120000");
  for (int i = 0; i < 400; ++i) frozen += gll("120001");
  const LogReplay replay = replay_log(frozen, kBeforeAllLogs);
  CHECK(replay.at_end.why_not_good == FixTrouble::frozen_time);
  CHECK(replay.last_good.positions_taken == 2);
  CHECK(replay_log("", kBeforeAllLogs).at_end.why_not_good == FixTrouble::no_data);
  const std::string unfinished = gll("120000").substr(0, gll("120000").size() - 2);
  CHECK(replay_log(unfinished, kBeforeAllLogs).last_good.good());
}

TEST_CASE("a replay hears each sentence by itself, whatever ends it") {
  const auto rmc = [](const char* status) {
    return test::sentence(std::string("GPRMC,120000,") + status + ",4426.0,N,07140.0,W,0,0,281126");
  };
  for (const std::string end : {"\r\n", "\r", "\n", ""}) {
    std::string log;
    for (std::string sentence : {rmc("A"), rmc("V"), rmc("V")}) {
      sentence.resize(sentence.find('*') + 3);
      log += sentence + end;
    }
    std::size_t heard = 0, good = 0;
    const LogReplay replay =
        replay_log(log, kBeforeAllLogs, [&](const Receiver& receiver, Monotonic now) {
          ++heard;
          if (receiver.fix(now).good()) ++good;
        });
    INFO(end);
    CHECK(heard >= 3);
    CHECK(good >= 1);
    CHECK(replay.last_good.good());
    CHECK_FALSE(replay.at_end.good());
    CHECK(replay.receiver.counts().sentences_good == 3);
  }
}
