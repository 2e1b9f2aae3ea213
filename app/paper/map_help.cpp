#include "app/paper/sections.hpp"
#include "app/words/checks.hpp"
#include "app/words/headings.hpp"
#include "app/words/places.hpp"
#include "app/words/units.hpp"
#include "core/geo/notation.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

// The rig's position, and instructions for map, ruler and compass.
namespace mastwise::paper {
namespace {

double write_steps(Pen& pen, const Area& area, double y, const std::vector<std::string>& steps) {
  constexpr double kIndent_pt = 10.0, kApart_pt = 1.5;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    pen.text({area.left, y + Pen::rise(kBody)}, std::to_string(i + 1), kBodyBold);
    y = pen.paragraph({area.left + kIndent_pt, y}, area.width() - kIndent_pt, steps[i], kBody) +
        kApart_pt;
  }
  return y;
}

std::string ruler_words(const RulerLine& ruler) {
  const auto way = [](double mm, const char* positive, const char* negative) {
    return fmt::format("{:.0f} mm {}", std::fabs(mm), mm < 0.0 ? negative : positive);
  };
  constexpr double kLaid_mm = 100.0;
  return fmt::format(
      "By ruler alone, meridians upright: the point {} and {} from the stop is on the line. "
      "Half a millimeter off makes {:.1f}°.",
      way(ruler.right_per_100_mm, "right", "left"), way(ruler.up_per_100_mm, "up", "down"),
      ruler_bearing_error_deg(kLaid_mm));
}

// "1,000,000".
std::string grouped(long number) {
  std::string text;
  for (; number >= 1000; number /= 1000) text = fmt::format(",{:03}{}", number % 1000, text);
  return fmt::format("{}{}", number, text);
}

std::string length_words(const PaperCard& card) {
  std::string words =
      fmt::format("The station is {} along it", words::distance(card.aim.distance_m, card.miles));
  for (const LengthOnMap& length : card.lengths) {
    words += fmt::format("{} {:.0f} mm at 1:{}", &length == &card.lengths.front() ? ":" : ",",
                         length.length_mm, grouped(std::lround(length.ratio)));
  }
  return words + ". Start at the stop, not at the town beside it.";
}

// "± 3.3° is made of reading 3.0°, sight line 1.0°".
std::string error_words(const PaperCard& card) {
  const auto plain = std::find_if(
      card.sayings.begin(), card.sayings.end(),
      [](const Saying& saying) { return saying.kind == SayingKind::magnetic_bearing; });
  if (plain == card.sayings.end()) return "The error is unknown";
  std::string words = fmt::format("± {:.1f}° is made of", plain->sigma_deg);
  for (const ErrorLine& line : plain->budget.lines) {
    words += fmt::format("{} {} {:.1f}°", &line == &plain->budget.lines.front() ? "" : ",",
                         to_text(line.kind), line.sigma_deg);
  }
  return words;
}

}  // namespace

double write_stop(Pen& pen, const PaperCard& card, const Area& area) {
  double y =
      write_label(pen, area, card.practice ? "RIG POSITION (PRACTICE: INVENTED)" : "RIG POSITION");
  // Degrees on the left need no label; grids with labels on the right.
  constexpr std::size_t kRows = 3;
  constexpr double kGrids_pt = 126.0, kGridName_pt = 40.0;
  for (std::size_t i = 0; i < kNotations.size(); ++i) {
    const bool grid = i >= kRows;
    const double left = area.left + (grid ? kGrids_pt : 0.0);
    const double baseline = y + static_cast<double>(i % kRows) * kBody.line_pt() + Pen::rise(kBody);
    if (grid) pen.text({left, baseline}, words::notation(kNotations[i]), kSmallGray);
    pen.text({left + (grid ? kGridName_pt : 0.0), baseline},
             format_position(card.stop, kNotations[i]), kBodyBold);
  }
  y += static_cast<double>(kRows) * kBody.line_pt();
  if (card.stop_stale) {
    y = pen.paragraph({area.left, y}, area.width(),
                      "The receiver's last position: it is silent now.", kBodyBold);
  }
  return y;
}

double write_paper_map(Pen& pen, const PaperCard& card, const Area& area) {
  double y = write_label(pen, area, "ON A PAPER MAP");
  const std::string bearing = words::whole_degrees(card.aim.bearing_true);
  std::vector<std::string> steps{fmt::format(
      "Mark the stop. Set the compass ring to {}, the true number, lay the plate's long "
      "edge on the mark, and turn the whole plate until the ring's lines align with the "
      "meridians, its N to the north. Ignore the needle: the edge is the line.",
      bearing)};
  if (card.ruler) steps.push_back(ruler_words(*card.ruler));
  steps.push_back(length_words(card));
  return write_steps(pen, area, y, steps);
}

double write_compass(Pen& pen, const PaperCard& card, const Area& area) {
  if (card.aim.field.zone == MagneticField::Zone::Blackout) return area.top;
  const double y = write_label(pen, area, "WITH A HANDHELD COMPASS");
  const auto away = keep_away_distances();
  const double off_m = from_rig_m(card.read_at);
  const std::string off = words::height(off_m, card.miles);
  std::string keep = fmt::format("Stand {} from the rig", off);
  for (const KeepAway& one : away.subspan(1)) {
    keep += fmt::format(", {} from {}", words::height(one.least_m, card.miles),
                        words::needle_pull(one.from));
  }
  return write_steps(
      pen, area, y,
      {keep + ".",
       fmt::format("Set the ring to {}, hold the plate level, the needle's north end on the ring's "
                   "N. Walk around until the plate's arrow points at the mast. Have the antenna "
                   "turned until you see its boom end-on. A far mark will do only from {} on: "
                   "seen {} aside, a nearer one is over {:.0f}° off.",
                   words::whole_degrees(card.aim.bearing_magnetic),
                   words::distance(least_mark_m(off_m), card.miles), off, kSightLine_deg),
       fmt::format("Check from the other end: back toward here it reads {}. If it is more than "
                   "{:.0f}° off, iron is near.",
                   words::whole_degrees(card.aim.bearing_magnetic.reciprocal()),
                   kReciprocalTolerance_deg),
       error_words(card) + ".",
       "The classic mistakes. " + words::north_mistake(card.mistakes.map_north_as_magnetic) + ". " +
           words::north_mistake(card.mistakes.declination_twice) + "."});
}

}  // namespace mastwise::paper
