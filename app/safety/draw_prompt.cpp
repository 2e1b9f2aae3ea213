#include "app/safety/draw.hpp"
#include "app/safety/draw_marks.hpp"
#include "app/safety/draw_pictures.hpp"
#include "app/safety/draw_prompt_layout.hpp"
#include "app/safety/update.hpp"
#include "app/words/cautions.hpp"
#include "app/words/language.hpp"

#include <algorithm>
#include <array>

// The prompts: what it is about as a picture, the cautions with their marks, who decides, and in
// small type the sources.
namespace mastwise {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;
using ui::Point;
using ui::Rect;

constexpr float kHeadLine = 34.0f, kTextLine = 31.0f, kFineLine = 23.0f, kTitleLine = 46.0f;

class PromptPage {
 public:
  PromptPage(ui::Ui& ui, const SafetyState& state, bool miles)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        prompt_(prompt_of(state.asking)),
        state_(state),
        miles_(miles) {}

  void draw(Rect area, bool practice);

 private:
  float title(Rect area, bool practice);
  void beside(Rect area);
  void stacked(Rect area);
  float lines(std::string_view words, float width, Face face) const {
    return static_cast<float>(ui_.wrapped(words, width, face).size());
  }
  float height_of(const safety::Caution& caution, float width) const;
  float height_of_all(float width, float mark) const;
  // `with_foot`: who decides comes below them on their page.
  void cautions(Rect area, bool with_foot);
  float foot_height(float width) const;
  float foot(Rect area);
  std::string head_of(const safety::Caution& caution) const {
    return words::caution_head(caution, state_.keep_out.unknown_m, miles_);
  }

  ui::Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  const safety::Prompt& prompt_;
  const SafetyState& state_;
  bool miles_;
};

float PromptPage::title(Rect area, bool practice) {
  const char* mark = words::say("PRACTICE");
  const float taken = practice ? canvas_.text_width(mark, Face::TextBold) + 24.0f : 0.0f;
  if (practice) {
    canvas_.text({area.right, area.top + 36.0f}, mark, Face::TextBold, theme_.warning,
                 Align::Right);
  }
  const std::string title = words::in_language(prompt_.title);
  const float room = area.width() - taken;
  const bool large = canvas_.text_width(title, Face::Second) <= room;
  const Face face = large ? Face::Second : Face::Matter;
  const float below =
      ui_.paragraph({area.left, area.top + 40.0f}, room, kTitleLine, title, face, theme_.warning);
  return below - ui_.line(kTitleLine, face) + 24.0f;
}

constexpr float kMark = 88.0f, kSmallMark = 64.0f, kMarkGap = 20.0f, kLeastGap = 8.0f;

float PromptPage::height_of(const safety::Caution& caution, float width) const {
  return ui_.line(kHeadLine, Face::Value) * lines(head_of(caution), width, Face::Value) +
         ui_.line(kTextLine, Face::Text) *
             lines(words::in_language(caution.text), width, Face::Text);
}

float PromptPage::height_of_all(float width, float mark) const {
  float height = 0.0f;
  for (const safety::Caution& caution : prompt_.cautions) {
    height += std::max(mark, height_of(caution, width - mark - kMarkGap));
  }
  return height + kLeastGap * static_cast<float>(prompt_.cautions.size() - 1);
}

// Spread over the height; small marks and, if that is not enough, a page that scrolls.
void PromptPage::cautions(Rect area, bool with_foot) {
  const auto gaps = static_cast<float>(prompt_.cautions.size() - 1);
  const float mark = height_of_all(area.width(), kMark) <= area.height() ? kMark : kSmallMark;
  const float width = area.width() - mark - kMarkGap;
  const float below = with_foot ? foot_height(area.width()) + kLeastGap : 0.0f;
  const float spare = area.height() - below - height_of_all(area.width(), mark);
  const float gap = std::clamp(kLeastGap + spare / std::max(1.0f, gaps), kLeastGap, 44.0f);
  const float top = ui_.begin_page("cautions", area);
  float y = top;
  for (const safety::Caution& caution : prompt_.cautions) {
    draw_caution_mark(ui_, {area.left, y, area.left + mark, y + mark}, caution.mark);
    const Point at{area.left + mark + kMarkGap, y + 27.0f};
    const float text =
        ui_.paragraph(at, width, kHeadLine, head_of(caution), Face::Value, theme_.ink);
    ui_.paragraph({at.x, text}, width, kTextLine, words::in_language(caution.text), Face::Text,
                  theme_.ink);
    y += std::max(mark, height_of(caution, width)) + gap;
  }
  y -= gap;
  if (with_foot) y = foot({area.left, y + kLeastGap, area.right, y + below});
  ui_.end_page("cautions", top, y);
}

float PromptPage::foot_height(float width) const {
  return ui_.line(kTextLine, Face::Text) *
             lines(words::in_language(prompt_.deference), width, Face::Text) +
         ui_.line(kFineLine, Face::Fine) * lines(words::sources(prompt_), width, Face::Fine) + 6.0f;
}

float PromptPage::foot(Rect area) {
  const float y = ui_.paragraph({area.left, area.top + 22.0f}, area.width(), kTextLine,
                                words::in_language(prompt_.deference), Face::Text, theme_.ink);
  return ui_.paragraph({area.left, y}, area.width(), kFineLine, words::sources(prompt_), Face::Fine,
                       theme_.second_ink);
}

// A wide screen: the picture over who decides, and beside them the cautions.
void PromptPage::beside(Rect area) {
  constexpr float kGap = 28.0f;
  // As much for the picture as the cautions leave.
  constexpr std::array kShares{0.48f, 0.45f, 0.42f, 0.39f, 0.36f};
  const auto fits = [&](float share) {
    return height_of_all((1.0f - share) * area.width() - kGap, kSmallMark) <= area.height();
  };
  const auto found = std::find_if(kShares.begin(), kShares.end(), fits);
  const float share = found == kShares.end() ? kShares.back() : *found;
  Rect left = area, right = area;
  left.right = area.left + share * area.width();
  right.left = left.right + kGap;
  // Large letters leave the picture no room above who decides.
  constexpr float kLeastPicture = 0.4f;  // of its width
  const float foot_top = area.bottom - foot_height(left.width());
  const bool drawn = prompt_.picture != safety::PromptPicture::None;
  const bool moved = drawn && foot_top - left.top < kLeastPicture * left.width();
  draw_prompt_picture(ui_,
                      {left.left, left.top, left.right, moved ? left.bottom : foot_top - 12.0f},
                      prompt_.picture, state_, miles_);
  if (!moved) foot({left.left, foot_top, left.right, left.bottom});
  cautions(right, moved);
}

// An upright one: picture, cautions, who decides.
void PromptPage::stacked(Rect area) {
  constexpr float kGap = 12.0f, kLeastPicture = 170.0f, kMovedPicture = 0.3f;
  const bool drawn = prompt_.picture != safety::PromptPicture::None;
  const auto left_by = [&](float mark) {
    return area.height() - foot_height(area.width()) - height_of_all(area.width(), mark) -
           3.0f * kGap;
  };
  const float room = left_by(kMark) < kLeastPicture ? left_by(kSmallMark) : left_by(kMark);
  const bool moved = drawn && room < kLeastPicture;
  const float picture = drawn ? std::clamp(moved ? kMovedPicture * area.height() : room,
                                           kLeastPicture, 0.62f * area.width())
                              : 0.0f;
  draw_prompt_picture(ui_, {area.left, area.top, area.right, area.top + picture}, prompt_.picture,
                      state_, miles_);
  const float top = area.top + picture + (drawn ? kGap : 0.0f);
  const float foot_top = moved ? area.bottom + kGap : area.bottom - foot_height(area.width());
  if (!moved) foot({area.left, foot_top, area.right, area.bottom});
  cautions({area.left, top, area.right, foot_top - kGap}, moved);
}

void PromptPage::draw(Rect area, bool practice) {
  area.top = title(area, practice);
  if (area.width() > area.height()) {
    beside(area);
  } else {
    stacked(area);
  }
}

}  // namespace

void draw_prompt(Ui& ui, const Shared& shared, const SafetyState& state) {
  const safety::Prompt& prompt = prompt_of(state.asking);
  const auto opened_at = ui.begin_prompt(std::string(prompt.title));
  const PromptLayout layout =
      prompt_layout(ui.screen().inset(1.5f * ui::kMargin), opened_at, shared.settings.left_handed);
  PromptPage(ui, state, shared.settings.miles).draw(layout.text, shared.stop.practice);
  ui.back_is("refuse");
  if (ui.button("refuse", layout.refuse, words::in_language(prompt.refuse), ButtonLook::Plain)) {
    ui.emit(act::RefuseAsked{});
  }
  if (ui.hold_button("confirm", layout.confirm, words::in_language(prompt.accept))) {
    ui.emit(act::ConfirmAsked{});
  }
}

}  // namespace mastwise
