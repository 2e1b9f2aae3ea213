#include "app/paper/layout.hpp"

#include "app/paper/sections.hpp"
#include "app/words/times.hpp"
#include "core/text/iso_time.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace mastwise::paper {
namespace {

constexpr double kMargin_pt = 30.0, kGutter_pt = 18.0, kApart_pt = 8.0;

// Printed above invented data.
double write_practice(Pen& pen, const Area& area) {
  constexpr double kHeight_pt = 15.0, kWhite = 1.0;
  constexpr Style kMark{9.0, Weight::Bold, kWhite};
  pen.polygon({{area.left, area.top},
               {area.right, area.top},
               {area.right, area.top + kHeight_pt},
               {area.left, area.top + kHeight_pt}},
              0.0);
  pen.text({0.5 * (area.left + area.right), area.top + 10.8},
           "PRACTICE: invented stations and hills. Do not aim by this card", kMark, Align::Center);
  return area.top + kHeight_pt + 4.0;
}

double write_head(Pen& pen, const PaperCard& card, const Area& area) {
  constexpr Style kTitle{21.0, Weight::Bold}, kAbout{9.0, Weight::Regular, 0.25},
      kKind{11.0, Weight::Bold};
  const double first = area.top + 19.0, second = first + 13.0, dated = 130.0;
  pen.text_within({area.left, first}, area.width() - dated,
                  card.title.empty() ? "Aim by its position" : card.title, kTitle);
  pen.text_within({area.left, second}, area.width() - dated,
                  card.title.empty() ? "not a station of the catalog" : card.about, kAbout);
  pen.text({area.right, first}, card.plan ? "Aim card and plan" : "Aim card", kKind, Align::Right);
  pen.text({area.right, second}, words::date(card.day), kAbout, Align::Right);
  const double bottom = second + 6.0;
  pen.line({area.left, bottom}, {area.right, bottom}, 1.4);
  return bottom + kApart_pt;
}

double write_aim(Pen& pen, const PaperCard& card, const Area& area) {
  constexpr double kRadius_pt = 66.0;
  const double reach = kRadius_pt + kDialMargin_pt;
  Area left = area;
  left.right = area.right - 2.0 * reach - 6.0;
  const double answered = write_answer(pen, card, left);
  draw_dial(pen, card, {area.right - reach, area.top + reach}, kRadius_pt);
  constexpr double kBelow_pt = 14.0;  // no north marks there, only the band
  return std::max(answered, area.top + reach + kRadius_pt + kBelow_pt) + kApart_pt;
}

double write_helps(Pen& pen, const PaperCard& card, const Area& area) {
  Area left = area, right = area;
  left.right = 0.5 * (area.left + area.right - kGutter_pt);
  right.left = left.right + kGutter_pt;
  left.top = write_stop(pen, card, left) + kApart_pt;
  left.top = write_compass(pen, card, left);
  right.top = write_norths(pen, card, right) + kApart_pt;
  right.top = write_paper_map(pen, card, right);
  return std::max(left.top, right.top) + kApart_pt;
}

// Lines for notes, if there is room.
void rule_notes(Pen& pen, const Area& area) {
  constexpr double kLine_pt = 20.0;
  if (area.bottom - area.top < 2.0 * kLine_pt) return;
  double y = write_label(pen, area, "NOTES");
  for (y += kLine_pt; y <= area.bottom; y += kLine_pt) {
    pen.line({area.left, y}, {area.right, y}, 0.35, kRuleGray);
  }
}

void write_foot(Pen& pen, const Area& area) {
  pen.text({area.left, area.bottom},
           "Valid for this stop and date; rig sides only while the rig stays parked.", kSmallGray);
  pen.text({area.right, area.bottom}, "Mastwise", kSmallGray, Align::Right);
}

double height_of_cautions(const Pen& pen, const Area& area) {
  Page scratch{};
  Pen dry = pen.on(scratch);
  return write_cautions(dry, area) - area.top;
}

}  // namespace

Page lay_out(const PaperCard& card, PageSize size, const Typefaces& typefaces) {
  Page page{.size = size,
            .title = "Aim card" + (card.title.empty() ? "" : ", " + card.title) + ", " +
                     words::date(card.day),
            .made_on = iso_utc_seconds(card.date)};
  Pen pen(page, typefaces);
  Area area{kMargin_pt, kMargin_pt, size.width_pt - kMargin_pt, size.height_pt - kMargin_pt};
  write_foot(pen, area);
  if (card.practice) area.top = write_practice(pen, area);
  area.top = write_head(pen, card, area);
  area.top = write_aim(pen, card, area);
  area.top = write_helps(pen, card, area);
  Area cautions = area;
  cautions.top = area.bottom - 1.5 * kSmallGray.line_pt() - height_of_cautions(pen, area);
  write_cautions(pen, cautions);
  area.bottom = cautions.top - kApart_pt;
  if (card.plan) area.top = write_plan(pen, *card.plan, area) + kApart_pt;
  if (area.bottom - area.top >= height_of_sighting()) {
    area.top = write_sighting(pen, area) + kApart_pt;
  }
  rule_notes(pen, area);
  return page;
}

}  // namespace mastwise::paper
