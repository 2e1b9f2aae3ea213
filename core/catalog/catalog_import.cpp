#include "core/catalog/catalog.hpp"
#include "core/catalog/catalog_connection.hpp"
#include "core/import/import_table.hpp"
#include "core/import/source_date.hpp"

#include <algorithm>
#include <optional>
#include <set>
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

// A table without a readable row must not replace the existing one.
Error nothing_readable(const ImportReport& report) {
  const auto& rejected = report.rejected;
  return Error{.what = rejected.empty()
                           ? "the table has no rows"
                           : fmt::format("all rows rejected; line {}: {}", rejected.front().line,
                                         rejected.front().reason),
               .remedy = "the catalog is unchanged"};
}

// Counts and lists what a table changes of the one before.
class Differences {
 public:
  Differences(const ImportFocus& focus, ImportReport& report)
      : focus_(focus), report_(report), changes_(focus.most) {}

  void added(const Station& station) {
    ++report_.stations_added;
    if (!report_.renews) return;
    changes_.add(one_sided_change(StationChange::Kind::added, station, focus_.near));
  }
  void gone(const Station& station) {
    ++report_.stations_gone;
    changes_.add(one_sided_change(StationChange::Kind::gone, station, focus_.near));
  }
  void in_both(const Station& before, const Station& now) {
    if (same_facts(before, now)) {
      ++report_.stations_unchanged;
      return;
    }
    ++report_.stations_changed;
    auto change = change_between(before, now, focus_.near);
    if (!change) return;
    ++report_.stations_changed_notably;
    if (change->moved_m > 0.0) ++report_.stations_moved;
    if (change->rf_channel_before) ++report_.stations_on_other_channel;
    if (change->erp_kw_before) ++report_.stations_of_other_power;
    if (!change->call_sign_before.empty()) ++report_.stations_renamed;
    changes_.add(*std::move(change));
  }
  // A station that was counted as new is one of before, by another id.
  void not_added(const Station& before, const Station& now) {
    --report_.stations_added;
    changes_.forget_added(now.id);
    in_both(before, now);
  }
  std::vector<StationChange> listed() { return changes_.sorted(); }

 private:
  const ImportFocus& focus_;
  ImportReport& report_;
  ChangeList changes_;
};

}  // namespace

std::size_t changes_not_listed(const ImportReport& report) {
  if (!report.renews) return 0;
  return report.stations_added + report.stations_gone + report.stations_changed_notably -
         report.changes.size();
}

// Inserts the stations of a source as they come, and compares them with those before.
class Catalog::Connection::Inserter : public StationSink {
 public:
  Inserter(Connection& connection, std::int64_t source, const std::string& name,
           Differences& differences, ImportReport& report)
      : connection_(connection),
        source_(source),
        name_(name),
        differences_(differences),
        report_(report) {}

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
    const auto found = report_.renews ? known.bind(name_, station.id).step() : Result<bool>(false);
    if (!found) return found.error();
    if (!*found) {
      differences_.added(station);
      return Done{};
    }
    const std::int64_t row = known.integer(0);
    known.reset();
    const auto was = connection_.read(row, false);
    if (!was) return was.error();
    differences_.in_both(*was, station);
    return Done{};
  }

  Connection& connection_;
  std::int64_t source_;
  const std::string& name_;
  Differences& differences_;
  ImportReport& report_;
  std::size_t taken_ = 0;
};

// Finds the stations of the source before that its new table lacks.
class Catalog::Connection::Missing {
 public:
  Missing(Connection& connection, std::int64_t before, std::int64_t now, Differences& differences)
      : connection_(connection), before_(before), now_(now), differences_(differences) {}

  Result<Done> find() {
    auto& gone = connection_.gone_from_source;
    gone.bind(before_, now_);
    while (true) {
      const auto more = gone.step();
      if (!more) return more.error();
      if (!*more) return Done{};
      const auto station = connection_.read(gone.integer(0), false);
      if (!station) return station.error();
      if (const auto done = settle(*station); !done) return done;
    }
  }

 private:
  Result<Done> settle(const Station& was) {
    const auto row = successor_of(was);
    if (!row) return row.error();
    if (!*row) {
      differences_.gone(was);
      return Done{};
    }
    const auto now = connection_.read(**row, false);
    if (!now) return now.error();
    differences_.not_added(was, *now);
    return Done{};
  }
  // The new record of the same station by another id, each once.
  Result<std::optional<std::int64_t>> successor_of(const Station& was) {
    auto& statement = connection_.successors;
    statement.bind(before_, now_, was.call_sign, was.facility_id);
    while (true) {
      const auto more = statement.step();
      if (!more) return more.error();
      if (!*more) return std::optional<std::int64_t>();
      const std::int64_t row = statement.integer(0);
      if (!taken_.insert(row).second) continue;
      statement.reset();
      return std::optional(row);
    }
  }

  Connection& connection_;
  std::int64_t before_, now_;
  Differences& differences_;
  std::set<std::int64_t> taken_;
};

Result<ImportReport> Catalog::Connection::replace(const Source& source, const StationReader& reader,
                                                  const ImportFocus& focus) {
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
  report.renews = before.has_value();
  Differences differences(focus, report);
  Inserter inserter(*this, now, source.name, differences, report);
  auto summary = reader(inserter);
  if (!summary) return summary.error();
  if (inserter.taken() == 0 && report.rows_rejected > 0) return nothing_readable(report);
  report.rows_read = summary->rows_read;
  report.remarks = std::move(summary->remarks);
  if (before) {
    if (const auto done = Missing(*this, *before, now, differences).find(); !done) {
      return done.error();
    }
    if (const auto gone = drop_source(source.name); !gone) return gone.error();
  }
  if (const auto done = rename_source.bind(source.name, now).run(); !done) return done.error();
  report.changes = differences.listed();
  return report;
}

void Catalog::Connection::shorten_log() {
  // Where it fails, the next import does it.
  static_cast<void>(database.integer("PRAGMA wal_checkpoint(TRUNCATE)"));
}

Result<ImportReport> Catalog::replace_source(const Source& source, const StationReader& reader,
                                             const ImportFocus& focus) {
  if (source.name.empty()) {
    return Error{.what = "the station table has no source",
                 .remedy = "give the name of its source"};
  }
  if (const auto fault = source_date_fault(source.date)) return *fault;
  auto report = [&]() -> Result<ImportReport> {
    auto transaction = store::Transaction::begin(connection_->database);
    if (!transaction) return transaction.error();
    auto replaced = connection_->replace(source, reader, focus);
    if (!replaced) return replaced;
    if (const auto committed = transaction->commit(); !committed) return committed.error();
    return replaced;
  }();
  connection_->shorten_log();
  return report;
}

Result<ImportReport> Catalog::replace_source(const StationTable& table,
                                             const ImportProgress& progress,
                                             const ImportFocus& focus) {
  const StationReader reader = [&](StationSink& sink) -> Result<TableSummary> {
    for (const RejectedRow& row : table.rejected) sink.reject(row);
    std::size_t done = 0;
    for (const Station& station : table.stations) {
      if (const auto taken = sink.take(station); !taken) return taken.error();
      if (const auto go_on = told(progress, ++done, table.stations.size()); !go_on) {
        return go_on.error();
      }
    }
    return TableSummary{table.rows_read, table.remarks};
  };
  return replace_source(table.source, reader, focus);
}

}  // namespace mastwise
