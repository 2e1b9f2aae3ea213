#include "core/nmea/sentences.hpp"

#include <cmath>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::nmea;
using Catch::Matchers::WithinAbs;

namespace {

// The sentence outlives the report, whose talker views it: all are literals.
Report read(std::string_view sentence) {
  const auto report = read_sentence(sentence);
  REQUIRE(report);
  return *report;
}

TimeOfDay time_at(int hours, int minutes, int seconds, int ms = 0) {
  return std::chrono::hours(hours) + std::chrono::minutes(minutes) + std::chrono::seconds(seconds) +
         milliseconds(ms);
}

Date date(int year, unsigned month, unsigned day) {
  return Date{std::chrono::year(year), std::chrono::month(month), std::chrono::day(day)};
}

}  // namespace

// garmin48.log: 45 + 27.458/60 = 45.457633 S, 167 + 9.165/60 = 167.152750 E, by hand.
TEST_CASE("RMC is read from version 1.5 to 4.11") {
  const Report old = read("$GPRMC,225308,A,4527.458,S,16709.165,E,000.0,094.5,060601,024.1,E");
  CHECK(old.talker == "GP");
  CHECK(old.time == time_at(22, 53, 8));
  CHECK(old.quality == FixQuality::unspecified);
  REQUIRE(old.position);
  CHECK_THAT(old.position->latitude_deg(), WithinAbs(-45.457633333, 1e-9));
  CHECK_THAT(old.position->longitude_deg(), WithinAbs(167.15275, 1e-9));
  CHECK(old.speed_mps == 0.0);
  CHECK(old.course == Bearing<True>::degrees(94.5));
  CHECK(old.date == date(2001, 6, 6));
  CHECK(old.declination == Declination::east_deg(24.1));

  // ublox-zed-f9p-nmea.log: navigational status V beside a good fix, no course when standing.
  const Report recent = read("$GNRMC,003956.00,A,4552.65403,S,17030.00668,E,0.025,,120419,,,A,V");
  CHECK(recent.quality == FixQuality::autonomous);
  CHECK(recent.position);
  CHECK_FALSE(recent.course);
  CHECK_FALSE(recent.declination);
  // 1 knot is 1852 m an hour: 0.025 kn is 0.012861 m/s.
  CHECK_THAT(*recent.speed_mps, WithinAbs(0.025 * 1852 / 3600, 1e-9));

  CHECK(read("$GPRMC,,V,,,,,,,,,,N").quality == FixQuality::none);
  CHECK(read("$GPRMC,120000,V,,,,,,,,,,E").quality == FixQuality::estimated);
  CHECK(read("$GPRMC,120000,V,,,,,,,,,,A").quality == FixQuality::none);
  CHECK(read("$GPRMC,120000,A,,,,,,,,,,N").quality == FixQuality::none);
  CHECK_FALSE(read("$GPRMC,120000").quality);
}

TEST_CASE("GGA gives the fix quality by a number") {
  // nmea-fuzzy-cases.log
  const Report report = read(
      "$GNGGA,133900.90,4134.50180291,N,09345.03586858,W,4,19,0.7,280.833,M,-31.442,M,6.9,0002");
  CHECK(report.quality == FixQuality::rtk_fixed);
  CHECK(report.satellites == 19);
  CHECK(report.hdop == 0.7);
  CHECK(report.altitude_m == 280.833);
  CHECK(report.time == time_at(13, 39, 0, 900));
  CHECK_THAT(report.position->latitude_deg(), WithinAbs(41.5750300485, 1e-10));
  CHECK_THAT(report.position->longitude_deg(), WithinAbs(-93.7505978097, 1e-10));
  // hemi.log before its fix; saab-r4.log
  const Report empty = read("$GPGGA,,,,,,0,,,,M,,M,,");
  CHECK(empty.quality == FixQuality::none);
  CHECK_FALSE(empty.time);
  CHECK_FALSE(empty.satellites);
  CHECK_FALSE(empty.altitude_m);
  CHECK_FALSE(read("$GPGGA,130711,5012.790800,N,00806.879600,W,2,,,,,,,").hdop);
  CHECK(read("$GPGGA,1,,,,,6").quality == FixQuality::estimated);
  CHECK(read("$GPGGA,1,,,,,8").quality == FixQuality::simulator);
  CHECK_FALSE(read("$GPGGA,1,,,,,9").quality);
  CHECK_FALSE(read("$GPGGA,1,,,,,").quality);
  // Without a fix: a dilution of 0.0 (gp-320fw coldboot) or 99.99 is none.
  CHECK_FALSE(read("$GPGGA,1,,,,,0,00,0.0,,M,,M,,").hdop);
  CHECK_FALSE(read("$GPGGA,1,,,,,0,00,99.99,,M,,M,,").hdop);
}

TEST_CASE("GLL and GNS are read") {
  // humminbird-M37.log: 44 + 26.1130/60, 71 + 40.5579/60
  const Report gll = read("$INGLL,4426.1130,N,07140.5579,W,194102,A");
  CHECK(gll.talker == "IN");
  CHECK(gll.quality == FixQuality::unspecified);
  CHECK_THAT(gll.position->longitude_deg(), WithinAbs(-71.675965, 1e-9));
  CHECK(read("$GPGLL,0000.0000,N,00000.0000,E,000429.00,V,N").quality == FixQuality::none);
  // Versions before 2.0 have no status.
  CHECK_FALSE(read("$GPGLL,4916.45,N,12311.12,W").quality);

  const Report gns =
      read("$GNGNS,103600.01,5114.51176,N,00012.29380,W,ANNN,07,1.18,111.5,45.6,,,V");
  CHECK(gns.quality == FixQuality::autonomous);
  CHECK(gns.satellites == 7);
  CHECK(gns.altitude_m == 111.5);
  CHECK(read("$GNGNS,1,,,,,NN,00,,,,,").quality == FixQuality::none);
  CHECK(read("$GNGNS,1,,,,,AR,00,,,,,").quality == FixQuality::rtk_fixed);
  CHECK_FALSE(read("$GNGNS,1,,,,,,00,,,,,").quality);
}

TEST_CASE("VTG is read with and without unit letters and mode") {
  CHECK(read("$INVTG,77.5,T,93.3,M,5.2,N,9.7,K").course == Bearing<True>::degrees(77.5));
  CHECK_THAT(*read("$INVTG,77.5,T,93.3,M,5.2,N,9.7,K").speed_mps,
             WithinAbs(5.2 * 1852 / 3600, 1e-9));
  CHECK_THAT(*read("$GPVTG,054.7,034.4,005.5,010.2").speed_mps, WithinAbs(5.5 * 1852 / 3600, 1e-9));
  CHECK(read("$GNVTG,,T,,M,0.025,N,0.045,K,A").speed_mps);
  CHECK_FALSE(read("$GNVTG,,T,,M,0.025,N,0.045,K,A").course);
  // mtk-3301.log without a fix: zeros that mean nothing.
  CHECK_FALSE(read("$GPVTG,0.00,T,,M,0.000,N,0.000,K,N").speed_mps);
  CHECK_FALSE(read("$GPVTG,0.00,T,,M,0.000,N,0.000,K,N").course);
}

TEST_CASE("ZDA, GSA and GST are read") {
  CHECK(read("$INZDA,194104,16,09,2006,-05,00").date == date(2006, 9, 16));
  CHECK(read("$GPZDA,000427.00,22,08,1999,,").date == date(1999, 8, 22));
  CHECK_FALSE(read("$GPZDA,000427.00,31,02,2019,,").date);
  CHECK_FALSE(read("$GPZDA,000427.00,,,,,").date);

  const Report gsa = read("$GNGSA,A,3,13,16,21,15,10,29,27,20,,,,,1.05,0.64,0.83,1");
  CHECK(gsa.dimensions == 3);
  CHECK(gsa.hdop == 0.64);
  CHECK_FALSE(read("$GPGSA,A,1,,,,,,,,,,,,,,,").dimensions);

  // Root of the squares of 3.0 m and 4.0 m.
  CHECK(read("$GNGST,003956.00,235111,,,,3.0,4.0,4.0").error_m == 5.0);
  CHECK_FALSE(read("$GNGST,003956.00,235111,,,,,,").error_m);
}

TEST_CASE("headings keep their north") {
  CHECK(read("$HEHDT,4.0,T").true_heading == Bearing<True>::degrees(4.0));
  CHECK_FALSE(read("$HEHDT,4.0,T").magnetic_heading);
  CHECK_FALSE(read("$GPHDT,,T").true_heading);
  CHECK(read("$HETHS,77.52,A").true_heading == Bearing<True>::degrees(77.52));
  CHECK_FALSE(read("$HETHS,77.52,E").true_heading);
  CHECK_FALSE(read("$HETHS,77.52,V").true_heading);
  CHECK(read("$HCHDM,238.5,M").magnetic_heading == Bearing<Magnetic>::degrees(238.5));
  // Magnetic = sensor + deviation east; 101.1 - 3.0 = 98.1.
  const Report hdg = read("$HCHDG,101.1,3.0,W,7.1,W");
  CHECK_THAT(hdg.magnetic_heading->degrees(), WithinAbs(98.1, 1e-9));
  CHECK(hdg.declination == Declination::east_deg(-7.1));
  CHECK_FALSE(hdg.true_heading);
  CHECK(read("$HCHDG,101.1,,,7.1,E").magnetic_heading == Bearing<Magnetic>::degrees(101.1));
  CHECK(read("$HCHDG,101.1,,,7.1,E").declination == Declination::east_deg(7.1));
  CHECK_FALSE(read("$HCHDG,101.1,,,,").declination);
  CHECK_FALSE(read("$HCHDG,401.1,,,,").magnetic_heading);
  CHECK_FALSE(read("$HCHDG,,3.0,W,,").magnetic_heading);
}

TEST_CASE("coordinates off the earth give no position") {
  const auto position = [](const std::string& four_fields) {
    return read_sentence("$GPGLL," + four_fields + ",120000,A")->position;
  };
  CHECK_FALSE(position("8960.000000,N,00000.000000,E"));  // mtk-3301.log
  CHECK_FALSE(position("4460.0,N,07100.0,W"));
  CHECK_FALSE(position("4400.0,N,07160.0,W"));
  CHECK_FALSE(position("9000.001,N,07100.0,W"));
  CHECK_FALSE(position("4400.0,N,18000.001,W"));
  CHECK_FALSE(position("-4400.0,N,07100.0,W"));
  CHECK_FALSE(position("4400.0,X,07100.0,W"));
  CHECK_FALSE(position("4400.0,,07100.0,W"));
  CHECK_FALSE(position("nan,N,07100.0,W"));
  CHECK_FALSE(position("4.4e3,N,07100.0,W"));
  CHECK_FALSE(position("44 00.0,N,07100.0,W"));
  CHECK_FALSE(position(",N,07100.0,W"));
  CHECK(position("4459.999999,N,17959.999999,W"));
  CHECK(position("9000.0,S,00000.0,E")->latitude_deg() == -90.0);
  CHECK(position("0000.0,N,00000.0,E")->longitude_deg() == 0.0);
  CHECK(position("0000.0,N,18000.0,E")->longitude_deg() == -180.0);
}

TEST_CASE("impossible times and dates are rejected") {
  const auto time = [](const std::string& field) {
    return read_sentence("$GPGGA," + field + ",,,,,0")->time;
  };
  CHECK(time("235960.5") == time_at(23, 59, 60, 500));
  CHECK(time("120000.9999") == time_at(12, 0, 0, 999));
  CHECK(time("120000.") == time_at(12, 0, 0));
  for (const char* wrong : {"240000", "126000", "120061", "12000", "12:0:0", "120000x", "-10000"}) {
    INFO(wrong);
    CHECK_FALSE(time(wrong));
  }
  const auto day = [](const std::string& field) {
    return read_sentence("$GPRMC,120000,V,,,,,,," + field + ",,")->date;
  };
  CHECK(day("220899") == date(1999, 8, 22));
  CHECK(day("050180") == date(1980, 1, 5));
  CHECK(day("311279") == date(2079, 12, 31));
  CHECK(day("290224") == date(2024, 2, 29));
  for (const char* wrong : {"290223", "000124", "011324", "1224", "0a0124"}) {
    INFO(wrong);
    CHECK_FALSE(day(wrong));
  }
}

TEST_CASE("only the twelve talker sentences are read") {
  CHECK_FALSE(read_sentence("$PGRMC,1"));  // proprietary, though it ends like RMC
  CHECK_FALSE(read_sentence("!AIRMC,1"));
  CHECK_FALSE(read_sentence("$RMC,1"));
  CHECK_FALSE(read_sentence("$GPXRMC,1"));
  CHECK_FALSE(read_sentence("$GPGSV,1"));
  CHECK_FALSE(read_sentence("$"));
  CHECK_FALSE(read_sentence(""));
  CHECK(read_sentence("$GPRMC"));
}
