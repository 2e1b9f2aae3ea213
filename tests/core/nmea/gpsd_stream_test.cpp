#include "core/nmea/gpsd_stream.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace mastwise;
using namespace mastwise::nmea;

namespace {

std::vector<GpsdLine> gpsd_lines(std::string_view text, std::size_t piece = 4096) {
  GpsdStream stream;
  std::vector<GpsdLine> lines;
  while (!text.empty()) {
    const std::size_t size = std::min(piece, text.size());
    stream.feed(text.substr(0, size), [&](GpsdLine line) { lines.push_back(std::move(line)); });
    text.remove_prefix(size);
  }
  return lines;
}

// What gpsd 3.22 of Debian 12 sent to a client, and the news of an unplugged device.
const std::string kSession =
    R"({"class":"VERSION","release":"3.22","rev":"3.22","proto_major":3,"proto_minor":14})"
    "\r\n"
    R"({"class":"DEVICES","devices":[{"class":"DEVICE","path":"/dev/pts/1","driver":"NMEA0183",)"
    R"("activated":"2026-11-29T17:46:02.224Z","flags":1,"native":0,"bps":4800,"parity":"N",)"
    R"("stopbits":1,"cycle":1.00}]})"
    "\r\n"
    R"({"class":"WATCH","enable":true,"json":true,"nmea":true,"raw":0,"scaled":false,)"
    R"("timing":false,"split24":false,"pps":false})"
    "\r\n"
    "$GPRMC,030721.000,A,3747.0876,S,17518.8934,E,0.89,181.39,311214,,,A*71\r\n"
    R"({"class":"TPV","device":"/dev/pts/1","mode":3,"time":"2034-08-16T03:07:21.000Z",)"
    R"("lat":-37.784793333,"lon":175.314890000})"
    "\r\n"
    R"({"class":"DEVICE","path":"/dev/pts/1","activated":0})"
    "\r\n"
    R"({"class":"DEVICE","path":"/dev/pts/1","activated":"2026-11-29T17:47:02.224Z"})"
    "\r\n"
    R"({"class":"ERROR","message":"Unrecognized request '?FOO'"})"
    "\r\n";

}  // namespace

TEST_CASE("gpsd's lines are read, wherever the stream is cut") {
  for (const std::size_t piece : {std::size_t{1}, std::size_t{7}, kSession.size()}) {
    const auto lines = gpsd_lines(kSession, piece);
    REQUIRE(lines.size() == 8);
    CHECK(std::get<gpsd::Version>(lines[0]).release == "3.22");
    CHECK(std::get<gpsd::Devices>(lines[1]).paths == std::vector<std::string>{"/dev/pts/1"});
    CHECK(std::holds_alternative<Ignored>(lines[2]));
    CHECK(std::get<Sentence>(lines[3]).line ==
          "$GPRMC,030721.000,A,3747.0876,S,17518.8934,E,0.89,181.39,311214,,,A*71");
    CHECK(std::holds_alternative<Ignored>(lines[4]));
    CHECK_FALSE(std::get<gpsd::Device>(lines[5]).active);
    CHECK(std::get<gpsd::Device>(lines[6]).active);
    CHECK(std::get<gpsd::Refusal>(lines[7]).message == "Unrecognized request '?FOO'");
  }
}

TEST_CASE("damaged lines of gpsd are ignored, and the next line is read") {
  const std::string good = "{\"class\":\"VERSION\",\"release\":\"3.22\"}\n";
  for (const std::string& bad :
       {std::string("{\"class\":\"DEVICES\",\"devi"), std::string("{\"class\":3}"),
        std::string("{\"class\":\"VERSION\""), std::string("{}"), std::string("[1,2]"),
        std::string("HTTP/1.1 400 Bad Request"), std::string(20000, '['), std::string("\0\xff", 2),
        std::string(2 * GpsdStream::kLongest, '{'), '$' + std::string(1 << 20, 'x')}) {
    const auto lines = gpsd_lines(bad + '\n' + good);
    INFO(bad.substr(0, 40));
    REQUIRE(lines.size() == 2);
    CHECK(std::holds_alternative<Ignored>(lines[0]));
    CHECK(std::holds_alternative<gpsd::Version>(lines[1]));
  }
  // A list of devices with odd entries.
  const auto odd = gpsd_lines(
      "{\"class\":\"DEVICES\",\"devices\":[1,{\"path\":2},{},{\"path\":\"/dev/ttyUSB0\"}]}\n");
  CHECK(std::get<gpsd::Devices>(odd.front()).paths == std::vector<std::string>{"/dev/ttyUSB0"});
  const auto none = gpsd_lines("{\"class\":\"DEVICES\",\"devices\":{}}\n");
  CHECK(std::get<gpsd::Devices>(none.front()).paths.empty());
}

TEST_CASE("a watch request names the device, whatever its path has") {
  const std::string request = gpsd_watch_request("/dev/a\"b\\c");
  REQUIRE(request.starts_with("?WATCH="));
  REQUIRE(request.ends_with(";\n"));
  const auto json = nlohmann::json::parse(request.substr(7, request.size() - 9));
  CHECK(json["device"] == "/dev/a\"b\\c");
  CHECK(json["nmea"] == true);
  CHECK(json["enable"] == true);
}
