#include "core/angles/bearing.hpp"

#include <type_traits>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

template <class A, class B>
concept Subtractable = requires(A a, B b) {
  a - b;
};
template <class A, class B>
concept Comparable = requires(A a, B b) {
  a == b;
};
template <class Angle, class Correction>
concept MagneticFrom = requires(Angle a, Correction c) {
  to_magnetic(a, c);
};
template <class Angle, class Correction>
concept GridFrom = requires(Angle a, Correction c) {
  to_grid(a, c);
};
template <class Angle, class Correction>
concept TrueFrom = requires(Angle a, Correction c) {
  to_true(a, c);
};
template <class Angle, class Correction>
concept RigFrom = requires(Angle a, Correction c) {
  to_rig_angle(a, c);
};

template <class... Angles>
constexpr bool kNoneFromDouble = (!std::is_convertible_v<double, Angles> && ...);

}  // namespace

TEST_CASE("a wrong north does not compile") {
  STATIC_REQUIRE(Subtractable<Bearing<True>, Bearing<True>>);
  STATIC_REQUIRE_FALSE(Subtractable<Bearing<True>, Bearing<Magnetic>>);
  STATIC_REQUIRE_FALSE(Subtractable<Bearing<Magnetic>, Bearing<Grid>>);
  STATIC_REQUIRE_FALSE(Subtractable<Bearing<True>, RigAngle>);
  STATIC_REQUIRE_FALSE(Comparable<Bearing<True>, Bearing<Magnetic>>);
  STATIC_REQUIRE_FALSE(Comparable<Bearing<True>, RigAngle>);
  STATIC_REQUIRE_FALSE(std::is_convertible_v<Bearing<True>, Bearing<Magnetic>>);
  STATIC_REQUIRE_FALSE(std::is_constructible_v<Bearing<True>, Bearing<Grid>>);
  STATIC_REQUIRE(kNoneFromDouble<Bearing<True>, Bearing<Magnetic>, Bearing<Grid>, RigAngle, Turn,
                                 Declination, Convergence, RigHeading>);
}

TEST_CASE("conversions between norths accept only their correction") {
  STATIC_REQUIRE(MagneticFrom<Bearing<True>, Declination>);
  STATIC_REQUIRE_FALSE(MagneticFrom<Bearing<True>, Convergence>);
  STATIC_REQUIRE_FALSE(MagneticFrom<Bearing<True>, double>);
  STATIC_REQUIRE_FALSE(MagneticFrom<Bearing<Magnetic>, Declination>);
  STATIC_REQUIRE_FALSE(MagneticFrom<Bearing<Grid>, Declination>);
  STATIC_REQUIRE(GridFrom<Bearing<True>, Convergence>);
  STATIC_REQUIRE_FALSE(GridFrom<Bearing<Magnetic>, Convergence>);
  STATIC_REQUIRE_FALSE(GridFrom<Bearing<True>, Declination>);
  STATIC_REQUIRE(TrueFrom<Bearing<Magnetic>, Declination>);
  STATIC_REQUIRE(TrueFrom<Bearing<Grid>, Convergence>);
  STATIC_REQUIRE(TrueFrom<RigAngle, RigHeading>);
  STATIC_REQUIRE_FALSE(TrueFrom<Bearing<Magnetic>, Convergence>);
  STATIC_REQUIRE_FALSE(TrueFrom<RigAngle, Declination>);
  STATIC_REQUIRE(RigFrom<Bearing<True>, RigHeading>);
  STATIC_REQUIRE_FALSE(RigFrom<Bearing<Magnetic>, RigHeading>);
  STATIC_REQUIRE_FALSE(RigFrom<Bearing<True>, Bearing<True>>);
}

TEST_CASE("bearings fold into one circle and turns into half a circle to either side") {
  CHECK(Bearing<True>::degrees(360.0).degrees() == 0.0);
  CHECK(Bearing<True>::degrees(-0.0).degrees() == 0.0);
  CHECK_FALSE(std::signbit(Bearing<True>::degrees(-0.0).degrees()));
  CHECK(Bearing<True>::degrees(-90.0).degrees() == 270.0);
  CHECK(Bearing<True>::degrees(725.0).degrees() == 5.0);
  // A tiny negative angle rounds to 360 when 360 is added: it must come back as 0.
  CHECK(Bearing<True>::degrees(-1e-20).degrees() == 0.0);
  CHECK(Turn::clockwise_deg(180.0).clockwise_deg() == 180.0);
  CHECK(Turn::clockwise_deg(-180.0).clockwise_deg() == 180.0);
  CHECK(Turn::clockwise_deg(181.0).clockwise_deg() == -179.0);
  CHECK((Bearing<True>::degrees(10.0) - Bearing<True>::degrees(350.0)).clockwise_deg() == 20.0);
  CHECK((Bearing<True>::degrees(350.0) - Bearing<True>::degrees(10.0)).clockwise_deg() == -20.0);
  CHECK(Bearing<Magnetic>::degrees(200.0).reciprocal().degrees() == 20.0);
}

// Rules of land navigation worked by hand: magnetic = true - declination (east positive).
TEST_CASE("declination east is subtracted from true") {
  const auto east = Bearing<True>::degrees(90.0);
  CHECK(to_magnetic(east, Declination::east_deg(10.0)).degrees() == 80.0);
  CHECK(to_magnetic(east, Declination::east_deg(-10.0)).degrees() == 100.0);
  CHECK(to_true(Bearing<Magnetic>::degrees(80.0), Declination::east_deg(10.0)) == east);
  CHECK(to_grid(east, Convergence::east_deg(-2.0)).degrees() == 92.0);
  CHECK(to_true(Bearing<Grid>::degrees(92.0), Convergence::east_deg(-2.0)) == east);
}

TEST_CASE("the rig angle is clockwise from the nose") {
  const auto nose = RigHeading::nose_at(Bearing<True>::degrees(300.0));
  CHECK(to_rig_angle(Bearing<True>::degrees(30.0), nose).clockwise_deg() == 90.0);
  CHECK(to_true(RigAngle::clockwise_deg(90.0), nose).degrees() == 30.0);
}
