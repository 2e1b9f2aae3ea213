#include "app/data/draw_ground.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/texture.hpp"
#include "app/words/language.hpp"
#include "app/words/on_board.hpp"
#include "app/words/phrases.hpp"
#include "app/words/times.hpp"
#include "core/geo/magnetic_field.hpp"

#include <algorithm>

#include <fmt/format.h>

// How old the sources are, and how long the magnetic model holds, on one axis of time.
namespace mastwise::screens::import {
namespace {

using std::chrono::local_days;
using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

// A bar on the axis.
struct Span {
  std::string count, name;
  std::optional<local_days> from, to;  // `to`: only of what ends
  bool stale = false;
};

std::string counted(std::size_t count, const char* one, const char* many) {
  return words::fill(words::say(count == 1 ? one : many), {{"number", words::grouped(count)}});
}

std::vector<Span> spans_of(const Shared& shared, const Intake& data) {
  std::vector<Span> spans;
  for (const IntakeSource& source : data.found.stations) {
    spans.push_back({counted(source.entries, "{number} station", "{number} stations"),
                     source.name,
                     source.dated,
                     {},
                     source.freshness == SourceFreshness::stale});
  }
  for (const IntakeSource& source : data.found.programs) {
    spans.push_back({counted(source.entries, "{number} program", "{number} programs"),
                     source.name,
                     source.dated,
                     {}});
  }
  if (const auto& practice = data.found.practice) {
    spans.push_back(
        {counted(practice->entries, "{number} practice station", "{number} practice stations"),
         {},
         practice->dated,
         {}});
  }
  const auto as_local = [](std::chrono::sys_days day) {
    return local_days(day.time_since_epoch());
  };
  spans.push_back({words::say("Declination"),
                   {},
                   as_local(kMagneticModelFrom),
                   as_local(kMagneticModelTo) - std::chrono::days(1),
                   shared.findings.today >= as_local(kMagneticModelTo)});
  return spans;
}

std::string month_and_year(local_days day) {
  const std::chrono::year_month_day date{day};
  return words::fill(
      words::say("{month} {year}"),
      {{"month", words::phrases().times.months[static_cast<unsigned>(date.month()) - 1]},
       {"year", std::to_string(static_cast<int>(date.year()))}});
}

int year_of(local_days day) {
  return static_cast<int>(std::chrono::year_month_day{day}.year());
}

local_days first_of(int year) {
  return local_days{std::chrono::year{year} / 1 / 1};
}

class TimeAxis {
 public:
  TimeAxis(Ui& ui, Rect area, const std::vector<Span>& spans, local_days today)
      : canvas_(ui.canvas()), theme_(ui.theme()), area_(area), today_(today) {
    int first = year_of(today), last = year_of(today);
    for (const Span& span : spans) {
      for (const auto& day : {span.from, span.to}) {
        if (!day) continue;
        first = std::min(first, year_of(*day));
        last = std::max(last, year_of(*day));
      }
    }
    constexpr int kOldest = 30;
    first_year_ = std::max(first, year_of(today) - kOldest);
    end_year_ = last + 1;
  }

  float draw(const std::vector<Span>& spans) {
    float y = area_.top;
    for (const Span& span : spans) {
      draw_span(y, span);
      y += kSpan;
    }
    return draw_years(y + 4.0f);
  }

 private:
  static constexpr float kSpan = 80.0f;

  float at(local_days day) const {
    const auto days = [](local_days a, local_days b) {
      return static_cast<float>((b - a).count());
    };
    const local_days from = first_of(first_year_), to = first_of(end_year_);
    return area_.left + std::clamp(days(from, day) / days(from, to), 0.0f, 1.0f) * area_.width();
  }
  void draw_span(float top, const Span& span);
  float draw_years(float y);

  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_;
  local_days today_;
  int first_year_ = 0, end_year_ = 0;
};

void TimeAxis::draw_span(float top, const Span& span) {
  const ui::Color color = span.stale ? theme_.warning : theme_.ink;
  // Bold, so that the color does not tell it alone.
  const Face date_face = span.stale ? Face::TextBold : Face::Text;
  const float baseline = top + 28.0f, y = top + 52.0f;
  const std::string date = span.to             ? words::fill(words::say("good to {year}"),
                                                             {{"year", std::to_string(year_of(*span.to))}})
                           : span.from         ? month_and_year(*span.from)
                           : span.name.empty() ? std::string(words::say("invented"))
                                               : std::string(words::say("no date"));
  const float share =
      ui::share_of_both(canvas_, area_.width(), {span.count, Face::TextBold}, {date, date_face});
  canvas_.text({area_.right, baseline}, date, date_face, color, Align::Right, share);
  canvas_.text({area_.left, baseline}, span.count, Face::TextBold, theme_.ink, Align::Left, share);
  const float left = area_.left + share * canvas_.text_width(span.count, Face::TextBold) + 12.0f;
  const float room = area_.right - share * canvas_.text_width(date, date_face) - 12.0f - left;
  ui::text_within(canvas_, {left, baseline}, room, span.name, Face::Text, theme_.second_ink);
  const float today = at(today_);
  if (span.from) {
    const float from = at(*span.from), to = span.to ? at(*span.to) : today;
    constexpr float kDot = 9.0f;
    canvas_.line({from, y}, {to, y}, color, 8.0f);
    if (!span.to) {
      canvas_.disc({from, y}, kDot, theme_.paper);
      canvas_.circle({from, y}, kDot, color, 4.0f);
    }
  } else {
    ui::dotted(canvas_, {area_.left, y}, {today, y}, theme_.second_ink, 3.0f);
  }
  canvas_.line({today, y - 14.0f}, {today, y + 14.0f}, theme_.ink, 4.0f);
}

float TimeAxis::draw_years(float y) {
  canvas_.line({area_.left, y}, {area_.right, y}, theme_.ink, 3.0f);
  for (int year = first_year_; year <= end_year_; ++year) {
    const float x = std::clamp(at(first_of(year)), area_.left + 1.0f, area_.right - 1.0f);
    canvas_.line({x, y}, {x, y + (year % 5 == 0 ? 14.0f : 8.0f)}, theme_.ink, 2.5f);
  }
  const float baseline = y + 40.0f;
  const std::string first = std::to_string(first_year_), last = std::to_string(end_year_);
  const std::string today = words::say("today");
  const float half = canvas_.text_width(today, Face::TextBold) / 2.0f;
  const float year = canvas_.text_width(first, Face::Text) + 14.0f;
  const float middle = std::clamp(at(today_), area_.left + half, area_.right - half);
  if (middle - half > area_.left + year) {
    canvas_.text({area_.left, baseline}, first, Face::Text, theme_.second_ink);
  }
  if (middle + half < area_.right - year) {
    canvas_.text({area_.right, baseline}, last, Face::Text, theme_.second_ink, Align::Right);
  }
  canvas_.text({middle, baseline}, today, Face::TextBold, theme_.ink, Align::Center);
  return baseline + 12.0f;
}

}  // namespace

float draw_sources(Ui& ui, Rect area, const Shared& shared, const Intake& data) {
  const ui::Theme& theme = ui.theme();
  float y = area.top;
  if (data.answer && data.found.stations.empty()) {
    y = ui.paragraph({area.left, y + 28.0f}, area.width(), 30.0f,
                     words::say("No stations yet. Import a table of them."), Face::TextBold,
                     theme.ink) -
        12.0f;
  }
  const auto spans = spans_of(shared, data);
  y = TimeAxis(ui, {area.left, y, area.right, area.bottom}, spans, shared.findings.today)
          .draw(spans);
  // One caution for all: the oldest table's.
  std::string caution;
  for (const IntakeSource& source : data.found.stations) {
    if (source.caution.empty()) continue;
    caution = words::sentence(source.age) + ". " + source.caution;
    if (source.freshness == SourceFreshness::stale) break;
  }
  if (caution.empty()) return y;
  return ui.paragraph({area.left, y + 26.0f}, area.width(), 30.0f, caution, Face::TextBold,
                      theme.warning) -
         16.0f;
}

}  // namespace mastwise::screens::import
