#include "app/service/fetch_offers.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"
#include "platform/connection.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace mastwise {
namespace {

using words::fill;
using words::say;

std::vector<terrain::TileCell> near_cells(const std::optional<GroundAround>& around) {
  std::vector<terrain::TileCell> cells;
  if (!around) return cells;
  for (const GroundSquare& square : around->squares) {
    if (square.near_km2 == 0.0 || square.held == SquareHeld::Sea) continue;
    if (const auto cell = terrain::cell_named(square.cell)) cells.push_back(*cell);
  }
  return cells;
}

fetch::Wish wish_of(const FetchPlaces& places, publishers::DataSet set,
                    const std::optional<GroundAround>& around) {
  fetch::Wish wish{.set = std::move(set),
                   .home = places.home,
                   .downloads = places.downloads,
                   .base = places.base};
  if (wish.set.square_deg > 0) wish.cells = near_cells(around);
  return wish;
}

// "https://host/path" to "host".
std::string host_of(const std::string& address) {
  const std::size_t scheme = address.find("://");
  const std::size_t begin = scheme == std::string::npos ? 0 : scheme + 3;
  return address.substr(begin, address.find('/', begin) - begin);
}

FetchOffer offer_of(const fetch::Wish& wish) {
  const publishers::DataSet& set = wish.set;
  const fetch::Plan plan = fetch::plan(wish);
  FetchOffer offer{.id = set.id,
                   .kind = set.kind,
                   .name = set.name,
                   .publisher = set.publisher,
                   .license = set.license,
                   .notice = set.notice,
                   .date = set.date,
                   .by_hand = set.by_hand,
                   .refuses_apps = set.refuses_scripts,
                   .files = plan.files.size(),
                   .usual_bytes = plan.usual_bytes,
                   .cells_on_board = plan.cells_on_board,
                   .cells_empty = plan.cells_empty};
  if (plan.files.empty()) return offer;
  offer.first_address = publishers::at_base(plan.files.front().address, wish.base);
  offer.server = host_of(offer.first_address);
  for (const publishers::RemoteFile& file : plan.files) {
    for (const terrain::TileCell cell : file.cells) offer.cells.push_back(terrain::cell_name(cell));
  }
  return offer;
}

std::string doing(const fetch::Progress& now) {
  const std::pair<words::Phrase, std::string> number{"number", std::to_string(now.file + 1)},
      all{"all", std::to_string(now.files)};
  if (now.importing) return fill(say("Importing file {number} of {all}"), {number, all});
  if (now.all_bytes == 0) {
    return fill(say("File {number} of {all}: {done} so far"),
                {number, all, {"done", words::bytes(now.done_bytes)}});
  }
  std::string words = fill(
      say("File {number} of {all}: {done} of {size}"),
      {number, all, {"done", words::bytes(now.done_bytes)}, {"size", words::bytes(now.all_bytes)}});
  if (now.bytes_per_s > 0.0) {
    words += fill(say(", {size} a second"),
                  {{"size", words::bytes(static_cast<std::uint64_t>(now.bytes_per_s))}});
  }
  return words;
}

// Of all files, each counted alike.
double part_done(const fetch::Progress& now) {
  const double of_file =
      now.all_bytes == 0 ? 0.0
                         : static_cast<double>(now.done_bytes) / static_cast<double>(now.all_bytes);
  // A file's import is counted as a tenth of its time [our choice, no source].
  constexpr double kDownload = 0.9;
  const double file = now.importing ? kDownload + (1.0 - kDownload) * of_file : kDownload * of_file;
  return (static_cast<double>(now.file) + std::min(file, 1.0)) /
         static_cast<double>(std::max<std::size_t>(now.files, 1));
}

}  // namespace

Connection connection_now() {
  switch (platform::line_kind()) {
    case platform::LineKind::none:
      return Connection::None;
    case platform::LineKind::mobile:
      return Connection::Mobile;
    case platform::LineKind::other:
      break;
  }
  return Connection::Other;
}

Result<std::vector<FetchOffer>> fetch_offers(const FetchPlaces& places,
                                             const std::optional<GroundAround>& around) {
  auto sets = fetch::load_publishers();
  if (!sets) return sets.error();
  std::vector<FetchOffer> offers;
  for (publishers::DataSet& set : *sets) {
    const fetch::Wish wish = wish_of(places, std::move(set), around);
    if (wish.set.square_deg > 0 && wish.cells.empty()) continue;
    offers.push_back(offer_of(wish));
  }
  return offers;
}

Result<FetchReport> fetch_set(
    const FetchPlaces& places, const std::string& id, const std::optional<GroundAround>& around,
    const ImportFocus& focus,
    const std::function<bool(std::string doing, std::optional<double> part)>& told) {
  auto sets = fetch::load_publishers();
  if (!sets) return sets.error();
  const auto set = std::find_if(sets->begin(), sets->end(),
                                [&](const publishers::DataSet& one) { return one.id == id; });
  if (set == sets->end()) return Error{.what = "no such data set: " + id};
  fetch::Wish wish = wish_of(places, std::move(*set), around);
  wish.focus = focus;
  auto done = fetch::run(wish, fetch::plan(wish), [&](const fetch::Progress& now) {
    return told(doing(now), part_done(now));
  });
  if (!done) return done.error();
  if (done->stopped) return Error{.what = "the fetch was stopped"};
  FetchReport report{.name = wish.set.name,
                     .notice = wish.set.notice,
                     .files = done->files,
                     .bytes = done->fetched_bytes,
                     .without_file = done->no_file.size()};
  for (const terrain::TileCell cell : done->tiles) report.cells.push_back(terrain::cell_name(cell));
  if (!done->stations.empty()) report.stations = std::move(done->stations.front());
  return report;
}

}  // namespace mastwise
