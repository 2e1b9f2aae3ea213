#pragma once

#include "app/shared/navigation.hpp"

#include <array>
#include <span>
#include <string>
#include <vector>

// The drawn guides: what a place is for in four steps, half a minute to read.
namespace mastwise {

struct GuideStep {
  const char* sentence;                    // English; {a}, {b} and {c} are the labels
  std::array<const char*, 3> labels = {};  // English, exactly as the place shows them
};

inline constexpr std::size_t kGuideSteps = 4;
struct GuidePage {
  Guide guide;
  const char* title;  // English
  std::array<GuideStep, kGuideSteps> steps;
};

// All guides but None.
std::span<const GuidePage> guide_pages();
const GuidePage& guide_page(Guide guide);  // not None

// The guide of a place on the rail.
Guide guide_of(Place place);

// A step in the language in use, as words between spaces; the pieces of a word differ in weight.
struct GuidePiece {
  std::string text;
  bool label = false;
  bool operator==(const GuidePiece&) const = default;
};
std::vector<std::vector<GuidePiece>> guide_words(const GuideStep& step);

}  // namespace mastwise
