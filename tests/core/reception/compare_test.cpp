#include "core/reception/compare.hpp"

#include <catch2/catch.hpp>

namespace mastwise::reception {
namespace {

Prospect prospect(const char* call_sign, const char* network, std::optional<double> chance) {
  Prospect prospect{.station = {.call_sign = call_sign,
                                .network = network,
                                .position = *Position::at_deg(44.0, -100.0)}};
  prospect.outlook.chance_percent = chance;
  prospect.outlook.distance_m = 30e3;
  prospect.outlook.bearing = Bearing<True>::degrees(77.0);
  return prospect;
}

}  // namespace

TEST_CASE("places are compared by the wanted networks and stations", "[compare]") {
  Prospect many = prospect("QMUX", "", 60.0);
  many.station.programs = {{.virtual_channel = "6.1", .name = "Owl", .network = "North"},
                           {.virtual_channel = "6.2", .name = "Hare", .network = "South"}};
  const std::vector<std::vector<Prospect>> places{
      {prospect("QONE", "North", 95.0), prospect("QTWO", "South", 20.0)},
      {prospect("QONE", "North", 55.0), many, prospect("QTWO", "South", std::nullopt)},
      {prospect("QONE", "North", 99.0)}};
  const std::vector<Wish> wishes{{Wish::Kind::network, "north"}, {Wish::Kind::network, "South"}};
  const auto rows = compare_places(places, wishes);
  REQUIRE(rows.size() == 3);

  // The second place has both by its multiplex, 60 %; the first only 20 % of South; the third none.
  CHECK(rows[0].place == 1);
  CHECK(rows[0].granted == 2);
  CHECK(rows[0].weakest_percent == 60.0);
  CHECK(rows[0].mean_percent == 60.0);
  CHECK(rows[0].offers[0]->prospect == 1);
  CHECK(rows[0].offers[1]->prospect == 1);
  CHECK(rows[0].offers[1]->bearing.degrees() == 77.0);
  CHECK(rows[1].place == 0);
  CHECK(rows[1].weakest_percent == 20.0);
  CHECK(rows[1].mean_percent == Approx(57.5));
  CHECK(rows[2].place == 2);
  CHECK(rows[2].granted == 1);
  CHECK(rows[2].weakest_percent == 0.0);
  CHECK(rows[2].mean_percent == Approx(49.5));
  CHECK_FALSE(rows[2].offers[1]);
}

TEST_CASE("a wish can name stations, networks and programs", "[compare]") {
  Station station{
      .call_sign = "QMUX", .network = "North", .position = *Position::at_deg(44.0, -100.0)};
  station.programs = {{.virtual_channel = "6.2", .name = "Hare", .network = "South"}};
  using Kind = Wish::Kind;
  CHECK(grants(station, {Kind::call_sign, "qmux"}));
  CHECK_FALSE(grants(station, {Kind::call_sign, "QMU"}));
  CHECK(grants(station, {Kind::network, "NORTH"}));
  CHECK(grants(station, {Kind::network, "South"}));
  CHECK_FALSE(grants(station, {Kind::network, "Hare"}));
  CHECK(grants(station, {Kind::program, "hare"}));
  CHECK(grants(station, {Kind::program, "6.2"}));
  CHECK_FALSE(grants(station, {Kind::program, "6.1"}));
}

}  // namespace mastwise::reception
