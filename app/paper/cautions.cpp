#include "app/paper/sections.hpp"
#include "core/safety/prompts.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <fmt/format.h>

// The cautions of core/safety with their sources by number.
namespace mastwise::paper {
namespace {

constexpr Style kCaution{6.0};
constexpr Style kTitle{6.4, Weight::Bold};
constexpr Style kDeference{5.7, Weight::Regular, 0.30};

// The caution in one piece. A head with a blank is for the screen, which knows the antenna's
// height.
std::string in_full(const safety::Caution& caution) {
  const bool general = caution.head.find('{') == std::string_view::npos;
  return general ? fmt::format("{}. {}", caution.head, caution.text)
                 : fmt::format("Distance from any overhead line: {}", caution.text);
}

class Cautions {
 public:
  Cautions(Pen& pen, const Area& area) : pen_(pen), area_(area) {}

  double prompt(const safety::Prompt& prompt, const Area& column);
  double sources(double top);

 private:
  // The source's number, counted from 1 in order of use.
  std::size_t number(std::string_view source) {
    const auto known = std::find(sources_.begin(), sources_.end(), source);
    const auto index = static_cast<std::size_t>(known - sources_.begin());
    if (known == sources_.end()) sources_.push_back(source);
    return index + 1;
  }

  Pen& pen_;
  Area area_;
  std::vector<std::string_view> sources_;
};

double Cautions::prompt(const safety::Prompt& prompt, const Area& column) {
  constexpr double kIndent_pt = 6.0;
  double y = pen_.paragraph({column.left, column.top}, column.width(), prompt.title, kTitle);
  for (const safety::Caution& caution : prompt.cautions) {
    pen_.text({column.left, y + Pen::rise(kCaution)}, "–", kCaution);
    y = pen_.paragraph({column.left + kIndent_pt, y}, column.width() - kIndent_pt,
                       fmt::format("{} [{}]", in_full(caution), number(caution.source)), kCaution);
  }
  return pen_.paragraph({column.left, y}, column.width(), prompt.deference, kDeference) + 2.0;
}

double Cautions::sources(double top) {
  std::string words = "Sources:";
  for (std::size_t i = 0; i < sources_.size(); ++i) {
    words += fmt::format(" [{}] {}{}", i + 1, sources_[i], i + 1 < sources_.size() ? ";" : ".");
  }
  return pen_.paragraph({area_.left, top}, area_.width(), words, kFine);
}

}  // namespace

double write_cautions(Pen& pen, const Area& area) {
  Area below = area;
  below.top = write_label(pen, area, "CAUTIONS");
  constexpr double kGutter_pt = 14.0;
  const double column = (below.width() - kGutter_pt) / 2.0;
  Area left = below, right = below;
  left.right = below.left + column;
  right.left = below.right - column;
  Cautions cautions(pen, area);
  left.top = cautions.prompt(safety::before_raising(), left);
  right.top = cautions.prompt(safety::before_roof(), right);
  // Both columns of the second pair start at the same height.
  left.top = right.top = std::max(left.top, right.top);
  left.top = cautions.prompt(safety::weather(), left);
  right.top = cautions.prompt(safety::before_driving(), right);
  return cautions.sources(std::max(left.top, right.top));
}

}  // namespace mastwise::paper
