#include "core/geo/gpx.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

// Elements and attributes of the GPX 1.1 schema [http://www.topografix.com/GPX/1/1]; the places are
// invented.
const std::string kBegin =
    "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
    "<gpx version=\"1.1\" creator=\"a hand\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n";

Position gpx_at(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

std::string refusal(const std::string& text) {
  const auto places = read_gpx(text);
  REQUIRE_FALSE(places);
  CHECK_FALSE(places.error().remedy.empty());
  return places.error().message();
}

}  // namespace

TEST_CASE("waypoints, routes and tracks are read", "[gpx]") {
  const auto places = read_gpx(
      kBegin +
      "<metadata><name>not a place</name><time>2026-01-01T00:00:00Z</time></metadata>"
      "<wpt lat=\"44.5\" lon=\"-71.25\"><ele>312.5</ele><time>2026-07-02T18:04:05.25+02:00</time>"
      "<name>Lake &amp; hill</name><cmt>comment</cmt><desc> by the <![CDATA[<lake>]]> </desc>"
      "<extensions><x:deep xmlns:x=\"urn:x\"><name>not this</name></x:deep></extensions></wpt>"
      "<wpt lat=\"+1\" lon=\"360\"><cmt>comment</cmt><time>yesterday</time></wpt>"
      "<rte><name>North</name><rtept lat=\"1\" lon=\"2\"><name>A</name></rtept>"
      "<rtept lat=\"3\" lon=\"4\"/></rte><rte><name>empty</name></rte>"
      "<trk><name>Yesterday</name><trkseg><trkpt lat=\"5\" lon=\"6\"/></trkseg>"
      "<trkseg><trkpt lat=\"7\" lon=\"8\"/><trkpt lat=\"9\" lon=\"10\"/></trkseg></trk></gpx>");
  REQUIRE(places);
  CHECK(places->remarks.empty());
  const UtcTime time{std::chrono::sys_days(std::chrono::year(2026) / 7 / 2) +
                     std::chrono::hours(16) + std::chrono::minutes(4) + milliseconds(5250)};
  CHECK(places->waypoints ==
        std::vector<GpxPlace>{{.position = gpx_at(44.5, -71.25),
                               .name = "Lake & hill",
                               .description = "by the <lake>",
                               .elevation_m = 312.5,
                               .time = time},
                              {.position = gpx_at(1.0, 0.0), .description = "comment"}});
  CHECK(places->routes == std::vector<GpxLine>{{"North",
                                                {{.position = gpx_at(1.0, 2.0), .name = "A"},
                                                 {.position = gpx_at(3.0, 4.0)}}}});
  CHECK(places->tracks ==
        std::vector<GpxLine>{
            {"Yesterday", {{.position = gpx_at(5.0, 6.0)}}},
            {"Yesterday", {{.position = gpx_at(7.0, 8.0)}, {.position = gpx_at(9.0, 10.0)}}}});
}

TEST_CASE("prefixes, GPX 1.0 and ISO 8859-1 are understood", "[gpx]") {
  const auto prefixed = read_gpx(
      "<g:gpx xmlns:g=\"http://www.topografix.com/GPX/1/1\"><g:wpt lat=\"1\" lon=\"2\">"
      "<g:name>A</g:name></g:wpt></g:gpx>");
  REQUIRE(prefixed);
  CHECK(prefixed->waypoints.at(0).name == "A");
  const auto old = read_gpx(
      "<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?><gpx version=\"1.0\" "
      "xmlns=\"http://www.topografix.com/GPX/1/0\"><time>2026-01-01T00:00:00Z</time>"
      "<wpt lon=\"2\" lat=\"1\"><name>H\xF6he</name></wpt></gpx>");
  REQUIRE(old);
  CHECK(old->waypoints.at(0).name == "Höhe");
}

TEST_CASE("an impossible place is left out with a remark", "[gpx]") {
  const auto places = read_gpx(kBegin +
                               "<wpt lat=\"91\" lon=\"0\"><name>A</name></wpt>\n<wpt lat=\"1\"/>\n"
                               "<wpt lat=\"1,5\" lon=\"0\"/><wpt lat=\"1\" lon=\"2\"/></gpx>");
  REQUIRE(places);
  CHECK(places->waypoints == std::vector<GpxPlace>{{.position = gpx_at(1.0, 2.0)}});
  REQUIRE(places->remarks.size() == 3);
  CHECK(places->remarks[0].find("line 3: skipped a place") == 0);
  CHECK(places->remarks[1] == "line 4: skipped a place without a position");
}

TEST_CASE("a file cut short is used up to the cut", "[gpx]") {
  const auto places = read_gpx(kBegin +
                               "<trk><name>T</name><trkseg>\n<trkpt lat=\"1\" lon=\"2\"/>\n"
                               "<trkpt lat=\"3\" lon=\"4\"/><trkpt lat=\"5\" lo");
  REQUIRE(places);
  REQUIRE(places->tracks.size() == 1);
  CHECK(places->tracks[0].name == "T");
  CHECK(places->tracks[0].places.size() == 2);
  REQUIRE(places->remarks.size() == 1);
  CHECK(places->remarks[0].find("line 5: ") == 0);
}

TEST_CASE("entities are refused before they can grow", "[gpx]") {
  std::string bomb = "<!DOCTYPE gpx [<!ENTITY a0 \"ha\">";
  for (int i = 1; i < 30; ++i) {
    bomb += "<!ENTITY a" + std::to_string(i) + " \"";
    for (int j = 0; j < 10; ++j) bomb += "&a" + std::to_string(i - 1) + ";";
    bomb += "\">";
  }
  bomb += "]><gpx><wpt lat=\"1\" lon=\"2\"><name>&a29;</name></wpt></gpx>";
  CHECK(refusal(bomb).find("declares entities") != std::string::npos);
  CHECK(refusal("<!DOCTYPE gpx [<!ENTITY % p SYSTEM \"file:///etc/passwd\"> %p;]><gpx/>")
            .find("declares entities") != std::string::npos);
}

TEST_CASE("a file that is not GPX is refused with the line", "[gpx]") {
  CHECK(refusal("<kml><wpt lat=\"1\" lon=\"2\"/></kml>").find("line 1: not a GPX file") == 0);
  CHECK(refusal("call_sign,rf_channel\n").find("line 1: ") != std::string::npos);
  CHECK(refusal("").find("no element found") != std::string::npos);
  CHECK(refusal("<gpx>\n<wpt</gpx>").find("line 2: ") != std::string::npos);
}

TEST_CASE("a text longer than a name can be is cut", "[gpx]") {
  const auto places = read_gpx(kBegin + "<wpt lat=\"1\" lon=\"2\"><name>" +
                               std::string(3'000'000, 'a') + "</name></wpt></gpx>");
  REQUIRE(places);
  CHECK(places->waypoints.at(0).name.size() == 10'000);
}
