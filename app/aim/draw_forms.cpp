#include "app/aim/actions.hpp"
#include "app/aim/draw.hpp"
#include "app/aim/handle.hpp"
#include "app/ui/form_page.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/checks.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"
#include "core/headings/compass_checks.hpp"

// The sheets for the ceiling handle and the checks of the compass.
namespace mastwise::screens {

using ui::Column;
using ui::FormPage;
using words::say;

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
  left.rule();
  left.heading(say("A landmark"));
  left.line(say("Its position lets you aim by an angle from it."));
  page.field(left, Field::LandmarkPlace);
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
  right.heading(say("A strong station"));
  const Findings& found = shared.findings;
  right.line(found.compass_check
                 ? words::compass_check(*found.compass_check, found.corrected)
                 : say("Peak on a strong station and save the sweep: it corrects every other "
                       "heading at this stop."));
  if (right.button("forget correction", say("Delete the correction"), 0, 1,
                   !shared.stop.strong_stations.empty())) {
    ui.emit(act::ForgetCorrection{});
  }
  page.end(right);
}

}  // namespace mastwise::screens
