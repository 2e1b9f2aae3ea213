#include "tests/app/session/view_faults.hpp"

#include "tests/support/picture_text.hpp"

#include <algorithm>

namespace mastwise::test {
namespace {

// Texts that leave the screen on a side without an intended clip.
std::string texts_off_screen(const Stage& stage, const Screen& screen) {
  std::string found;
  for (const PictureText& text : stage.texts()) {
    const bool cut = text.clip_px.left > 0.0f || text.clip_px.top > 0.0f ||
                     text.clip_px.right < screen.width_px || text.clip_px.bottom < screen.height_px;
    const touch::Rect& rect = text.rect_px;
    const bool leaves = rect.left < 0.0f || rect.top < 0.0f || rect.right > screen.width_px ||
                        rect.bottom > screen.height_px;
    if (leaves && !cut) found += "  \"" + text.text + "\"\n";
  }
  return found;
}

// Texts begin at whole pixels, and letters reach a little beyond their advance.
constexpr float kOverhangPx = 2.0f;

bool beyond_sides(const touch::Rect& text, const touch::Rect& room) {
  return text.left < room.left - kOverhangPx || text.right > room.right + kOverhangPx;
}

// Texts that a clip cuts at the left or the right. Lists scroll, so they may cut above and below.
std::string texts_cut(const Stage& stage) {
  std::string found;
  for (const PictureText& text : stage.texts()) {
    if (beyond_sides(text.rect_px, text.clip_px)) found += "  \"" + text.text + "\"\n";
  }
  return found;
}

// Labels wider than their button or row.
std::string labels_too_wide(const Stage& stage) {
  std::string found;
  for (const PictureText& text : stage.texts()) {
    if (!text.clip_px.contains(text.rect_px.center())) continue;  // scrolled away
    for (const touch::Target& target : stage.targets().all()) {
      if (!target.visible_px().contains(text.rect_px.center())) continue;
      if (!beyond_sides(text.rect_px, target.rect_px)) continue;
      found += "  \"" + text.text + "\" on \"" + target.name + "\"\n";
    }
  }
  return found;
}

bool on_rail(const touch::Target& target) {
  return target.name.rfind("place ", 0) == 0 || target.name == "take back";
}

// Texts in fine print that are seen on something that can be touched. The rail of an upright
// screen, which is held in the hand, has such words below its icons.
std::string fine_print_to_touch(const Stage& stage) {
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
    const touch::Target* target = stage.targets().at(middle);
    if (target != nullptr && !on_rail(*target)) found += "  \"" + text.text + "\"\n";
  }
  return found;
}

// The visible box of the letters without the room above capitals and below the baseline.
touch::Rect letters(const PictureText& text) {
  const touch::Rect& rect = text.rect_px;
  const float height = rect.height();
  return {std::max(rect.left + 1.0f, text.clip_px.left),
          std::max(rect.top + 0.2f * height, text.clip_px.top),
          std::min(rect.right - 1.0f, text.clip_px.right),
          std::min(rect.bottom - 0.2f * height, text.clip_px.bottom)};
}

// Letters that run on to a button or row from outside.
std::string half_on_targets(const Stage& stage) {
  constexpr float kLeastPx = 2.0f;
  std::string found;
  for (const PictureText& text : stage.texts()) {
    const touch::Rect box = letters(text);
    if (box.empty()) continue;
    for (const touch::Target& target : stage.targets().all()) {
      const touch::Rect room = target.visible_px(), shared = box.intersect(room);
      if (room.contains(box.center()) || shared.width() < kLeastPx || shared.height() < kLeastPx) {
        continue;
      }
      found += "  \"" + text.text + "\" and \"" + target.name + "\"\n";
    }
  }
  return found;
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

std::string named(const char* fault, const std::string& lines) {
  return lines.empty() ? std::string() : std::string(fault) + ":\n" + lines;
}

std::string indented(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += "  " + line + "\n";
  return text;
}

std::string view_faults(const Stage& stage, const Screen& screen) {
  return named("targets", indented(stage.targets().problems())) +
         named("off the screen", texts_off_screen(stage, screen)) + named("cut", texts_cut(stage)) +
         named("wider than its button", labels_too_wide(stage)) +
         named("in fine print, to touch", fine_print_to_touch(stage)) +
         named("half on what can be touched", half_on_targets(stage)) +
         named("letters over letters", overlapping(stage));
}

}  // namespace mastwise::test
