#include "app/data/actions.hpp"
#include "app/data/draw_import.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/column.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/changes.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <filesystem>

#include <fmt/format.h>

// The running import and its report.
namespace mastwise::screens::import {
namespace {

using ui::Column;

using ui::ButtonLook;
using ui::Face;
using ui::Rect;
using ui::Ui;

constexpr std::size_t kNames = 12;

std::string counted(std::size_t count) {
  return fmt::format("{}", count);
}

std::string listed(const std::vector<std::string>& names, std::size_t all) {
  const std::size_t shown = std::min(kNames, names.size());
  const std::vector<std::string> first(names.begin(),
                                       names.begin() + static_cast<std::ptrdiff_t>(shown));
  std::string text = fmt::format("{}", fmt::join(first, ", "));
  if (all > shown) {
    text += " " +
            words::fill(words::say("and {number} more"), {{"number", std::to_string(all - shown)}});
  }
  return text;
}

void draw_names(Column& column, const std::string& label, const std::vector<std::string>& names,
                std::size_t all) {
  column.pair(label, counted(all));
  if (!names.empty()) column.line(listed(names, all), Face::Text);
}

void draw_stations(Column& column, const ImportReport& report) {
  const auto some = [&](const char* label, std::size_t count) {
    if (count > 0) column.pair(words::say(label), counted(count));
  };
  column.pair(words::say("New"), counted(report.stations_added));
  if (!report.renews) return;
  column.pair(words::say("Gone"), counted(report.stations_gone));
  some("On another channel", report.stations_on_other_channel);
  some("With another power", report.stations_of_other_power);
  some("At another site", report.stations_moved);
  some("With another call sign", report.stations_renamed);
  some("Changed otherwise", report.stations_changed - report.stations_changed_notably);
  column.pair(words::say("Unchanged"), counted(report.stations_unchanged));
}

void draw_programs(Column& column, const ProgramReport& report) {
  column.pair(words::say("Programs"), counted(report.programs));
  column.pair(words::say("Stations with programs"), counted(report.stations));
  draw_names(column, words::say("No such station"), report.strangers, report.without_station);
  std::vector<std::string> renamed;
  for (const RenamedStation& one : report.renamed)
    renamed.push_back(one.call_sign + " = " + one.now);
  if (!renamed.empty()) {
    draw_names(column, words::say("Named otherwise"), renamed, report.stations_renamed);
  }
  if (report.rows_without_program > 0) {
    column.pair(words::say("Rows without a program"), counted(report.rows_without_program));
  }
}

void draw_ground_report(Column& column, const GroundReport& ground) {
  column.plain(ground.source, Face::TextBold);
  draw_names(column, words::say(ground.land_cover ? "Tiles of land cover" : "Tiles of heights"),
             ground.cells, ground.cells.size());
  column.pair(words::say(ground.land_cover ? "New areas" : "New heights"), counted(ground.filled));
  if (ground.filled == 0)
    column.line(words::say("All of it was known already. Nothing has changed."), Face::Text);
  if (!ground.unlisted_codes.empty()) {
    column.warning(
        words::fill(words::say("Codes without a class stay unknown: {codes}."),
                    {{"codes", fmt::format("{}", fmt::join(ground.unlisted_codes, ", "))}}));
  }
  if (!ground.notice.empty()) column.line(ground.notice, Face::Text);
}

void draw_rejected(Column& column, const std::vector<RejectedRow>& first, std::size_t all) {
  column.pair(words::say("Rejected rows"), counted(all));
  for (const RejectedRow& row : first) {
    column.line(words::fill(words::say("Line {line}: {why}"),
                            {{"line", std::to_string(row.line)}, {"why", row.reason}}),
                Face::Text);
  }
  if (all > first.size()) {
    column.line(words::fill(words::say("and {number} more"),
                            {{"number", std::to_string(all - first.size())}}),
                Face::Text);
  }
}

// What changed, station by station.
void draw_changes(Column& column, const std::vector<StationChange>& changes, std::size_t more,
                  bool miles) {
  if (changes.empty()) return;
  column.rule();
  column.heading(words::say(changes.front().distance_m ? "Changes, the nearest first" : "Changes"));
  for (const StationChange& change : changes) {
    column.plain(words::change_title(change, miles), Face::TextBold);
    column.line(words::change_facts(change, miles));
  }
  if (more > 0) {
    column.line(words::fill(words::say("and {number} more"), {{"number", std::to_string(more)}}));
  }
}

void draw_acts(Column& column, Ui& ui, const Shared& shared, const IntakeReport& report) {
  if (shared.stop.practice && report.first_stations) {
    column.line(words::say("You now have stations: leave the practice area."), Face::Text);
    if (column.button("end practice", words::say("End practice"), 0, 1, true, ButtonLook::Filled)) {
      ui.emit(act::SwitchPractice{});
    }
  }
  if (column.button("to stations", words::say("See stations"), 0, 2)) {
    ui.emit(act::OpenSheet{Sheet::None});
    ui.emit(act::Show{Place::Stations});
  }
  if (column.button("more data", words::say("Import more"), 1, 2)) ui.emit(act::ShowImportPlaces{});
}

void draw_fetched(Ui& ui, Rect room, const Shared& shared, const IntakeReport& report) {
  const FetchReport& fetched = *report.fetched;
  const float top = ui.begin_page("report", room);
  auto [first, second] = ui::halves(ui, room);
  first.top = top;
  Column left(ui, first);
  draw_fetch_report(left, fetched);
  if (fetched.stations) draw_stations(left, *fetched.stations);
  second.top = ui.portrait() ? left.bottom() + 24.0f : top;
  Column right(ui, second);
  draw_acts(right, ui, shared, report);
  if (fetched.stations) {
    draw_changes(right, fetched.stations->changes, changes_not_listed(*fetched.stations),
                 shared.settings.miles);
  }
  ui.end_page("report", top, std::max(left.bottom(), right.bottom()) + 16.0f);
}

}  // namespace

void draw_taking_in(Ui& ui, const Intake& data) {
  const bool fetching = data.question.step == IntakeStep::Fetching;
  const Rect room = draw_sheet_head(ui, words::say(fetching ? "Fetching" : "Importing"));
  const ui::Theme& theme = ui.theme();
  const auto& answer = data.answer;
  const bool told = answer && answer->question.step == data.question.step;
  Column column(ui, room);
  column.plain(fetching ? data.question.fetch
                        : std::filesystem::path(data.question.path).filename().string(),
               Face::TextBold);
  column.line(told && !answer->doing.empty() ? answer->doing
              : fetching                     ? words::say("Connecting")
                                             : words::say("Reading"),
              Face::Text);
  column.space(24.0f);
  const Rect bar{room.left, column.bottom(), room.right, column.bottom() + 28.0f};
  ui.canvas().outline(bar, theme.rule, 2.0f, 8.0f);
  if (told && answer->part) {
    const float done = static_cast<float>(std::clamp(*answer->part, 0.0, 1.0));
    ui.canvas().fill({bar.left, bar.top, bar.left + done * bar.width(), bar.bottom}, theme.accent,
                     8.0f);
  }
  column.space(44.0f);
  column.line(
      fetching
          ? words::say("Done closes this page; the download continues. Stop keeps what came, and "
                       "fetching again continues there.")
          : words::say(
                "Done closes this page; the import continues. Stop leaves everything as it was."),
      Face::Text);
  if (column.button("stop taking in", words::say("Stop"), 0, 1, true, ButtonLook::Warning)) {
    ui.emit(act::StopTakingIn{});
  }
}

void draw_report(Ui& ui, const Shared& shared, const Intake& data) {
  const Rect room = draw_sheet_head(ui, words::say("Import report"));
  if (!data.report) return;
  const IntakeReport& report = *data.report;
  if (report.ground) {
    const float head = ui.begin_page("report", room);
    auto [told, acts] = ui::halves(ui, room);
    told.top = head;
    Column about(ui, told);
    draw_ground_report(about, *report.ground);
    acts.top = ui.portrait() ? about.bottom() + 24.0f : head;
    Column next(ui, acts);
    if (next.button("more data", words::say("Import more"), 0, 1)) ui.emit(act::ShowImportPlaces{});
    ui.end_page("report", head, std::max(about.bottom(), next.bottom()) + 16.0f);
    return;
  }
  if (report.fetched) {
    draw_fetched(ui, room, shared, report);
    return;
  }
  if (report.pack) {
    const ui::Halves both = ui::halves(ui, room);
    const float top = ui.begin_page("report", room);
    Rect told = both.first, listed = both.second;
    told.top = top;
    const float below = draw_pack_report(ui, told, *report.pack);
    listed.top = ui.portrait() ? below + 24.0f : top;
    Column next(ui, listed);
    draw_acts(next, ui, shared, report);
    draw_changes(next, report.pack->changes, report.pack->changes_not_listed,
                 shared.settings.miles);
    ui.end_page("report", top, std::max(below, next.bottom()) + 16.0f);
    return;
  }
  const Source& source = report.of_programs ? report.programs.source : report.stations.source;
  const float top = ui.begin_page("report", room);
  auto [first, second] = ui::halves(ui, room);
  first.top = top;
  Column left(ui, first);
  left.plain(source.name, Face::TextBold);
  left.line(
      words::sentence(words::data_age(source.date, shared.findings.today)) +
          words::fill(words::say(", {number} rows read"),
                      {{"number", std::to_string(report.of_programs ? report.programs.rows_read
                                                                    : report.stations.rows_read)}}),
      Face::Text);
  const std::string caution = words::data_caution(source.date, shared.findings.today);
  if (!report.of_programs && !caution.empty()) left.warning(caution);
  if (report.of_programs) {
    draw_programs(left, report.programs);
  } else {
    draw_stations(left, report.stations);
  }
  draw_rejected(left, report.of_programs ? report.programs.rejected : report.stations.rejected,
                report.rejected);
  for (const std::string& remark : report.stations.remarks) {
    left.line(words::sentence(remark), Face::Text);
  }
  second.top = ui.portrait() ? left.bottom() + 24.0f : top;
  Column right(ui, second);
  draw_acts(right, ui, shared, report);
  draw_changes(right, report.stations.changes, changes_not_listed(report.stations),
               shared.settings.miles);
  ui.end_page("report", top, std::max(left.bottom(), right.bottom()) + 16.0f);
}

}  // namespace mastwise::screens::import
