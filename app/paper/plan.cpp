#include "app/paper/sections.hpp"
#include "app/words/chances.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

// The turn plan as a table: a row for each heading.
namespace mastwise::paper {
namespace {

constexpr Style kHeading{11.5, Weight::Bold};
constexpr Style kCell{7.0};
constexpr Style kCellBold{7.0, Weight::Bold};
constexpr Style kCellGray{6.6, Weight::Regular, 0.30};
constexpr std::size_t kMostLines = 6;  // of one list

std::vector<std::string> with_chances(const std::vector<PlanStation>& stations) {
  std::vector<std::string> items;
  for (const PlanStation& station : stations) {
    items.push_back(station.title + " " + words::chance_number(station.chance_percent));
  }
  return items;
}

// Adds the shown channels if there is room; all RF numbers matter more than some names.
std::vector<std::string> channel_items(const PaperHeading& heading, bool with_names) {
  std::vector<std::string> items;
  for (const PaperChannel& channel : heading.channels) {
    items.push_back(with_names ? fmt::format("{} ({})", channel.rf_channel, channel.shows)
                               : channel.rf_channel);
  }
  return items;
}

class Table {
 public:
  Table(const PaperPlan& plan, const Area& area)
      : plan_(plan),
        area_(area),
        brings_(area.left + 126.0),
        channels_(area.left + 0.61 * area.width()) {}

  double head(Pen& pen, double top) const;
  // Draws a row with at most `most_lines` lines in each list.
  double row(Pen& pen, std::size_t index, double top, std::size_t most_lines) const;
  // The text below the rows.
  double tail(Pen& pen, double top) const;

 private:
  const PaperPlan& plan_;
  Area area_;
  double number_at_ = 0.0, compass_ = 12.0, map_ = 52.0, slack_ = 82.0;  // from the left
  double brings_, channels_;
};

double Table::head(Pen& pen, double top) const {
  const double baseline = top + Pen::rise(kCellGray);
  const auto title = [&](double x, const char* words) {
    pen.text({x, baseline}, words, kCellGray);
  };
  title(area_.left + compass_, "Compass");
  title(area_.left + map_, "Map");
  title(area_.left + slack_, "Left, right");
  title(brings_, "Brings in, with chance");
  title(channels_, "RF channels to enter, in this order");
  return top + kCellGray.line_pt();
}

double Table::row(Pen& pen, std::size_t index, double top, std::size_t most_lines) const {
  constexpr double kGutter_pt = 10.0, kPadding_pt = 2.0;
  const PaperHeading& heading = plan_.headings[index];
  top += kPadding_pt;
  const double baseline = top + Pen::rise(kHeading) - 2.0;
  pen.text({area_.left + number_at_, baseline}, std::to_string(index + 1), kCellBold);
  pen.text({area_.left + compass_, baseline}, words::whole_degrees(heading.magnetic), kHeading);
  pen.text({area_.left + map_, baseline}, words::whole_degrees(heading.bearing), kCell);
  pen.text({area_.left + slack_, baseline},
           heading.slack.all_round()
               ? std::string("any")
               : fmt::format("{:.0f}°, {:.0f}°", heading.slack.left_deg, heading.slack.right_deg),
           kCell);
  const double width = channels_ - kGutter_pt - brings_;
  double left =
      pen.list({brings_, top}, width, with_chances(heading.brings), kCellBold, most_lines);
  if (!heading.loses.empty()) {
    std::vector<std::string> loses = with_chances(heading.loses);
    loses.front() = "Leaves out " + loses.front();
    left = pen.list({brings_, left}, width, loses, kCellGray, most_lines);
  }
  constexpr std::size_t kRemarkLines = 2;
  const double wide = area_.right - channels_;
  const bool names = pen.holds(wide, channel_items(heading, true), kCell, most_lines);
  double right = pen.list({channels_, top}, wide, channel_items(heading, names), kCell, most_lines);
  right = pen.paragraph({channels_, right}, wide, heading.remark, kCellGray,
                        std::min(most_lines, kRemarkLines));
  const double bottom = std::max({left, right, top + kHeading.line_pt()}) + kPadding_pt;
  pen.line({area_.left, bottom}, {area_.right, bottom}, 0.35, kRuleGray);
  return bottom;
}

double Table::tail(Pen& pen, double top) const {
  if (!plan_.out.empty()) {
    std::vector<std::string> out = plan_.out;
    out.front() = "At no heading: " + out.front();
    top = pen.list({area_.left, top + 2.0}, area_.width(), out, kCellGray, 2);
  }
  if (!plan_.fewest_proved) {
    top = pen.paragraph({area_.left, top}, area_.width(), "A plan with fewer headings may exist.",
                        kCellGray, 1);
  }
  return top;
}

// The number of lines for the lists of each row so that all rows end above `bottom`: one, or more
// if there is room.
std::vector<std::size_t> lines_of_rows(const Pen& pen, const PaperPlan& plan, const Table& table,
                                       double top, double bottom) {
  Page scratch{};
  Pen dry = pen.on(scratch);
  std::vector<std::size_t> lines(plan.headings.size(), 1);
  const auto fit = [&] {
    double y = top;
    for (std::size_t i = 0; i < lines.size() && y <= bottom; ++i) {
      y = table.row(dry, i, y, lines[i]);
    }
    return y <= bottom;
  };
  if (!fit()) return lines;
  for (std::size_t most = 2; most <= kMostLines; ++most) {
    for (std::size_t& one : lines) {
      const std::size_t before = std::exchange(one, most);
      if (!fit()) one = before;
    }
  }
  return lines;
}

}  // namespace

double write_plan(Pen& pen, const PaperPlan& plan, const Area& area) {
  double y = write_label(pen, area, "TURN PLAN");
  if (plan.headings.empty()) {
    y = pen.paragraph({area.left, y}, area.width(),
                      "No wanted station is likely here at any heading.", kBody);
  }
  const Table table(plan, area);
  if (!plan.headings.empty()) y = table.head(pen, y);
  Page scratch{};
  Pen dry = pen.on(scratch);
  const double bottom = area.bottom - table.tail(dry, 0.0);
  const std::vector<std::size_t> lines = lines_of_rows(pen, plan, table, y, bottom);
  const std::size_t count = plan.headings.size();
  for (std::size_t i = 0; i < count; ++i) {
    const double more = i + 1 < count ? kCellBold.line_pt() : 0.0;
    if (table.row(dry, i, y, lines[i]) + more > bottom) {
      y = pen.paragraph({area.left, y}, area.width(),
                        fmt::format("and {} more heading{}: see the plan in Mastwise", count - i,
                                    count - i == 1 ? "" : "s"),
                        kCellBold, 1);
      break;
    }
    y = table.row(pen, i, y, lines[i]);
  }
  return table.tail(pen, y);
}

}  // namespace mastwise::paper
