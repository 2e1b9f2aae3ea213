#include "core/logbook/logbook_gpx.hpp"

#include "core/geo/gpx.hpp"
#include "tests/support/logbook_records.hpp"

#include <algorithm>
#include <array>
#include <regex>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

LogbookContent gpx_example() {
  LogbookContent content{
      .stops = {test::stop_record("b2", -0.00001, -180.0, 900), test::full_stop("a1")},
      .outcomes = {test::full_outcome("a1")}};
  content.stops[1].note += "\x01\xEF\xBF\xBF]]>";
  return content;
}

// The elements within <wpt>, in the order of the schema's sequence wptType
// [GPX 1.1 schema, http://www.topografix.com/GPX/1/1].
constexpr std::array<std::string_view, 19> kOrder{
    "ele",  "time", "magvar",        "geoidheight", "name",      "cmt", "desc",
    "src",  "link", "sym",           "type",        "fix",       "sat", "hdop",
    "vdop", "pdop", "ageofdgpsdata", "dgpsid",      "extensions"};

}  // namespace

TEST_CASE("the stops as waypoints keep the order of the GPX 1.1 schema", "[logbook][gpx]") {
  const std::string text = logbook_gpx(gpx_example());
  INFO(text);
  // gpxType: version fixed to "1.1" and creator are required, in the schema's name space.
  CHECK(text.find("<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" "
                  "creator=\"Mastwise\">") != std::string::npos);
  // latitudeType and longitudeType are decimals (without an exponent), longitudes below 180.
  CHECK(text.find("<wpt lat=\"-0.000010000\" lon=\"-180.000000000\">") != std::string::npos);
  // xsd:dateTime
  CHECK(text.find("<time>2026-07-01T00:15:00Z</time>") != std::string::npos);

  const std::regex element("<(/?)([a-z]+)[ >]");
  std::size_t waypoints = 0, place = 0, elements = 0;
  std::vector<std::string> open;
  for (std::sregex_iterator found(text.begin(), text.end(), element), end; found != end; ++found) {
    const std::string name = (*found)[2];
    if ((*found)[1] == "/") {
      REQUIRE(open.back() == name);
      open.pop_back();
      continue;
    }
    open.push_back(name);
    if (open.size() == 2) {
      CHECK(name == "wpt");
      ++waypoints;
      place = 0;
    }
    if (open.size() != 3) continue;
    const auto at = static_cast<std::size_t>(
        std::find(kOrder.begin() + static_cast<std::ptrdiff_t>(place), kOrder.end(), name) -
        kOrder.begin());
    INFO(name);
    REQUIRE(at < kOrder.size());
    place = at + 1;
    ++elements;
  }
  CHECK(open.empty());
  CHECK(waypoints == 2);
  CHECK(elements == 3 + 4);
  CHECK(text.find("<name>Stop 2026-07-01</name>") != std::string::npos);  // it has no name
}

TEST_CASE("a logbook's waypoints read back unchanged", "[logbook][gpx]") {
  const auto places = read_gpx(logbook_gpx(gpx_example()));
  REQUIRE(places);
  CHECK(places->remarks.empty());
  REQUIRE(places->waypoints.size() == 2);
  const GpxPlace& stop = places->waypoints[0];  // the oldest
  const StopRecord record = test::full_stop("a1");
  CHECK(stop.name == record.name);
  CHECK(stop.time == record.arrived);
  CHECK(stop.position.latitude_deg() == Approx(record.position.latitude_deg()).margin(1e-9));
  CHECK(stop.description ==
        "=1+1\nsecond line; it's <wet> & cold ]]>\nQAAB RF 9A: breaks up at 0 degrees true");
}

TEST_CASE("deleted stops and outcomes are left out of the waypoints", "[logbook][gpx]") {
  LogbookContent content = gpx_example();
  content.stops[0].mark.deleted = true;
  content.outcomes[0].mark.deleted = true;
  const auto places = read_gpx(logbook_gpx(content));
  REQUIRE(places->waypoints.size() == 1);
  CHECK(places->waypoints[0].description.find("QAAB") == std::string::npos);
}
