#include "app/aim/actions.hpp"
#include "app/aim/draw.hpp"
#include "app/aim/handle.hpp"
#include "app/ui/form_page.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/checks.hpp"
#include "app/words/headings.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"
#include "core/headings/compass_checks.hpp"

#include <array>
#include <string>

// The sheets for the ceiling handle and the checks of the compass.
namespace mastwise::screens {

using ui::Column;
using ui::FormPage;
using words::say;

namespace {

// A star has its name, which tells where to look.
std::string known_words(const KnownDirection& known) {
  switch (known.by) {
    case CompassCheckBy::sun:
      return say("The shadow");
    case CompassCheckBy::star:
      return words::sentence(words::guide_name(*known.body));
    case CompassCheckBy::landmark:
      return say("The landmark");
  }
  return {};
}

constexpr std::array kCheckKeys{"check sun", "check star", "check landmark"};

void draw_sights(Column& column, FormPage& page, Ui& ui, const AimState& aim) {
  column.heading(say("Against a known direction"));
  column.line(
      say("Read the compass along the shadow of a plumb line, away from the sun, or toward "
          "a star or a landmark. Then touch which."));
  page.fields(column, {Field::LandmarkPlace, Field::CompassRead_deg});
  const auto count = static_cast<int>(aim.known.size());
  if (count == 0) column.line(say("Nothing is known now: no sun, no star, no landmark."));
  for (int i = 0; i < count; ++i) {
    const KnownDirection& known = aim.known[static_cast<std::size_t>(i)];
    if (column.button(kCheckKeys[static_cast<std::size_t>(known.by)], known_words(known), i, count,
                      aim.compass_read)) {
      ui.emit(act::CheckCompass{known.by});
    }
  }
}

// What the checks of this stop found, and how old the oldest may get.
void draw_found(Column& column, const Shared& shared, const AimState& aim) {
  const Findings& found = shared.findings;
  column.heading(say("What the checks found"));
  if (found.compass_agrees) {
    column.line(words::compass_agrees(*found.compass_check));
  } else if (found.compass_check) {
    column.line(words::compass_check(*found.compass_check, found.corrected));
  } else {
    column.line(
        say("Peak on a strong station and save the sweep: it corrects every other heading "
            "at this stop."));
  }
  if (aim.anomaly) {
    column.warning(say("More than the magnetic model's error: iron in the ground, or the needle."));
  }
  if (shared.stop.reciprocal) {
    column.line(
        say("The two spots are in the error now. They cannot show what pulls alike at "
            "both."));
  }
  column.line(say("A check holds where it was made. It loses 0.25° an hour, and more with every "
                  "step."),
              ui::Face::Fine);
}

}  // namespace

void draw_handle_sheet(Ui& ui, const Shared& shared, const AimState& aim) {
  const Rect view = draw_sheet_head(ui, say("Ceiling handle"));
  FormPage page(ui, "handle", view, shared.form, shared.settings.miles);
  Column left(ui, page.first());
  left.heading(say("Calibrate with two points"));
  left.line(
      say("Turn the antenna clockwise, seen from below, to two directions 30 to 150 degrees apart. "
          "Type the handle's reading at each."));
  page.fields(left, {Field::FirstReading_deg, Field::FirstAngle_deg, Field::SecondReading_deg,
                     Field::SecondAngle_deg});
  left.rule();
  page.fields(left, {Field::ReachFrom_deg, Field::ReachTo_deg, Field::Stow_deg});
  Column right(ui, page.second(left));
  right.heading(say("The turn"));
  page.field(right, Field::HandleNow_deg);
  draw_answer(right, aim.handle);
  const Findings& found = shared.findings;
  if (found.handle_check) {
    right.plain(words::handle_check(*found.handle_check, found.handle_corrected));
  }
  const bool fresh = handle_from(shared.form).has_value() && aim.handle.trouble.empty();
  if (right.button("keep handle", say("Save this handle"), 0, 2, fresh, ui::ButtonLook::Filled)) {
    ui.emit(act::KeepHandle{});
  }
  if (right.button("forget handle", say("Delete it"), 1, 2, shared.settings.handle.has_value())) {
    ui.emit(act::ForgetHandle{});
  }
  right.line(say("Clockwise from below is counterclockwise on Mastwise's dial."));
  page.end(right);
}

void draw_checks_sheet(Ui& ui, const Shared& shared, const AimState& aim) {
  const Rect view = draw_sheet_head(ui, say("Can the compass be trusted?"));
  FormPage page(ui, "checks", view, shared.form, shared.settings.miles);
  Column left(ui, page.first());
  left.heading(say("There and back"));
  left.line(say("Two spots in sight of each other: read the bearing from each to the other."));
  page.fields(left, {Field::ThereBearing_deg, Field::BackBearing_deg});
  draw_answer(left, aim.reciprocal);
  if (left.button("keep reciprocal", say("Use at this stop"), 0, 1,
                  !aim.reciprocal.lines.empty())) {
    ui.emit(act::KeepReciprocal{});
  }
  left.rule();
  draw_sights(left, page, ui, aim);
  left.rule();
  left.heading(say("Two ways, one direction"));
  left.line(say("Compare two headings, such as by compass and by sun, both from the same north."));
  page.fields(left, {Field::OneWay_deg, Field::OneWayError_deg, Field::OtherWay_deg,
                     Field::OtherWayError_deg});
  draw_answer(left, aim.agreement);
  Column right(ui, page.second(left));
  right.heading(say("Keep the compass away from"));
  for (const KeepAway& keep : keep_away_distances()) {
    const bool miles = shared.settings.miles;
    std::string distance = words::height(keep.least_m, miles);
    if (keep.better_m) {
      distance =
          words::fill(say("{distance}, better {more}"),
                      {{"distance", distance}, {"more", words::height(*keep.better_m, miles)}});
    }
    right.pair(words::sentence(words::needle_pull(keep.from)), distance);
  }
  right.line(say("From field manuals: common practice, no source."), Face::Fine);
  right.rule();
  draw_found(right, shared, aim);
  const Stop& stop = shared.stop;
  if (right.button("forget correction", say("Delete the checks"), 0, 1,
                   !stop.strong_stations.empty() || !stop.sights.empty() || stop.reciprocal)) {
    ui.emit(act::ForgetCorrection{});
  }
  page.end(right);
}

}  // namespace mastwise::screens
