#include "core/import/joined_import.hpp"
#include "platform/files.hpp"
#include "platform/table_folder.hpp"
#include "tests/support/licensing_dump.hpp"
#include "tests/support/licensing_tables.hpp"
#include "tests/support/made_tables.hpp"
#include "tests/support/memory_need.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/temporary_folder.hpp"

#include <algorithm>
#include <map>
#include <string>

#include <catch2/catch.hpp>

// The built-in mapping of the US licensing database, on real rows and on invented ones.
using namespace mastwise;

namespace {

JoinedMapping licensing_mapping() {
  const auto text = platform::read_file(platform::assets_folder() + "/mappings/us_lms.json");
  REQUIRE(text);
  auto mapping = parse_joined_mapping(*text);
  if (!mapping) FAIL(mapping.error().message());
  return std::move(mapping).value();
}

StationTable read_licensing(TableFiles& files) {
  auto table = read_joined_tables(files, licensing_mapping());
  if (!table) FAIL(table.error().message());
  return std::move(table).value();
}

StationTable read_licensing(const std::map<std::string, std::string>& files) {
  test::MadeTables tables(files);
  return read_licensing(tables);
}

bool has_remark(const StationTable& table, const std::string& part) {
  return std::any_of(table.remarks.begin(), table.remarks.end(), [&](const std::string& remark) {
    return remark.find(part) != std::string::npos;
  });
}

std::string note_of(const Station& station, const std::string& label) {
  for (const Note& note : station.notes) {
    if (note.column == label) return note.text;
  }
  return {};
}

void put_in(std::string& text, const std::string& before, const std::string& after) {
  REQUIRE(text.find(before) != std::string::npos);
  text.replace(text.find(before), before.size(), after);
}

}  // namespace

TEST_CASE("real rows of the licensing database become the station they describe") {
  const auto path = test::reference("stations/us_lms_sample");
  if (!path) return;
  auto files = platform::TableFolder::at(*path);
  REQUIRE(files);
  const auto table = read_licensing(*files);
  REQUIRE(table.stations.size() == 1);
  CHECK(table.rejected.empty());
  // The rows themselves, us_lms_columns.md.
  const Station& station = table.stations[0];
  CHECK(station.id == "34868/1");
  CHECK(station.call_sign == "KREM");
  CHECK(station.rf_channel.number == 20);
  CHECK(station.erp_kw == 810.0);
  CHECK(station.antenna_amsl_m == 1375.1);
  CHECK(station.haat_m == 675.1);
  CHECK(station.site_amsl_m == 1100.0);
  CHECK(station.position.latitude_deg() == Approx(47.0 + 35.0 / 60.0 + 41.0 / 3600.0).margin(5e-7));
  CHECK(station.position.longitude_deg() ==
        Approx(-(117.0 + 17.0 / 60.0 + 57.0 / 3600.0)).margin(5e-7));
  CHECK(station.network == "CBS");
  CHECK(station.programs == std::vector<Program>{{"2", "", "CBS", ""}});
  CHECK(station.standard == BroadcastStandard::atsc1);  // the cell is blank
  CHECK(station.polarization == Polarization::elliptical);
  CHECK(station.directional == true);
  CHECK(station.translator == false);
  CHECK_FALSE(station.pattern);
  CHECK(station.city == "SPOKANE");
  CHECK(note_of(station, "Beam tilt, electrical, degrees") == "1.0");
  CHECK(note_of(station, "Antenna above ground, m") == "275.1");
  CHECK(note_of(station, "Market") == "Spokane");
  CHECK(has_remark(table,
                   "missing file app_antenna_field_value.dat: the transmitting antennas' patterns "
                   "stay unknown"));
}

TEST_CASE("a dump without columns that only complete stations is read, and says so") {
  auto files = test::licensing_tables();
  const auto table = read_licensing(files);
  REQUIRE(table.stations.size() == 1);
  CHECK(has_remark(table, "facility.dat: missing columns, whose facts stay unknown: "));
  CHECK(has_remark(table, "tv_virtual_channel"));
  files.erase("app_antenna_frequency.dat");
  const auto without = read_licensing(files);
  REQUIRE(without.stations.size() == 1);
  CHECK_FALSE(without.stations[0].erp_kw);
  CHECK(has_remark(without, "missing file app_antenna_frequency.dat"));
}

TEST_CASE("power and height come from other columns where their own is blank") {
  auto files = test::licensing_tables();
  put_in(files["app_antenna_frequency.dat"], "aafq_power_erp_kw|",
         "aafq_power_erp_kw|aafq_max_erp_kw|aafq_horiz_erp_kw|aafq_vert_erp_kw|");
  const auto power = [&](const std::string& cells) {
    auto changed = files;
    put_in(changed["app_antenna_frequency.dat"], "n1|Y|100.0|", "n1|Y|" + cells);
    return read_licensing(changed).stations.at(0).erp_kw;
  };
  CHECK(power("100.0|90|80|70|") == 100.0);
  CHECK(power("|90|80|70|") == 90.0);
  CHECK(power("0|0.0|80|85|") == 85.0);  // never the sum
  CHECK(power("|||70|") == 70.0);
  CHECK_FALSE(power("||||"));

  put_in(files["app_location.dat"], "aloc_long_dir|", "aloc_long_dir|aloc_ground_elev|");
  put_in(files["app_antenna.dat"], "aant_rotation_deg|", "aant_rotation_deg|aant_rc_hag|");
  put_in(files["app_antenna_frequency.dat"], "n1|Y|100.0|", "n1|Y|100.0||||");
  const auto height = [&](const std::string& ground, const std::string& amsl,
                          const std::string& above_ground) {
    auto changed = files;
    put_in(changed["app_location.dat"], "36.0|W|", "36.0|W|" + ground + "|");
    put_in(changed["app_antenna.dat"], "|650.0|0|10.0|",
           "|" + amsl + "|0|10.0|" + above_ground + "|");
    return read_licensing(changed).stations.at(0).antenna_amsl_m;
  };
  CHECK(height("500", "650.0", "140") == 650.0);
  CHECK(height("500", "", "140") == 640.0);
  CHECK(height("0", "0", "140") == 140.0);  // ground at the sea's level
  CHECK_FALSE(height("500", "", "0"));
  CHECK_FALSE(height("", "", "140"));
}

TEST_CASE("of several licenses of a facility the latest filing is kept") {
  auto files = test::licensing_tables();
  put_in(files["facility.dat"], "license_filing_id|^|",
         "license_filing_id|latest_filing_version_id|^|");
  put_in(files["facility.dat"], "|QQ|f1|^|", "|QQ|f1|v1|^|");
  put_in(files["facility.dat"], "||||f2|^|", "||||f2||^|");
  put_in(files["license_filing_version.dat"], "current_status_code|^|",
         "current_status_code|status_date|^|");
  files["license_filing_version.dat"].resize(files["license_filing_version.dat"].find("\n") + 1);
  files["license_filing_version.dat"] +=
      "v1|f1|Y|L|GRA|2015-01-01 00:00:00.0|^|\nv3|f1|Y|L|GRA|2020-01-01 00:00:00.0|^|\n";
  files["application_facility.dat"] += "v3|US|25|^|\n";
  files["app_location.dat"] += "v3|l3|1|Y||44|31|0.0|N|100|15|36.0|W|^|\n";
  files["app_antenna.dat"] += "n3|l3|Y|NDIR|660.0|0|0.0|^|\n";
  files["app_antenna_frequency.dat"] += "n3|Y|900.0|^|\n";
  // The facility names its latest filing: an older one with more power does not count.
  const auto named = read_licensing(files);
  REQUIRE(named.stations.size() == 1);
  CHECK(named.stations[0].rf_channel.number == 23);
  CHECK(named.stations[0].directional == true);
  REQUIRE(named.rejected.size() == 1);
  CHECK(named.rejected[0].reason == "the station 9001/1 has a later filing");
  // The latest filing is a pending one: the newest license counts.
  put_in(files["facility.dat"], "|f1|v1|", "|f1|v9|");
  const auto newest = read_licensing(files);
  REQUIRE(newest.stations.size() == 1);
  CHECK(newest.stations[0].rf_channel.number == 25);
  CHECK(newest.stations[0].directional == false);
}

TEST_CASE("a translator says what it rebroadcasts, and has its network") {
  auto files = test::licensing_tables();
  put_in(files["facility.dat"], "license_filing_id|^|", "license_filing_id|primary_station|^|");
  put_in(files["facility.dat"], "Y|9001|LICEN|DTV|QAAB|N|Northlight|Alder|QQ|f1|^|",
         "Y|9001|LICEN|LPT|Q23AB-D|N||Alder|QQ|f1|9003|^|\n"
         "Y|9003|LICSL|DTV|QAAD|N|Lodestone|Birch|QQ|f3||^|");
  put_in(files["facility.dat"], "||||f2|^|", "||||f2||^|");
  const auto table = read_licensing(files);
  REQUIRE(table.stations.size() == 1);
  CHECK(table.stations[0].translator == true);
  CHECK(note_of(table.stations[0], "Rebroadcasts") == "QAAD");
  CHECK(table.stations[0].network == "Lodestone");
}

TEST_CASE("rows of other countries and places kept for new stations are left out") {
  auto files = test::licensing_tables();
  put_in(files["application_facility.dat"], "v1|US|23|", "v1|CA|23|");
  test::MadeTables tables(files);
  const auto foreign = read_joined_tables(tables, licensing_mapping());
  REQUIRE_FALSE(foreign);
  CHECK(foreign.error().what.find("application_facility.dat") != std::string::npos);
  for (const auto& [before, after] :
       {std::pair("|9001|", "|-9001|"), std::pair("|QAAB|", "|NEW|")}) {
    auto changed = test::licensing_tables();
    put_in(changed["facility.dat"], before, after);
    test::MadeTables none(changed);
    CHECK_FALSE(read_joined_tables(none, licensing_mapping()));
  }
}

TEST_CASE("a whole dump is read from an archive of archives, in little memory") {
  const test::TemporaryFolder folder;
  test::LicensingDump dump(13'000);
  dump.write_nested_zip(folder.path(), folder / "dump.zip");
  auto files = platform::TableFolder::at(folder / "dump.zip");
  REQUIRE(files);
  const auto table = read_licensing(*files);
  CHECK(table.stations.size() == dump.stations());
  for (const Station& station : table.stations) {
    const auto f = static_cast<std::size_t>(std::stoul(station.facility_id));
    REQUIRE(test::LicensingDump::is_station(f));
    CHECK(station.call_sign == test::LicensingDump::call_sign(f));
    CHECK(station.rf_channel.number == test::LicensingDump::channel(f));
    CHECK(station.erp_kw == test::LicensingDump::erp_kw(f));
    CHECK(station.antenna_amsl_m == (f % 8 == 0 ? 370.0 : 350.0));
    CHECK(static_cast<int>(station.position.latitude_deg()) ==
          test::LicensingDump::latitude_deg(f));
    CHECK(station.city ==
          "Peque\xC3\xB1"
          "a\nMesa");
    CHECK(station.translator == test::LicensingDump::is_translator(f));
    CHECK(station.polarization == Polarization::horizontal);
  }
  if (test::kSanitized) return;
  const long need_mb = test::memory_need_mb([&] {
    auto again = platform::TableFolder::at(folder / "dump.zip");
    return again && static_cast<bool>(read_joined_tables(*again, licensing_mapping()));
  });
  CHECK(need_mb < 60);
}
