#include "app/words/chances.hpp"
#include "app/words/places.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"
#include "tests/support/utc_text.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

TEST_CASE("whole and tenth degrees stay within the circle") {
  CHECK(words::whole_degrees(0.0) == "0°");
  CHECK(words::whole_degrees(207.95) == "208°");
  CHECK(words::whole_degrees(359.4) == "359°");
  CHECK(words::whole_degrees(359.6) == "0°");
  CHECK(words::whole_degrees(Bearing<Magnetic>::degrees(-0.2)) == "0°");
  CHECK(words::tenths_of_degree(207.95) == "208.0°");
  CHECK(words::tenths_of_degree(222.09) == "222.1°");
  CHECK(words::tenths_of_degree(359.94) == "359.9°");
  CHECK(words::tenths_of_degree(359.97) == "0.0°");
}

// 1 mile is 1,609.344 m (the international mile of 1959).
TEST_CASE("distances have their unit and only useful digits") {
  CHECK(words::distance(10'368.18, true) == "6.4 mi");
  CHECK(words::distance(10'368.18, false) == "10.4 km");
  CHECK(words::distance(499.0, true) == "0.31 mi");
  CHECK(words::distance(499.0, false) == "0.50 km");
  CHECK(words::distance(0.0, false) == "0.00 km");
  CHECK(words::distance(99'940.0, false) == "99.9 km");
  CHECK(words::distance(99'960.0, false) == "100 km");
  CHECK(words::distance(225'000.0, true) == "140 mi");
}

TEST_CASE("a rig angle prints as right or left of the nose") {
  const auto said = [](double degrees) {
    return words::from_nose(RigAngle::clockwise_deg(degrees));
  };
  CHECK(said(0.3) == "straight ahead");
  CHECK(said(-0.3) == "straight ahead");
  CHECK(said(1.0) == "1° right");
  CHECK(said(118.0) == "118° right");
  CHECK(said(179.6) == "straight behind");
  CHECK(said(180.4) == "straight behind");
  CHECK(said(181.0) == "179° left");
  CHECK(said(340.0) == "20° left");
  CHECK(said(359.4) == "1° left");
}

TEST_CASE("the turn shows until half a degree is left") {
  const auto said = [](double degrees) { return words::turn(Turn::clockwise_deg(degrees)); };
  CHECK(said(90.0) == "Turn right");
  CHECK(said(-90.0) == "Turn left");
  CHECK(said(0.4) == "On target");
  CHECK(said(-0.4) == "On target");
  CHECK(said(0.6) == "Turn right");
  CHECK(said(359.0) == "Turn left");
}

TEST_CASE("declination, ages and dates print as words") {
  CHECK(words::declination(Declination::east_deg(-14.14)) == "14.1° west");
  CHECK(words::declination(Declination::east_deg(13.06)) == "13.1° east");
  CHECK(words::age(milliseconds(3400)) == "3 s");
  CHECK(words::age(milliseconds(89'000)) == "89 s");
  CHECK(words::age(milliseconds(240'000)) == "4 min");
  CHECK(words::age(std::chrono::hours(2)) == "2 h");
  CHECK(words::date(std::chrono::local_days(std::chrono::year(2026) / 7 / 2)) == "2 July 2026");
  CHECK(words::date(std::chrono::local_days(std::chrono::year(2028) / 2 / 29)) ==
        "29 February 2028");
}

TEST_CASE("a moment prints by its zone's clocks, with the zone's short name") {
  using namespace std::chrono;
  const UtcTime time = test::utc("2026-07-02T02:04:00Z");
  const auto in = [](seconds ahead, const char* short_name) {
    return TimeZone{.name = "x", .periods = {{{}, ahead, short_name}}};
  };
  CHECK(words::moment(time, in(hours(-7), "PDT")) == "1 July 2026, 19:04 PDT");
  CHECK(words::moment(time + seconds(5), in(hours(-7), "PDT")) == "1 July 2026, 19:04:05 PDT");
  CHECK(words::moment(time, in(hours(5) + minutes(45), "+0545")) == "2 July 2026, 07:49 UTC+5:45");
  CHECK(words::moment(time, in(hours(-3), "-03")) == "1 July 2026, 23:04 UTC-3");
  CHECK(words::moment(time, utc_zone()) == "2 July 2026, 02:04 UTC");
}

TEST_CASE("the words say whose clocks the dates follow") {
  const UtcTime time = test::utc("2026-07-02T02:04:00Z");
  const auto clocks = std::make_shared<TimeZone>(
      TimeZone{.name = "x", .periods = {{{}, std::chrono::hours(-7), "PDT"}}});
  using Origin = LocalZone::Origin;
  CHECK(words::zone_caution({Origin::Place, clocks}, time).empty());
  CHECK(words::zone_caution({Origin::Tablet, clocks}, time) ==
        "No time zone known here; dates follow the tablet's clock, PDT");
  CHECK(words::zone_caution({}, time) == "No time zone known; dates are UTC");
}

TEST_CASE("every chance is for an ordinary evening, and trees have leaves or none") {
  using reception::Surroundings;
  CHECK(words::evening() == "on an ordinary evening");
  CHECK(words::surroundings(Surroundings::forest, true) == "forest, in leaf");
  CHECK(words::surroundings(Surroundings::scattered_trees, false) == "scattered trees, bare");
  CHECK(words::surroundings(Surroundings::town, false) == "town");
}

TEST_CASE("a station's title and programs leave out unknown parts") {
  Station station{.call_sign = "QABC", .position = *Position::at_deg(42, -118)};
  CHECK(words::title(station) == "QABC");
  CHECK(words::programs(station).empty());
  CHECK(words::carries(station).empty());
  station.city = "Alkali Wells";
  CHECK(words::carries(station) == "Alkali Wells");
  station.network = "Basin";
  station.programs = {{.virtual_channel = "6.1", .name = "News", .network = "Basin"},
                      {.virtual_channel = "6.2", .network = "Kids"},
                      {.name = "Old Films"}};
  CHECK(words::title(station) == "QABC 6.1");
  CHECK(words::programs(station) == "6.1 News, 6.2 Kids, Old Films");
  CHECK(words::carries(station) == "Basin, Kids");
}

TEST_CASE("a position prints by a near place", "[places]") {
  const places::PopulatedPlace bend{.name = "Bend",
                                    .country = "US",
                                    .country_name = "United States",
                                    .admin = "OR",
                                    .region = "OR",
                                    .population = 87'014,
                                    .position = *Position::at_deg(44.0582, -121.3153)};
  const auto near = [&](double distance_m, double bearing_deg) {
    return places::NearPlace{bend, distance_m, Bearing<True>::degrees(bearing_deg)};
  };
  // A mile is 1609.344 m (1959 agreement).
  CHECK(words::near_place(near(12 * 1609.344, 44.0), true) == "12 mi NE of Bend, OR");
  CHECK(words::near_place(near(12'300.0, 200.0), false) == "12 km S of Bend, OR");
  CHECK(words::near_place(near(9.96 * 1609.344, 338.0), true) == "10 mi N of Bend, OR");
  CHECK(words::near_place(near(4'000.0, 337.0), false) == "4.0 km NW of Bend, OR");
  CHECK(words::near_place(near(900.0, 0.0), false) == "near Bend, OR");
  places::PopulatedPlace paris = bend;
  paris.name = "Paris";
  paris.region = "";
  paris.country_name = "France";
  CHECK(words::place(paris) == "Paris, France");
}
