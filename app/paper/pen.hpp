#pragma once

#include "app/paper/page.hpp"
#include "app/paper/typefaces.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::paper {

struct Style {
  double size_pt = 0.0;
  Weight weight = Weight::Regular;
  double gray = 0.0;
  double line_pt() const { return 1.3 * size_pt; }
};

enum class Align { Left, Center, Right };

// Part of a page.
struct Area {
  double left, top, right, bottom;
  double width() const { return right - left; }
};

// Writes and draws on a page. The letters of a text block stay between its top and bottom.
class Pen {
 public:
  Pen(Page& page, const Typefaces& typefaces) : page_(page), typefaces_(typefaces) {}

  // The same pen on another page, to measure text by writing it there.
  Pen on(Page& page) const { return {page, typefaces_}; }
  double width(std::string_view text, const Style& style) const;

  // One line from `at`, the left, middle or right of its baseline.
  void text(Spot at, std::string_view text, const Style& style, Align align = Align::Left);
  // One line, cut with dots if longer than the width.
  void text_within(Spot at, double width, std::string_view text, const Style& style,
                   Align align = Align::Left);
  // Lines from `at`, the upper left corner; returns the bottom. Text beyond `most_lines` is cut
  // with dots.
  double paragraph(Spot at, double width, std::string_view text, const Style& style,
                   std::size_t most_lines = kAnyLines);
  // As many items as fit, separated by commas, then "and 3 more".
  double list(Spot at, double width, const std::vector<std::string>& items, const Style& style,
              std::size_t most_lines);
  // Whether all of them fit.
  bool holds(double width, const std::vector<std::string>& items, const Style& style,
             std::size_t most_lines) const;

  void line(Spot from, Spot to, double width_pt, double gray = 0.0);
  void polygon(std::vector<Spot> corners, double gray);
  void polyline(std::vector<Spot> corners, double width_pt, bool closed, double gray = 0.0);
  void arc(Spot center, double radius_pt, double from_deg, double to_deg, double width_pt,
           double gray = 0.0);
  void circle(Spot center, double radius_pt, double width_pt, double gray = 0.0);
  void disc(Spot center, double radius_pt, double gray = 0.0);

  static constexpr std::size_t kAnyLines = static_cast<std::size_t>(-1);
  // From a line's top to its baseline.
  static double rise(const Style& style) { return 0.5 * style.line_pt() + 0.35 * style.size_pt; }

 private:
  std::vector<std::string> wrapped(std::string_view text, double width, const Style& style) const;
  std::string shortened(std::string text, double width, const Style& style) const;

  Page& page_;
  const Typefaces& typefaces_;
};

// The spot at a distance from the center, clockwise from the top of the page.
Spot around(Spot center, double radius_pt, double clockwise_deg);

}  // namespace mastwise::paper
