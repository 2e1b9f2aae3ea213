#include "app/service/clocks.hpp"

#include "platform/time_zones.hpp"
#include "tests/support/assets.hpp"
#include "tests/support/utc_text.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using std::chrono::hours;
using Origin = LocalZone::Origin;

namespace {

const Position kDenver = *Position::at_deg(39.7392, -104.9903);
const Position kAtSea = *Position::at_deg(40.0, -40.0);

TimeZone tablets() {
  return {.name = "of the tablet", .periods = {{{}, hours(2), "TAB"}}};
}

}  // namespace

TEST_CASE("a position has the clocks of its zone, and at sea the tablet's count") {
  service::Clocks clocks(test::zone_map(), platform::time_zone, tablets());
  const LocalZone denver = clocks.at(kDenver);
  CHECK(denver.origin == Origin::Place);
  CHECK(denver.clocks->name == "America/Denver");
  for (const auto& position : {std::optional<Position>(), std::optional(kAtSea)}) {
    const LocalZone zone = clocks.at(position);
    CHECK(zone.origin == Origin::Tablet);
    CHECK(*zone.clocks == tablets());
  }
  CHECK(clocks.at(kDenver) == denver);
  CHECK_FALSE(clocks.at(kAtSea) == denver);
}

TEST_CASE("without tz data the tablet's zone counts, and without that UTC") {
  const auto knows_none = [](const std::string&) { return std::optional<TimeZone>(); };
  service::Clocks tablet_only(test::zone_map(), knows_none, tablets());
  CHECK(tablet_only.at(kDenver).origin == Origin::Tablet);
  service::Clocks without_map(std::nullopt, platform::time_zone, tablets());
  CHECK(without_map.at(kDenver).origin == Origin::Tablet);
  service::Clocks nothing(test::zone_map(), knows_none, std::nullopt);
  CHECK(nothing.at(kDenver).origin == Origin::None);
  CHECK(nothing.at(kDenver).clocks->name == "UTC");
}

TEST_CASE("each zone's rules are read once") {
  int reads = 0;
  service::Clocks clocks(
      test::zone_map(),
      [&](const std::string& name) {
        ++reads;
        return platform::time_zone(name);
      },
      std::nullopt);
  for (int i = 0; i < 5; ++i) {
    CHECK(clocks.at(kDenver).origin == Origin::Place);
    CHECK(clocks.at(*Position::at_deg(31.7619, -106.4850)).clocks->name == "America/Denver");
  }
  CHECK(reads == 1);
}

// tz data may be newer or older than the map: each zone that the map names must be known here.
TEST_CASE("the system knows every zone of the map") {
  const std::string text = test::zones_file().substr(20, 8'000);
  std::size_t at = 0;
  int known = 0;
  std::string unknown;
  while (known < 250) {
    const std::size_t end = text.find('\n', at);
    REQUIRE(end != std::string::npos);
    const std::string name = text.substr(at, end - at);
    if (!platform::time_zone(name)) unknown += name + " ";
    at = end + 1;
    ++known;
  }
  CHECK(unknown.empty());
}
