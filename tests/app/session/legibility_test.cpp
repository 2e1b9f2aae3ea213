#include "tests/app/session/views.hpp"
#include "tests/support/sanitized.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

// Letters large enough for the distance at which they are read, and none over another.
// Least heights, in minutes of arc: 12 for anything on the dash, 20 for what matters, 60 for the
// answer (ISO 15008 asks for 12 to 20 in vehicles, figures from memory; the rest is common
// practice, no source).
using namespace mastwise;
using test::Stage;
using test::View;

namespace {

constexpr test::Screen kSizes[]{test::kHeadUnit, test::kTablet, test::kLargeTablet, test::kUpright};
constexpr double kDash_mm = 700.0, kHand_mm = 400.0;

// Capitals and figures of B612 are three quarters of the em (its OS/2 table: 1500 of 2000).
double arc_minutes(ui::Face face, const ui::Metrics& metrics, double distance_mm) {
  const double mm = 0.75 * ui::em_units(face) * metrics.px_per_unit / metrics.px_per_mm;
  return std::atan(mm / distance_mm) * 180.0 / M_PI * 60.0;
}

bool on_rail(const touch::Target& target) {
  return target.name.rfind("place ", 0) == 0;
}

// Texts in fine print that are seen on something that can be touched. The rail of an upright
// screen, which is held in the hand, has such words below its icons.
std::string fine_print_to_touch(const Stage& stage, int& fine_print) {
  std::string found;
  const float scale = stage.metrics().px_per_unit;
  const auto pictured = stage.texts();
  for (const ui::DrawnText& text : stage.drawn()) {
    if (text.face != ui::Face::Fine && text.face != ui::Face::FineBold) continue;
    const touch::Point middle{text.rect.center().x * scale, text.rect.center().y * scale};
    // Not what has scrolled out of its page.
    const bool seen = std::any_of(pictured.begin(), pictured.end(), [&](const auto& one) {
      return one.text == text.text && one.clip_px.contains(middle);
    });
    if (!seen) continue;
    ++fine_print;
    const touch::Target* target = stage.targets().at(middle);
    if (target != nullptr && !on_rail(*target)) found += "  \"" + text.text + "\"\n";
  }
  return found;
}

// The visible box of the letters without the room above capitals and below the baseline.
touch::Rect letters(const test::PictureText& text) {
  const touch::Rect& rect = text.rect_px;
  const float height = rect.height();
  return {std::max(rect.left + 1.0f, text.clip_px.left),
          std::max(rect.top + 0.2f * height, text.clip_px.top),
          std::min(rect.right - 1.0f, text.clip_px.right),
          std::min(rect.bottom - 0.2f * height, text.clip_px.bottom)};
}

std::string overlapping(const Stage& stage) {
  std::string found;
  const auto texts = stage.texts();
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const touch::Rect one = letters(texts[i]);
    if (one.empty()) continue;
    for (std::size_t j = i + 1; j < texts.size(); ++j) {
      const touch::Rect other = letters(texts[j]);
      if (other.empty() || !one.overlaps(other)) continue;
      found += "  \"" + texts[i].text + "\" and \"" + texts[j].text + "\"\n";
    }
  }
  return found;
}

}  // namespace

TEST_CASE("letters have the height of their role on every screen") {
  for (const test::Screen& screen : kSizes) {
    const auto metrics = ui::metrics(screen.width_px, screen.height_px, screen.dots_per_inch);
    INFO(screen.name);
    for (const ui::Face face : {ui::Face::Text, ui::Face::TextBold, ui::Face::Value}) {
      CHECK(arc_minutes(face, metrics, kDash_mm) >= 12.0);
    }
    for (const ui::Face face : {ui::Face::Matter, ui::Face::Second, ui::Face::Big}) {
      CHECK(arc_minutes(face, metrics, kDash_mm) >= 20.0);
    }
    CHECK(arc_minutes(ui::Face::Answer, metrics, kDash_mm) >= 60.0);
    CHECK(arc_minutes(ui::Face::Fine, metrics, kHand_mm) >= 12.0);
    CHECK(arc_minutes(ui::Face::Fine, metrics, kDash_mm) < 12.0);  // hence only in the hand
  }
}

TEST_CASE("nothing that can be touched is in fine print, and no letters cover others") {
  std::size_t number = 0;
  int fine_print = 0;
  for (const test::Screen& screen : kSizes) {
    for (const View& view : test::views()) {
      if (test::kSanitized && number++ % 31 != 0) continue;
      Stage stage(screen);
      view.reach(stage);
      INFO(view.name << " on " << screen.name);
      CHECK(fine_print_to_touch(stage, fine_print) == "");
      CHECK(overlapping(stage) == "");
    }
  }
  CHECK(fine_print > (test::kSanitized ? 10 : 500));
}
