#include "core/catalog/catalog.hpp"
#include "core/catalog/catalog_connection.hpp"
#include "core/geo/geodesic.hpp"
#include "core/import/import_table.hpp"
#include "core/import/source_date.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include <fmt/format.h>

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

void shorten(std::vector<StationMove>& moved) {
  std::stable_sort(moved.begin(), moved.end(), [](const StationMove& a, const StationMove& b) {
    return a.distance_m > b.distance_m;
  });
  moved.resize(std::min(moved.size(), ImportReport::kListedStations));
}

void compare(const Station& before, const Station& now, ImportReport& report) {
  ++(same_facts(before, now) ? report.stations_unchanged : report.stations_changed);
  const double moved_m = path_between(before.position, now.position).distance_m;
  if (moved_m <= ImportReport::kMove_m) return;
  ++report.stations_moved;
  report.moved.push_back({now.call_sign, moved_m});
  if (report.moved.size() > 20 * ImportReport::kListedStations) shorten(report.moved);
}

// A table without a readable row must not replace the existing one.
Error nothing_readable(const ImportReport& report) {
  const auto& rejected = report.rejected;
  return Error{.what = rejected.empty()
                           ? "the table has no rows"
                           : fmt::format("all rows rejected; line {}: {}", rejected.front().line,
                                         rejected.front().reason),
               .remedy = "the catalog is unchanged"};
}

}  // namespace

// Inserts the stations of a source as they come, and compares them with those before.
class Catalog::Connection::Inserter : public StationSink {
 public:
  Inserter(Connection& connection, std::int64_t source, std::optional<std::int64_t> before,
           const std::string& name, ImportReport& report)
      : connection_(connection), source_(source), before_(before), name_(name), report_(report) {}

  Result<Done> take(Station station) override {
    const auto line = line_of(station.id);
    if (!line) return line.error();
    if (*line) {
      reject({station.provenance.line, already_listed(station.id, **line)});
      return Done{};
    }
    if (const auto compared = compare_with_before(station); !compared) return compared;
    const auto row = connection_.insert(source_, station);
    if (!row) return row.error();
    ++taken_;
    return Done{};
  }
  void reject(RejectedRow row) override {
    ++report_.rows_rejected;
    if (report_.rejected.size() < ImportReport::kListedRows) {
      report_.rejected.push_back(std::move(row));
    }
  }
  std::size_t taken() const { return taken_; }

 private:
  Result<std::optional<std::size_t>> line_of(const std::string& id) {
    auto& statement = connection_.line_of_station;
    const auto found = statement.bind(source_, id).step();
    if (!found) return found.error();
    if (!*found) return std::optional<std::size_t>();
    const auto line = static_cast<std::size_t>(statement.integer(0));
    statement.reset();
    return std::optional(line);
  }
  Result<Done> compare_with_before(const Station& station) {
    auto& known = connection_.by_id;
    const auto found = before_ ? known.bind(name_, station.id).step() : Result<bool>(false);
    if (!found) return found.error();
    if (!*found) {
      ++report_.stations_added;
      list(report_.added_call_signs, station.call_sign);
      return Done{};
    }
    const std::int64_t row = known.integer(0);
    known.reset();
    const auto was = connection_.read(row, false);
    if (!was) return was.error();
    compare(*was, station, report_);
    return Done{};
  }

  Connection& connection_;
  std::int64_t source_;
  std::optional<std::int64_t> before_;
  const std::string& name_;
  ImportReport& report_;
  std::size_t taken_ = 0;
};

Result<Done> Catalog::Connection::count_gone(std::int64_t before, std::int64_t now,
                                             ImportReport& report) {
  gone_from_source.bind(before, now);
  while (true) {
    const auto more = gone_from_source.step();
    if (!more) return more.error();
    if (!*more) return Done{};
    ++report.stations_gone;
    list(report.gone_call_signs, gone_from_source.text(0));
  }
}

Result<ImportReport> Catalog::Connection::replace(const Source& source,
                                                  const StationReader& reader) {
  ImportReport report{.source = source};
  const auto found = select_source.bind(source.name).step();
  if (!found) return found.error();
  std::optional<std::int64_t> before;
  if (*found) before = select_source.integer(0);
  select_source.reset();
  // Both tables are there while they are compared; no source's name ends in a line end.
  if (const auto done = insert_source.bind(source.name + "\n", source.date).run(); !done) {
    return done.error();
  }
  const std::int64_t now = database.last_row();
  Inserter inserter(*this, now, before, source.name, report);
  auto summary = reader(inserter);
  if (!summary) return summary.error();
  if (inserter.taken() == 0 && report.rows_rejected > 0) return nothing_readable(report);
  report.rows_read = summary->rows_read;
  report.remarks = std::move(summary->remarks);
  shorten(report.moved);
  if (before) {
    if (const auto done = count_gone(*before, now, report); !done) return done.error();
    if (const auto gone = drop_source(source.name); !gone) return gone.error();
  }
  if (const auto done = rename_source.bind(source.name, now).run(); !done) return done.error();
  return report;
}

void Catalog::Connection::shorten_log() {
  // Where it fails, the next import does it.
  static_cast<void>(database.integer("PRAGMA wal_checkpoint(TRUNCATE)"));
}

Result<ImportReport> Catalog::replace_source(const Source& source, const StationReader& reader) {
  if (source.name.empty()) {
    return Error{.what = "the station table has no source",
                 .remedy = "give the name of its source"};
  }
  if (const auto fault = source_date_fault(source.date)) return *fault;
  auto report = [&]() -> Result<ImportReport> {
    auto transaction = store::Transaction::begin(connection_->database);
    if (!transaction) return transaction.error();
    auto replaced = connection_->replace(source, reader);
    if (!replaced) return replaced;
    if (const auto committed = transaction->commit(); !committed) return committed.error();
    return replaced;
  }();
  connection_->shorten_log();
  return report;
}

Result<ImportReport> Catalog::replace_source(const StationTable& table,
                                             const ImportProgress& progress) {
  return replace_source(table.source, [&](StationSink& sink) -> Result<TableSummary> {
    for (const RejectedRow& row : table.rejected) sink.reject(row);
    std::size_t done = 0;
    for (const Station& station : table.stations) {
      if (const auto taken = sink.take(station); !taken) return taken.error();
      if (const auto go_on = told(progress, ++done, table.stations.size()); !go_on) {
        return go_on.error();
      }
    }
    return TableSummary{table.rows_read, table.remarks};
  });
}

}  // namespace mastwise
