#include "app/paper/pen.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include <fmt/format.h>

namespace mastwise::paper {
namespace {

constexpr const char* kDots = "…";

// The bytes up to and with the character that ends at or before `end`.
std::size_t character_start(const std::string& text, std::size_t end) {
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  return end;
}

std::string joined(const std::vector<std::string>& items, std::size_t count) {
  std::string text;
  for (std::size_t i = 0; i < count; ++i) {
    if (i > 0) text += ", ";
    text += items[i];
  }
  if (count < items.size()) text += fmt::format(" and {} more", items.size() - count);
  return text;
}

}  // namespace

Spot around(Spot center, double radius_pt, double clockwise_deg) {
  const double angle = clockwise_deg * std::numbers::pi / 180.0;
  return {center.x + radius_pt * std::sin(angle), center.y - radius_pt * std::cos(angle)};
}

double Pen::width(std::string_view text, const Style& style) const {
  return typefaces_.width(typefaces_.printable(text), style.size_pt, style.weight);
}

void Pen::text(Spot at, std::string_view text, const Style& style, Align align) {
  const std::string printable = typefaces_.printable(text);
  const double width = typefaces_.width(printable, style.size_pt, style.weight);
  if (align == Align::Right) at.x -= width;
  if (align == Align::Center) at.x -= 0.5 * width;
  page_.marks.emplace_back(Text{.at = at,
                                .size_pt = style.size_pt,
                                .weight = style.weight,
                                .gray = style.gray,
                                .text = printable});
}

void Pen::text_within(Spot at, double width, std::string_view text, const Style& style,
                      Align align) {
  this->text(at, shortened(std::string(text), width, style), style, align);
}

std::string Pen::shortened(std::string text, double most, const Style& style) const {
  if (width(text, style) <= most) return text;
  while (!text.empty() && width(text + kDots, style) > most) {
    text.resize(character_start(text, text.size() - 1));
  }
  while (!text.empty() && text.back() == ' ') text.pop_back();
  return text + kDots;
}

std::vector<std::string> Pen::wrapped(std::string_view text, double most,
                                      const Style& style) const {
  std::vector<std::string> lines;
  std::string line;
  while (!text.empty()) {
    const std::size_t space = text.find(' ');
    const std::string_view word = text.substr(0, space);
    text.remove_prefix(space == std::string_view::npos ? text.size() : space + 1);
    if (word.empty()) continue;
    std::string longer = line.empty() ? std::string(word) : line + ' ' + std::string(word);
    if (!line.empty() && width(longer, style) > most) {
      lines.push_back(std::exchange(line, std::string(word)));
    } else {
      line = std::move(longer);
    }
    // Cut a word longer than a line: nobody reads it to its end.
    line = shortened(std::move(line), most, style);
  }
  if (!line.empty()) lines.push_back(std::move(line));
  return lines;
}

double Pen::paragraph(Spot at, double most, std::string_view text, const Style& style,
                      std::size_t most_lines) {
  std::vector<std::string> lines = wrapped(text, most, style);
  if (lines.size() > most_lines) {
    lines.resize(most_lines);
    lines.back() = shortened(lines.back() + " " + kDots, most, style);
  }
  for (const std::string& line : lines) {
    this->text({at.x, at.y + rise(style)}, line, style);
    at.y += style.line_pt();
  }
  return at.y;
}

bool Pen::holds(double most, const std::vector<std::string>& items, const Style& style,
                std::size_t most_lines) const {
  return wrapped(joined(items, items.size()), most, style).size() <= most_lines;
}

double Pen::list(Spot at, double most, const std::vector<std::string>& items, const Style& style,
                 std::size_t most_lines) {
  const auto fits = [&](std::size_t count) {
    return wrapped(joined(items, count), most, style).size() <= most_lines;
  };
  std::size_t count = items.size();
  if (!holds(most, items, style, most_lines)) {
    for (count = 1; count + 1 < items.size() && fits(count + 1);) ++count;
  }
  return paragraph(at, most, joined(items, count), style, most_lines);
}

void Pen::line(Spot from, Spot to, double width_pt, double gray) {
  polyline({from, to}, width_pt, false, gray);
}

void Pen::polygon(std::vector<Spot> corners, double gray) {
  page_.marks.emplace_back(
      Shape{.corners = std::move(corners), .gray = gray, .closed = true, .filled = true});
}

void Pen::polyline(std::vector<Spot> corners, double width_pt, bool closed, double gray) {
  page_.marks.emplace_back(
      Shape{.corners = std::move(corners), .gray = gray, .width_pt = width_pt, .closed = closed});
}

void Pen::arc(Spot center, double radius_pt, double from_deg, double to_deg, double width_pt,
              double gray) {
  page_.marks.emplace_back(Arc{.center = center,
                               .radius_pt = radius_pt,
                               .from_deg = from_deg,
                               .to_deg = to_deg,
                               .gray = gray,
                               .width_pt = width_pt});
}

void Pen::circle(Spot center, double radius_pt, double width_pt, double gray) {
  arc(center, radius_pt, 0.0, 360.0, width_pt, gray);
}

// A ring so wide that it has no hole.
void Pen::disc(Spot center, double radius_pt, double gray) {
  circle(center, 0.5 * radius_pt, radius_pt, gray);
}

}  // namespace mastwise::paper
