#pragma once

#include "app/paper/card.hpp"
#include "app/paper/pen.hpp"

// Draws the parts of the card, each within its area from the top down. Each returns its bottom.
namespace mastwise::paper {

inline constexpr Style kLabel{6.5, Weight::Bold, 0.30};
inline constexpr Style kBody{7.0};
inline constexpr Style kBodyBold{7.0, Weight::Bold};
inline constexpr Style kSmallGray{6.6, Weight::Regular, 0.35};
inline constexpr Style kFine{5.4, Weight::Regular, 0.35};
inline constexpr double kRule_pt = 0.6, kRuleGray = 0.55;

// A heading over a thin line.
double write_label(Pen& pen, const Area& area, std::string_view words);

double write_answer(Pen& pen, const PaperCard& card, const Area& area);
void draw_dial(Pen& pen, const PaperCard& card, Spot center, double radius_pt);
inline constexpr double kDialMargin_pt = 21.0;  // width of its outermost marks beyond the radius

double write_stop(Pen& pen, const PaperCard& card, const Area& area);
double write_norths(Pen& pen, const PaperCard& card, const Area& area);
double write_paper_map(Pen& pen, const PaperCard& card, const Area& area);
double write_compass(Pen& pen, const PaperCard& card, const Area& area);

// Draws within the area; counts the headings that do not fit.
double write_plan(Pen& pen, const PaperPlan& plan, const Area& area);
// The line over the mast and a protractor; as high as height_of_sighting().
double write_sighting(Pen& pen, const Area& area);
double height_of_sighting();
double write_cautions(Pen& pen, const Area& area);

}  // namespace mastwise::paper
