#include "app/touch/targets.hpp"

#include <catch2/catch.hpp>

using namespace mastwise::touch;

namespace {

using Problems = std::vector<std::string>;

// A screen of 200 x 120 mm at 6 pixels to the millimeter; places in millimeters.
constexpr float kPxPerMm = 6.0F;

Rect mm(float left, float top, float right, float bottom) {
  return {left * kPxPerMm, top * kPxPerMm, right * kPxPerMm, bottom * kPxPerMm};
}

Targets frame_of(const std::vector<Target>& added) {
  Targets targets(kPxPerMm);
  targets.begin_frame(200.0F * kPxPerMm, 120.0F * kPxPerMm);
  for (const Target& target : added) targets.add(target);
  return targets;
}

Target row(const std::string& name, float top_mm, const std::string& list) {
  Target target{name, mm(10, top_mm, 100, top_mm + 12)};
  target.clip_px = mm(10, 20, 100, 60);
  target.joined = list;
  return target;
}

}  // namespace

TEST_CASE("a frame by the design has no problems") {
  CHECK(frame_of({}).problems().empty());
  CHECK(frame_of({{"Aim", mm(0, 0, 9, 9)}, {"Peak", mm(11, 0, 20, 9)}}).problems().empty());
  CHECK(frame_of({{"corner", mm(191, 111, 200, 120)}}).problems().empty());
}

TEST_CASE("a target that is too small is reported with its size") {
  CHECK(frame_of({{"Aim", mm(0, 0, 8, 9)}}).problems() ==
        Problems{"\"Aim\" (8.0 x 9.0 mm) is smaller than 9.0 mm in width"});
  CHECK(frame_of({{"Aim", mm(0, 0, 30, 8.5F)}}).problems() ==
        Problems{"\"Aim\" (30.0 x 8.5 mm) is smaller than 9.0 mm in height"});
  CHECK(frame_of({{"Aim", mm(0, 0, 12, 12)}}).problems(15.0) ==
        Problems{"\"Aim\" (12.0 x 12.0 mm) is smaller than 15.0 mm in width and height"});
  CHECK(frame_of({{"gone", mm(20, 20, 20, 20)}}).problems().size() == 1);
}

TEST_CASE("overlaps, small gaps, duplicate names and targets off the screen are reported") {
  CHECK(frame_of({{"Aim", mm(0, 0, 12, 12)}, {"Peak", mm(10, 3, 22, 15)}}).problems() ==
        Problems{"\"Aim\" (12.0 x 12.0 mm) overlaps \"Peak\" (12.0 x 12.0 mm) by 2.0 x 9.0 mm"});
  CHECK(frame_of({{"Aim", mm(0, 0, 12, 12)}, {"Peak", mm(13, 0, 25, 12)}}).problems() ==
        Problems{"\"Aim\" (12.0 x 12.0 mm) is 1.0 mm from \"Peak\" (12.0 x 12.0 mm), less than 2.0 "
                 "mm"});
  CHECK(frame_of({{"Aim", mm(0, 0, 12, 12)}, {"Peak", mm(13, 0, 25, 12)}})
            .problems(9.0, 0.0)
            .empty());
  // Corner to corner 1.5 mm each way is 2.1 mm.
  CHECK(
      frame_of({{"Aim", mm(0, 0, 12, 12)}, {"Peak", mm(13.5F, 13.5F, 25, 25)}}).problems().empty());
  CHECK(frame_of({{"Aim", mm(0, 0, 12, 12)}, {"Aim", mm(50, 0, 62, 12)}}).problems() ==
        Problems{"\"Aim\" (12.0 x 12.0 mm) and \"Aim\" (12.0 x 12.0 mm) have the same name"});
  CHECK(frame_of({{"Aim", mm(-1, 0, 12, 12)}}).problems() ==
        Problems{"\"Aim\" (13.0 x 12.0 mm) leaves the screen of 200.0 x 120.0 mm"});
}

TEST_CASE("rows of one list may touch but not overlap") {
  CHECK(frame_of({row("QAAA", 20, "stations"), row("QBBB", 32, "stations")}).problems().empty());
  CHECK(frame_of({row("QAAA", 20, "stations"), row("QBBB", 31, "stations")}).problems().size() ==
        1);
  CHECK(frame_of({row("QAAA", 20, "stations"), row("stop", 32, "stops")}).problems().size() == 1);
  CHECK(frame_of({row("QAAA", 20, ""), row("QBBB", 32, "")}).problems().size() == 1);
}

TEST_CASE("a partly scrolled row counts whole for size and by its visible part for place") {
  Target header{"filter", mm(10, 6, 100, 18)};
  // The row extends under the header and beyond the view, but only 3 mm of it are visible.
  const Targets frame =
      frame_of({header, row("QAAA", 11, "stations"), row("QBBB", 57, "stations")});
  CHECK(frame.problems().empty());
  CHECK(frame.find("QAAA")->visible_px() == mm(10, 20, 100, 23));
  CHECK(frame.at({300.0F, 15.0F * kPxPerMm})->name == "filter");
  CHECK(frame.at({300.0F, 21.0F * kPxPerMm})->name == "QAAA");
  CHECK(frame.at({300.0F, 61.0F * kPxPerMm}) == nullptr);
}

TEST_CASE("a row scrolled out completely is not a target") {
  const Targets frame = frame_of({row("above", 8, "stations"), row("below", 60, "stations")});
  CHECK(frame.all().empty());
  CHECK(frame.find("above") == nullptr);
}

TEST_CASE("only the highest layer can be touched, and layers may cover one another") {
  Target prompt{"Antenna is down", mm(40, 40, 80, 60)};
  prompt.layer = 1;
  Targets frame = frame_of({{"Aim", mm(30, 30, 60, 50)}, prompt});
  CHECK(frame.problems().empty());
  CHECK(frame.at({50 * kPxPerMm, 45 * kPxPerMm})->name == "Antenna is down");
  CHECK(frame.at({35 * kPxPerMm, 35 * kPxPerMm}) == nullptr);
  CHECK(frame.find("Aim") != nullptr);
  frame.begin_frame(100.0F, 100.0F);
  CHECK(frame.at({50.0F, 50.0F}) == nullptr);
  CHECK(frame.find("Aim") == nullptr);
}

TEST_CASE("edges belong to one rectangle only") {
  const Rect left{0.0F, 0.0F, 10.0F, 10.0F};
  const Rect right{10.0F, 0.0F, 20.0F, 10.0F};
  CHECK_FALSE(left.overlaps(right));
  CHECK_FALSE(left.contains({10.0F, 5.0F}));
  CHECK(right.contains({10.0F, 5.0F}));
  CHECK(left.inset(2.0F) == Rect{2.0F, 2.0F, 8.0F, 8.0F});
  CHECK(left.inset(-5.0F).intersect(right) == Rect{10.0F, 0.0F, 15.0F, 10.0F});
  CHECK(left.center() == Point{5.0F, 5.0F});
}
