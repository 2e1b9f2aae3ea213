#include "core/sweep/edges.hpp"

#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;
using aim::Edges;
using aim::middle_of_edges;

namespace {

Bearing<Dial> at(double degrees) {
  return Bearing<Dial>::degrees(degrees);
}

}  // namespace

// By hand.
TEST_CASE("the middle of two edges is between them, also across north", "[edges]") {
  const auto plain = middle_of_edges(std::vector<Edges>{{at(40.0), at(100.0)}});
  REQUIRE(plain);
  CHECK(plain->middle.degrees() == Approx(70.0));
  CHECK(plain->width_deg == Approx(60.0));
  CHECK(plain->sigma_deg == Approx(3.0 / std::sqrt(2.0)));
  const auto over_north = middle_of_edges(std::vector<Edges>{{at(340.0), at(30.0)}});
  REQUIRE(over_north);
  CHECK(over_north->middle.degrees() == Approx(5.0));
  const auto wide = middle_of_edges(std::vector<Edges>{{at(100.0), at(40.0)}});
  REQUIRE(wide);
  CHECK(wide->middle.degrees() == Approx(250.0));
  CHECK(wide->width_deg == Approx(300.0));
}

TEST_CASE("a heading with a picture selects one of the two middles", "[edges]") {
  const std::vector<Edges> confused{{at(30.0), at(340.0)}};
  const auto with = middle_of_edges(confused, at(10.0));
  REQUIRE(with);
  CHECK(with->middle.degrees() == Approx(5.0));
  const auto behind = middle_of_edges(confused, at(200.0));
  REQUIRE(behind);
  CHECK(behind->middle.degrees() == Approx(185.0));
}

TEST_CASE("several pairs are averaged across north", "[edges]") {
  const std::vector<Edges> pairs{
      {at(328.0), at(30.0)}, {at(330.0), at(32.0)}, {at(332.0), at(28.0)}};
  const auto mean = middle_of_edges(pairs);
  REQUIRE(mean);
  CHECK((mean->middle - at(0.0)).size_deg() == Approx(0.0).margin(1e-9));  // 359, 1 and 0
  CHECK(mean->width_deg == Approx((62.0 + 62.0 + 56.0) / 3.0));
  CHECK(mean->sigma_deg == Approx(3.0 / std::sqrt(6.0)));
  // Scatter of 10 degrees over three: 10 / sqrt(3), more than the edges' error.
  const std::vector<Edges> loose{
      {at(320.0), at(20.0)}, {at(330.0), at(30.0)}, {at(340.0), at(40.0)}};
  const auto scattered = middle_of_edges(loose);
  REQUIRE(scattered);
  CHECK(scattered->sigma_deg == Approx(10.0 / std::sqrt(3.0)));
}

TEST_CASE("useless edges are refused", "[edges]") {
  CHECK_FALSE(middle_of_edges({}));
  CHECK_FALSE(middle_of_edges(std::vector<Edges>{{at(10.0), at(10.0)}}));
  const auto apart =
      middle_of_edges(std::vector<Edges>{{at(10.0), at(50.0)}, {at(50.0), at(10.0)}});
  REQUIRE_FALSE(apart);
  CHECK(apart.error().what.find("30 and 210") != std::string::npos);
}
