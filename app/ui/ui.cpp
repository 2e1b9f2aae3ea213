#include "app/ui/ui.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::ui {

Ui::Ui(Canvas canvas, const Metrics& metrics, Look look, const Input& input, Motion& motion,
       touch::Targets& targets)
    : canvas_(canvas),
      metrics_(metrics),
      look_(look),
      theme_(ui::theme(look)),
      input_(input),
      motion_(motion),
      targets_(targets) {
  motion_.moving = false;
  for (auto& [name, list] : motion_.lists) {
    if (list.view_px.empty()) list.scroll.stop();
    list.view_px = {};
  }
  std::erase_if(motion_.prompts, [](const auto& prompt) { return !prompt.second.drawn; });
  for (auto& [name, prompt] : motion_.prompts) prompt.drawn = false;
  targets_.begin_frame(metrics.width_px, metrics.height_px);
}

Rect Ui::to_px(Rect rect) const {
  const float scale = metrics_.px_per_unit;
  return {rect.left * scale, rect.top * scale, rect.right * scale, rect.bottom * scale};
}

bool Ui::touchable(const std::string& name, Rect rect, bool enabled, const std::string& joined) {
  touch::Target target{.name = name, .rect_px = to_px(rect), .enabled = enabled};
  if (clip_) target.clip_px = to_px(*clip_);
  target.joined = joined;
  target.scrolls_in = scrolls_;
  rows_drawn_ = true;
  targets_.add(std::move(target));
  const auto& tapped = input_.tapped;
  return enabled && std::any_of(tapped.begin(), tapped.end(),
                                [&](const Input::Tap& tap) { return tap.target == name; });
}

Ui::Steered Ui::steered(const std::string& name, Rect rect) {
  targets_.add({.name = name, .rect_px = to_px(rect), .for_keys = touch::Target::ForKeys::Field});
  Steered steered{.on = input_.steered == name};
  if (!input_.steer || input_.steer->target != name) return steered;
  using Kind = touch::KeyAct::Kind;
  steered.tapped = input_.steer->kind == Kind::Tap;
  steered.held = input_.steer->kind == Kind::Hold;
  if (input_.steer->kind == Kind::Steer) steered.key = input_.steer->key;
  return steered;
}

bool Ui::button(const std::string& name, Rect rect, std::string_view label, ButtonLook look,
                bool enabled) {
  constexpr float kRadius = 14.0f, kEdge = 3.0f;
  const bool tapped = touchable(name, rect, enabled);
  const Color color = !enabled                      ? theme_.second_ink
                      : look == ButtonLook::Warning ? theme_.warning
                                                    : theme_.accent;
  const bool filled = enabled && (look != ButtonLook::Plain) != pressed(name);
  const Color on_fill = look == ButtonLook::Warning ? theme_.on_warning : theme_.on_accent;
  canvas_.fill(rect, filled ? color : theme_.panel, kRadius);
  if (!filled) canvas_.outline(rect.inset(kEdge / 2.0f), color, enabled ? kEdge : 1.0f, kRadius);
  draw_label(rect, label, filled ? on_fill : color);
  return tapped;
}

// On one line in the larger face, else on as many as the height has room for; letters that are
// larger than usual only as far as they fit.
void Ui::draw_label(Rect rect, std::string_view label, Color color) {
  constexpr float kSides = 20.0f, kCapHeight = 0.36f;
  const float room = rect.width() - kSides;
  const bool wide = canvas_.text_width(label, Face::Value) > room;
  const Face face = wide ? Face::TextBold : Face::Value;
  const float share = share_within(rect, label, face, kSides);
  const float apart = 1.1f * share * canvas_.em(face);
  const auto lines = wrapped(label, room / share, face);
  float baseline = rect.center().y + kCapHeight * em_units(face) -
                   apart * static_cast<float>(lines.size() - 1) / 2.0f;
  for (const std::string_view words : lines) {
    canvas_.text({rect.center().x, baseline}, words, face, color, Align::Center, share);
    baseline += apart;
  }
}

float Ui::share_within(Rect rect, std::string_view label, Face face, float sides) const {
  constexpr float kStep = 0.04f, kLine = 1.1f;
  const float least = canvas_.usual_share(face), room = rect.width() - sides;
  const auto fits = [&](float share) {
    const auto lines = wrapped(label, room / share, face);
    const float height = kLine * share * canvas_.em(face) * static_cast<float>(lines.size());
    const auto narrow = [&](std::string_view words) {
      return share * canvas_.text_width(words, face) <= room;
    };
    return height <= rect.height() && std::all_of(lines.begin(), lines.end(), narrow);
  };
  for (float share = 1.0f; share > least; share -= kStep) {
    if (fits(share)) return share;
  }
  return least;
}

std::vector<touch::Gesture> Ui::gestures_in(Rect rect) const {
  std::vector<touch::Gesture> found;
  const Rect rect_px = to_px(rect);
  for (const touch::Gesture& gesture : input_.gestures) {
    const bool taken = gesture.kind == touch::Gesture::Kind::Tap && !input_.tapped.empty();
    if (!taken && rect_px.contains(gesture.start_px)) found.push_back(gesture);
  }
  return found;
}

const Bitmap& Ui::bitmap(const std::string& name, std::uint64_t version,
                         const std::function<Bitmap()>& make) {
  Bitmap& bitmap = motion_.bitmaps[name];
  if (bitmap.version != version) {
    bitmap = make();
    bitmap.version = version;
  }
  return bitmap;
}

float Ui::begin_scroll(const std::string& name, Rect viewport, float content_height) {
  scrolls_ = name;
  rows_drawn_ = false;
  Motion::List& list = motion_.lists[name];
  list.view_px = to_px(viewport);
  touch::Scroll& scroll = list.scroll;
  const float scale = metrics_.px_per_unit;
  scroll.set_extent(content_height * scale, viewport.height() * scale);
  for (const touch::Gesture& gesture : input_.gestures) {
    if (list.view_px.contains(gesture.start_px)) scroll.apply(gesture);
  }
  if (scroll.advance(input_.seconds)) motion_.moving = true;
  // Shapes of the whole width keep their edge strokes.
  constexpr float kStroke = 4.0f;
  clip_ = {viewport.left - kStroke, viewport.top, viewport.right + kStroke, viewport.bottom};
  canvas_.push_clip(*clip_);
  return scroll.offset_px() / scale;
}

void Ui::end_scroll() {
  if (!rows_drawn_) add_page_for_keys();
  canvas_.pop_clip();
  clip_.reset();
  scrolls_.clear();
}

// What has nothing to touch, or text beyond it, has the focus as a whole.
void Ui::add_page_for_keys() {
  const Motion::List& list = motion_.lists[scrolls_];
  const float offset_px = list.scroll.offset_px(), most_px = list.scroll.greatest_px();
  if (most_px <= 0.0f) return;
  targets_.add({.name = "scroll " + scrolls_,
                .rect_px = list.view_px,
                .clip_px = list.view_px,
                .scrolls_in = scrolls_,
                .for_keys = touch::Target::ForKeys::Page,
                .more_above = offset_px > 0.0f,
                .more_below = offset_px < most_px});
}

bool Ui::in_reach(float row_top, float row_bottom) const {
  const float beyond = row_bottom - row_top;
  return clip_ && row_bottom + beyond > clip_->top && row_top - beyond < clip_->bottom;
}

float Ui::begin_page(const std::string& name, Rect viewport) {
  const auto known = motion_.page_heights.find(name);
  const float height = known == motion_.page_heights.end() ? 0.0f : known->second;
  return viewport.top - begin_scroll(name, viewport, height);
}

void Ui::end_page(const std::string& name, float top, float bottom) {
  if (rows_drawn_) add_page_for_keys();
  end_scroll();
  float& height = motion_.page_heights[name];
  if (std::fabs(height - (bottom - top)) > 0.5f) motion_.moving = true;
  height = bottom - top;
}

double Ui::smooth(const std::string& name, double target) {
  Spring& spring = motion_.springs.try_emplace(name, target).first->second;
  spring.aim_at(target);
  if (spring.advance(input_.seconds)) motion_.moving = true;
  return spring.value();
}

double Ui::smooth_angle(const std::string& name, double target_deg) {
  Spring& spring = motion_.springs.try_emplace(name, target_deg).first->second;
  spring.aim_at(spring.value() + fold_half_circle_deg(target_deg - spring.value()));
  if (spring.advance(input_.seconds)) motion_.moving = true;
  return spring.value();
}

namespace {

// Where to break a word that is wider than the line, such as an address: behind the last slash that
// fits. 0: the word fits, or has none.
std::size_t slash_that_fits(const Canvas& canvas, std::string_view word, float width, Face face) {
  if (canvas.text_width(word, face) <= width) return 0;
  for (std::size_t at = word.rfind('/'); at != std::string_view::npos && at > 0;
       at = word.rfind('/', at - 1)) {
    if (at + 1 < word.size() && canvas.text_width(word.substr(0, at + 1), face) <= width) {
      return at + 1;
    }
  }
  return 0;
}

}  // namespace

std::vector<std::string_view> Ui::wrapped(std::string_view words, float width, Face face) const {
  std::vector<std::string_view> lines;
  while (!words.empty()) {
    std::size_t end = std::min(words.find(' '), words.size());
    while (end < words.size()) {
      const std::size_t longer = std::min(words.find(' ', end + 1), words.size());
      if (canvas_.text_width(words.substr(0, longer), face) > width) break;
      end = longer;
    }
    if (const std::size_t slash = slash_that_fits(canvas_, words.substr(0, end), width, face)) {
      lines.push_back(words.substr(0, slash));
      words.remove_prefix(slash);
      continue;
    }
    lines.push_back(words.substr(0, end));
    words.remove_prefix(std::min(words.size(), end + 1));
  }
  return lines;
}

float Ui::paragraph(Point at, float width, float line_height, std::string_view words, Face face,
                    Color color, Align align, float share) {
  for (const std::string_view words_of_line : wrapped(words, width / share, face)) {
    // A word that is wider than the line.
    const float own = std::min(share, canvas_.size_within(width, words_of_line, face));
    canvas_.text(at, words_of_line, face, color, align, own);
    at.y += line(line_height, face, share);
  }
  return at.y;
}

}  // namespace mastwise::ui
