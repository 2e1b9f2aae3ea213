#include "core/zones/zone_map.hpp"

#include "tests/support/assets.hpp"

#include <cmath>
#include <cstring>
#include <fstream>
#include <iostream>
#include <sstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

std::string zone_at(double latitude_deg, double longitude_deg) {
  return test::zone_map().zone_at(*Position::at_deg(latitude_deg, longitude_deg));
}

// "+340308-1181434" or "+5130-00007" [ISO 6709]: degrees, minutes, and seconds if they are given.
double angle_deg(const std::string& digits, std::size_t degree_digits) {
  const double sign = digits.front() == '-' ? -1.0 : 1.0;
  const auto part = [&](std::size_t at, std::size_t size) {
    return at < digits.size() ? std::stod(digits.substr(at, size)) : 0.0;
  };
  return sign * (part(1, degree_digits) + part(1 + degree_digits, 2) / 60.0 +
                 part(3 + degree_digits, 2) / 3600.0);
}

}  // namespace

// Zones by 49 CFR 71 in the US, and by the tz database's comments elsewhere; positions of towns
// from memory.
TEST_CASE("a place has the time zone of its law, also where the border is odd", "[zones]") {
  struct Town {
    const char* name;
    double latitude_deg, longitude_deg;
    const char* zone;
  };
  for (const Town& town : std::vector<Town>{
           {"Los Angeles", 34.0522, -118.2437, "America/Los_Angeles"},
           {"Indianapolis", 39.7684, -86.1581, "America/Indiana/Indianapolis"},
           {"Gary, Indiana", 41.5934, -87.3464, "America/Chicago"},
           {"Evansville, Indiana", 37.9716, -87.5711, "America/Chicago"},
           {"Knox, Indiana", 41.2959, -86.6250, "America/Indiana/Knox"},
           {"Phoenix", 33.4484, -112.0740, "America/Phoenix"},
           {"Window Rock, Navajo Nation", 35.6806, -109.0526, "America/Denver"},
           {"Tuba City, Navajo Nation", 36.1350, -111.2399, "America/Denver"},
           {"Second Mesa, Hopi within the Navajo Nation", 35.7953, -110.5060, "America/Phoenix"},
           {"Goodland, western Kansas", 39.3508, -101.7102, "America/Denver"},
           {"Colby, Kansas", 39.3958, -101.0524, "America/Chicago"},
           {"El Paso", 31.7619, -106.4850, "America/Denver"},
           {"Van Horn, Texas", 31.0398, -104.8308, "America/Chicago"},
           {"Pensacola", 30.4213, -87.2169, "America/Chicago"},
           {"Tallahassee", 30.4383, -84.2807, "America/New_York"},
           {"Nashville", 36.1627, -86.7816, "America/Chicago"},
           {"Knoxville", 35.9606, -83.9207, "America/New_York"},
           {"Marquette, Michigan", 46.5436, -87.3954, "America/Detroit"},
           {"Ironwood, Michigan", 46.4547, -90.1710, "America/Menominee"},
           {"Ontario, Oregon", 44.0266, -116.9629, "America/Boise"},
           {"Coeur d'Alene", 47.6777, -116.7805, "America/Los_Angeles"},
           {"West Wendover, Nevada", 40.7391, -114.0733, "America/Denver"},
           {"Honolulu", 21.3069, -157.8583, "Pacific/Honolulu"},
           {"Adak", 51.8800, -176.6581, "America/Adak"},
           {"St. John's, Newfoundland", 47.5615, -52.7126, "America/St_Johns"},
           {"Happy Valley-Goose Bay", 53.3017, -60.3261, "America/Goose_Bay"},
           {"Regina", 50.4452, -104.6189, "America/Regina"},
           {"Hermosillo", 29.0729, -110.9559, "America/Hermosillo"},
           {"Perth", -31.9523, 115.8613, "Australia/Perth"},
           {"Eucla", -31.6772, 128.8831, "Australia/Eucla"},
           {"Broken Hill", -31.9596, 141.4608, "Australia/Broken_Hill"},
           {"Lord Howe Island", -31.5553, 159.0821, "Australia/Lord_Howe"},
           {"Kathmandu", 27.7172, 85.3240, "Asia/Kathmandu"},
           {"Urumqi", 43.8256, 87.6168, "Asia/Shanghai"},
           {"London", 51.5074, -0.1278, "Europe/London"},
           {"Chatham Islands", -43.9535, -176.5597, "Pacific/Chatham"}}) {
    INFO(town.name);
    CHECK(zone_at(town.latitude_deg, town.longitude_deg) == town.zone);
  }
}

TEST_CASE("the high seas have no time zone, and every position on earth has an answer", "[zones]") {
  CHECK(zone_at(40.0, -40.0).empty());
  CHECK(zone_at(-30.0, -120.0).empty());
  // Off San Francisco: within the territorial waters of 12 nautical miles (22.2 km), and beyond.
  CHECK(zone_at(37.75, -122.62) == "America/Los_Angeles");
  CHECK(zone_at(37.75, -123.5).empty());
  for (const double latitude_deg : {-90.0, -89.99, 0.0, 89.99, 90.0}) {
    for (const double longitude_deg : {-180.0, -179.999, 0.0, 179.999, 180.0}) {
      CHECK_NOTHROW(zone_at(latitude_deg, longitude_deg));
    }
  }
}

// Another source: the tz database names for each zone the position of its principal place. They are
// rounded to an arc minute, and some are on a shore.
TEST_CASE("the principal place of every zone of the tz database is in that zone", "[zones]") {
  std::ifstream table("/usr/share/zoneinfo/zone.tab");
  if (!table) {
    std::cout << "SKIPPED: no zone.tab of the system's tz database\n";
    return;
  }
  int zones = 0;
  std::string others;
  for (std::string line; std::getline(table, line);) {
    if (line.empty() || line.front() == '#') continue;
    std::istringstream columns(line);
    std::string countries, place, name;
    std::getline(columns, countries, '\t');
    std::getline(columns, place, '\t');
    std::getline(columns, name, '\t');
    const std::size_t second = place.find_first_of("+-", 1);
    const std::string found =
        zone_at(angle_deg(place.substr(0, second), 2), angle_deg(place.substr(second), 3));
    ++zones;
    if (found != name) others += name + " is in \"" + found + "\"; ";
  }
  CHECK(zones > 400);
  // The law's time in Urumqi is another than the zone's of that name; the other three are small.
  CHECK(others ==
        "Asia/Urumqi is in \"Asia/Shanghai\"; Europe/Monaco is in \"Europe/Paris\"; "
        "America/Lower_Princes is in \"America/Marigot\"; Europe/Vatican is in \"Europe/Rome\"; ");
}

TEST_CASE("damaged zones are refused", "[zones]") {
  const std::string whole = test::zones_file();
  const auto refused = [](const std::string& file) {
    const auto read = zones::ZoneMap::load(file);
    return !read && read.error().message().find("time zones are damaged") != std::string::npos;
  };
  CHECK_FALSE(refused(whole));
  CHECK(refused({}));
  for (const std::size_t size : {std::size_t{7}, std::size_t{19}, whole.size() - 1}) {
    CHECK(refused(whole.substr(0, size)));
  }
  std::string other = whole;
  other.push_back('\0');
  CHECK(refused(other));
  other = whole;
  other[0] = 'X';
  CHECK(refused(other));
  // The first run of a row after it: past the last column, and of a zone without a name.
  std::uint32_t names = 0;
  std::memcpy(&names, whole.data() + 8, 4);
  const std::size_t starts = 20 + names, runs = starts + 4 * 10'800;
  other = whole;
  std::memset(other.data() + runs, 0xFF, 2);
  CHECK(refused(other));
  other = whole;
  std::memset(other.data() + runs + 2, 0xFF, 2);
  CHECK(refused(other));
  other = whole;
  std::memset(other.data() + starts, 0xFF, 4);
  CHECK(refused(other));
}
