#include "app/guide/draw.hpp"
#include "app/guide/draw_pictures.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/layout.hpp"
#include "app/words/language.hpp"

#include <algorithm>

// The page of a guide.
namespace mastwise::screens {
namespace {

constexpr float kGap = 16.0f, kLine = 33.0f;

GuidePictures pictures_of(Guide guide) {
  switch (guide) {
    case Guide::None:
    case Guide::Here:
      return here_pictures();
    case Guide::Stations:
      return stations_pictures();
    case Guide::Map:
      return map_pictures();
    case Guide::Aim:
      return aim_pictures();
    case Guide::Plan:
      return plan_pictures();
    case Guide::Path:
      return path_pictures();
    case Guide::Peak:
      return peak_pictures();
    case Guide::Logbook:
      return logbook_pictures();
    case Guide::Ahead:
      return ahead_pictures();
    case Guide::Data:
      return data_pictures();
    case Guide::Roof:
      return roof_pictures();
  }
  return here_pictures();
}

// A sentence with the labels of the screen in bold.
class Sentence {
 public:
  Sentence(Ui& ui, const GuideStep& step, float width) : canvas_(ui.canvas()), theme_(ui.theme()) {
    const float space = canvas_.text_width(" ", Face::Text);
    float right = 0.0f;
    for (auto& word : guide_words(step)) {
      float wide = 0.0f;
      for (const GuidePiece& piece : word) wide += canvas_.text_width(piece.text, face(piece));
      if (lines_.empty() || right + space + wide > width) {
        lines_.emplace_back();
        right = -space;
      }
      right += space + wide;
      lines_.back().push_back(std::move(word));
    }
  }

  float height() const { return kLine * static_cast<float>(lines_.size()); }

  // `at`: the first baseline.
  void draw(Point at) const {
    for (const auto& line : lines_) {
      float x = at.x;
      GuidePiece run;
      const auto flush = [&] {
        canvas_.text({x, at.y}, run.text, face(run), theme_.ink);
        x += canvas_.text_width(run.text, face(run));
        run.text.clear();
      };
      for (std::size_t i = 0; i < line.size(); ++i) {
        // The space before a label belongs to the words before it.
        if (i > 0) run.text += " ";
        for (const GuidePiece& piece : line[i]) {
          if (piece.label != run.label) {
            flush();
            run.label = piece.label;
          }
          run.text += piece.text;
        }
      }
      flush();
      at.y += kLine;
    }
  }

 private:
  static Face face(const GuidePiece& piece) { return piece.label ? Face::TextBold : Face::Text; }

  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  std::vector<std::vector<std::vector<GuidePiece>>> lines_;
};

void draw_step(Ui& ui, Rect card, std::size_t index, const GuideStep& step,
               void (*picture)(Sketch&)) {
  constexpr float kInset = 16.0f, kPicture = 0.49f, kNumber = 52.0f;
  const ui::Theme& theme = ui.theme();
  ui.canvas().fill(card, theme.panel, 14.0f);
  const float side = std::min(kPicture * card.width(), 1.2f * card.height());
  const Rect room{card.left + kInset, card.top + kInset, card.left + side, card.bottom - kInset};
  Sketch sketch(ui, room);
  picture(sketch);
  const float left = room.right + 22.0f;
  const Sentence sentence(ui, step, card.right - kInset - left);
  const float top = card.center().y - 0.5f * (kNumber + sentence.height());
  ui.canvas().text({left, top + 36.0f}, std::to_string(index + 1), Face::Second, theme.accent);
  sentence.draw({left, top + kNumber + 30.0f});
}

}  // namespace

void draw_guide(Ui& ui, const Shared& shared) {
  constexpr float kHead = 72.0f, kDone = 176.0f;
  const GuidePage& guide = guide_page(shared.guide);
  const GuidePictures pictures = pictures_of(shared.guide);
  const Rect page = ui.screen().inset(ui::kMargin);
  ui.canvas().text({page.left, page.top + 52.0f}, words::say(guide.title), Face::Matter,
                   ui.theme().ink);
  const Rect done{page.right - kDone, page.top, page.right, page.top + kHead};
  if (ui.button("close guide", done, words::say("Done"), ui::ButtonLook::Filled)) {
    ui.emit(act::OpenGuide{Guide::None});
  }
  const std::size_t columns = ui.portrait() ? 1 : 2, rows = kGuideSteps / columns;
  const auto part = [](float length, std::size_t count) {
    return (length - kGap * static_cast<float>(count - 1)) / static_cast<float>(count);
  };
  const float top = done.bottom + kGap, width = part(page.width(), columns);
  const float height = part(page.bottom - top, rows);
  for (std::size_t i = 0; i < kGuideSteps; ++i) {
    const float x = page.left + (width + kGap) * static_cast<float>(i % columns);
    const float y = top + (height + kGap) * static_cast<float>(i / columns);
    draw_step(ui, {x, y, x + width, y + height}, i, guide.steps[i], pictures[i]);
  }
}

}  // namespace mastwise::screens
