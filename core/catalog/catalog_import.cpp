#include "core/catalog/catalog.hpp"
#include "core/catalog/catalog_connection.hpp"
#include "core/geo/geodesic.hpp"
#include "core/import/source_date.hpp"

#include <algorithm>
#include <string>
#include <unordered_set>

namespace mastwise {
namespace {

bool same_facts(const Station& before, const Station& now) {
  Station compared = now;
  compared.provenance = before.provenance;
  return before == compared;
}

Result<Done> told(const ImportProgress& progress, std::size_t done, std::size_t all) {
  constexpr std::size_t kEvery = 256;
  if (!progress || (done % kEvery != 0 && done != all) || progress(done, all)) return Done{};
  return Error{.what = "the import was stopped", .remedy = "the catalog is unchanged"};
}

void list(std::vector<std::string>& call_signs, const std::string& call_sign) {
  if (call_signs.size() < ImportReport::kListedStations) call_signs.push_back(call_sign);
}

void compare(const Station& before, const Station& now, ImportReport& report) {
  ++(same_facts(before, now) ? report.stations_unchanged : report.stations_changed);
  const double moved_m = path_between(before.position, now.position).distance_m;
  if (moved_m <= ImportReport::kMove_m) return;
  ++report.stations_moved;
  report.moved.push_back({now.call_sign, moved_m});
}

void shorten(std::vector<StationMove>& moved) {
  std::stable_sort(moved.begin(), moved.end(), [](const StationMove& a, const StationMove& b) {
    return a.distance_m > b.distance_m;
  });
  moved.resize(std::min(moved.size(), ImportReport::kListedStations));
}

}  // namespace

Result<Done> Catalog::Connection::compare_with(const StationTable& table, ImportReport& report) {
  std::unordered_set<std::string> ids;
  for (const Station& station : table.stations) {
    ids.insert(station.id);
    const auto found = by_id.bind(table.source.name, station.id).step();
    if (!found) return found.error();
    if (!*found) {
      ++report.stations_added;
      list(report.added_call_signs, station.call_sign);
      continue;
    }
    const std::int64_t row = by_id.integer(0);
    by_id.reset();
    const auto before = read(row, false);
    if (!before) return before.error();
    compare(*before, station, report);
  }
  shorten(report.moved);
  ids_of_source.bind(table.source.name);
  while (true) {
    const auto more = ids_of_source.step();
    if (!more) return more.error();
    if (!*more) return Done{};
    if (ids.count(ids_of_source.text(0)) > 0) continue;
    ++report.stations_gone;
    list(report.gone_call_signs, ids_of_source.text(1));
  }
}

Result<ImportReport> Catalog::replace_source(const StationTable& table,
                                             const ImportProgress& progress) {
  if (table.source.name.empty()) {
    return Error{.what = "the station table has no source",
                 .remedy = "give the name of its source"};
  }
  if (const auto fault = source_date_fault(table.source.date)) return *fault;

  ImportReport report{.source = table.source,
                      .rows_read = table.rows_read,
                      .rejected = table.rejected,
                      .remarks = table.remarks};
  auto transaction = store::Transaction::begin(connection_->database);
  if (!transaction) return transaction.error();
  if (const auto done = connection_->compare_with(table, report); !done) return done.error();
  if (const auto removed = connection_->drop_source(table.source.name); !removed) {
    return removed.error();
  }
  auto& insert_source = connection_->insert_source;
  if (const auto done = insert_source.bind(table.source.name, table.source.date).run(); !done) {
    return done.error();
  }
  const std::int64_t source = connection_->database.last_row();
  std::size_t done = 0;
  for (const Station& station : table.stations) {
    const auto row = connection_->insert(source, station);
    if (!row) return row.error();
    if (const auto go_on = told(progress, ++done, table.stations.size()); !go_on) {
      return go_on.error();
    }
  }
  if (const auto committed = transaction->commit(); !committed) return committed.error();
  return report;
}

}  // namespace mastwise
