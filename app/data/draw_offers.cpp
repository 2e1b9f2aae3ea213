#include "app/data/actions.hpp"
#include "app/data/draw_import.hpp"
#include "app/data/findings.hpp"
#include "app/ui/act_row.hpp"
#include "app/ui/column.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

// What the publishers have for the stop and the way, and what came of fetching it.
namespace mastwise::screens::import {
namespace {

using ui::ButtonLook;
using ui::Column;
using ui::Face;
using ui::Rect;
using ui::Ui;
using words::fill;
using words::say;

constexpr std::size_t kSquaresNamed = 24;  // as many as are worth reading

std::string amount_words(const FetchOffer& offer) {
  if (offer.files == 0) return say("All of it is on board");
  const std::string files =
      offer.files == 1 ? std::string(say("1 file"))
                       : fill(say("{number} files"), {{"number", std::to_string(offer.files)}});
  if (offer.usual_bytes == 0) return fill(say("{files}, size unknown"), {{"files", files}});
  return fill(say("{files}, usually about {size}"),
              {{"files", files}, {"size", words::bytes(offer.usual_bytes)}});
}

const char* connection_words(Connection connection) {
  switch (connection) {
    case Connection::None:
      return say("This device has no connection now.");
    case Connection::Mobile:
      return say("This is a mobile connection: the download counts against its plan.");
    case Connection::Other:
      break;
  }
  return say("If this connection is metered, the download counts against its plan.");
}

// How to get it where Mastwise cannot fetch: a browser has no GDAL for heights and land cover.
std::string browser_words(const FetchOffer& offer) {
  if (offer.kind == pack::PartKind::stations) {
    return fill(say("Open {address} in another tab, save the file, and import it."),
                {{"address", offer.first_address}});
  }
  return say(
      "Fetch this with Mastwise on Debian or Windows, make a pack there, and import it here.");
}

void draw_all_offers(Ui& ui, const Shared& shared, const Intake& data) {
  const auto head = draw_head(ui, say("Get data"), "offers back", "Back");
  if (head.tapped) ui.emit(act::OpenIntakeFolder{});
  const ui::Theme& theme = ui.theme();
  const Rect view = head.room;
  const float top = ui.begin_page("offers", view);
  float y = top;
  const auto line = [&](const std::string& words, ui::Color color) {
    y = ui.paragraph({view.left, y + 28.0f}, view.width(), 30.0f, words, Face::Text, color) - 8.0f;
  };
  const bool known = data.answer && data.answer->question.step == IntakeStep::Offers;
  line(shared.in_browser
           ? say("Mastwise cannot download in a browser. Touch a row to see what to do instead.")
           : say("Straight from the publishers, only when you touch Fetch. Nothing is fetched by "
                 "itself."),
       theme.ink);
  if (!data.trouble.empty()) line(words::sentence(data.trouble), theme.warning);
  if (!known) line(say("Looking at the disk"), theme.ink);
  if (known && !data.answer->trouble.empty()) {
    line(words::sentence(data.answer->trouble), theme.warning);
  }
  constexpr float kRow = 84.0f;
  y += 8.0f;
  for (const FetchOffer& offer : known ? data.answer->offers : std::vector<FetchOffer>()) {
    if (row_onward(ui, "offer " + offer.id, {view.left, y, view.right, y + kRow}, "offers",
                   offer.name, amount_words(offer))) {
      ui.emit(act::PickOffer{offer.id});
    }
    y += kRow;
  }
  if (known && data.question.practice) {
    line(say("End practice to get heights and land cover for your stop."), theme.ink);
  } else if (known && data.question.way.empty()) {
    line(say("Set a position under Here to get heights and land cover around it."), theme.ink);
  }
  ui.end_page("offers", top, y + 16.0f);
}

void draw_one_offer(Ui& ui, const Shared& shared, const Intake& data, const FetchOffer& offer) {
  const auto head = draw_head(ui, offer.name, "offer back", "Back");
  if (head.tapped) ui.emit(act::PickOffer{});
  Rect view = head.room;
  const Rect acts{view.left, view.bottom - ui::ActRow::kHeight, view.right, view.bottom};
  view.bottom = acts.top - ui::ActRow::kGap;
  view.top = ui.begin_page("offer", view);
  const float top = view.top;
  Column column(ui, view);
  column.plain(amount_words(offer), Face::TextBold);
  const bool fetches = offer.files > 0 && !shared.in_browser;
  if (fetches) column.warning(connection_words(data.answer->connection));
  if (offer.files > 0 && shared.in_browser) column.plain(browser_words(offer));
  column.line(fill(say("Source: {source}"), {{"source", offer.publisher}}));
  if (!offer.server.empty()) column.line(fill(say("Server: {name}"), {{"name", offer.server}}));
  column.line(fill(say("License: {license}"), {{"license", offer.license}}));
  column.line(offer.notice);
  column.line(offer.date.empty() ? std::string(say("The data is of the day you fetch it."))
                                 : fill(say("Date of the data: {date}"), {{"date", offer.date}}));
  if (!offer.cells.empty()) {
    column.rule();
    column.line(fill(say("Squares to fetch: {squares}"),
                     {{"squares", squares_words(offer.cells, kSquaresNamed)}}));
  }
  if (offer.cells_on_board > 0) {
    column.line(fill(say("{number} squares are on board."),
                     {{"number", std::to_string(offer.cells_on_board)}}));
  }
  if (offer.cells_empty > 0) {
    column.line(fill(say("{number} squares have no data there, as an earlier fetch found."),
                     {{"number", std::to_string(offer.cells_empty)}}));
  }
  if (offer.refuses_apps && fetches) {
    column.warning(
        fill(say("This server often refuses apps. Then open {address} in a browser, save "
                 "the file, and import it."),
             {{"address", offer.first_address}}));
  }
  if (fetches) {
    column.line(say("Stop at any time: what came is kept, and fetching again continues there."));
  }
  if (!data.trouble.empty()) column.warning(words::sentence(data.trouble));
  ui.end_page("offer", top, column.bottom() + 16.0f);
  if (shared.in_browser) return;
  constexpr float kFetch = 280.0f;
  const std::string label =
      offer.usual_bytes == 0
          ? std::string(say("Fetch now"))
          : fill(say("Fetch {size}"), {{"size", words::bytes(offer.usual_bytes)}});
  if (ui.button("fetch now", ui::ActRow(acts, shared.settings.left_handed).next(kFetch), label,
                ButtonLook::Filled, fetches)) {
    ui.emit(act::FetchNow{});
  }
}

}  // namespace

void draw_offers(Ui& ui, const Shared& shared, const Intake& data) {
  const FetchOffer* offer = offer_shown(data);
  if (offer == nullptr) return draw_all_offers(ui, shared, data);
  draw_one_offer(ui, shared, data, *offer);
}

void draw_fetch_report(Column& column, const FetchReport& report) {
  column.plain(report.name, Face::TextBold);
  column.pair(say("Files"), std::to_string(report.files));
  column.pair(say("Over the line"), words::bytes(report.bytes));
  if (!report.cells.empty()) {
    column.pair(say("Tiles made or completed"), std::to_string(report.cells.size()));
    column.line(squares_words(report.cells, kSquaresNamed));
  }
  if (report.without_file > 0) {
    column.pair(say("Squares without a file"), std::to_string(report.without_file));
    column.line(say("The publisher has none for squares all at sea."));
  }
  column.line(report.notice);
}

}  // namespace mastwise::screens::import
