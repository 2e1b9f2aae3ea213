#include "core/geo/geodesic.hpp"
#include "core/logbook/logbook.hpp"
#include "core/logbook/logbook_file.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace mastwise {
namespace {

using logbook_file::find;
using logbook_file::kTable;
using logbook_file::select;
using logbook_file::write;

constexpr const char* kSameStation =
    "WHERE stop_id = ? AND source = ? AND station_id = ? ORDER BY step DESC LIMIT 1";

StopRecord stop_named(const std::string& id) {
  StopRecord stop = record_cells::blank(static_cast<const StopRecord*>(nullptr));
  stop.id = id;
  return stop;
}

// If the tablet's clock went back, the new version must still win over the one it replaces.
template <class Record>
Record after(Record record, const std::optional<Record>& before) {
  if (before && record.mark.changed <= before->mark.changed) {
    record.mark.changed = before->mark.changed + milliseconds(1);
  }
  return record;
}

template <class Record>
Result<Done> put_record(store::Database& database, const Record& record) {
  if (const auto wrong = fault(record)) return *wrong;
  const auto before = find(database, record);
  if (!before) return before.error();
  return write(database, after(record, *before));
}

template <class Record>
Result<Done> remove_record(store::Database& database, const Record& named, std::string_view what,
                           UtcTime now, const std::string& tablet) {
  const auto before = find(database, named);
  if (!before) return before.error();
  if (!*before || (*before)->mark.deleted) {
    return Error{.what = "unknown " + std::string(what), .where = database.path()};
  }
  Record deleted = **before;
  deleted.mark = {.changed = now, .tablet = tablet, .deleted = true};
  return write(database, after(deleted, *before));
}

// A record of an unknown stop could never be shown.
Result<Done> require_stop(store::Database& database, const std::string& id) {
  const auto stop = find(database, stop_named(id));
  if (!stop) return stop.error();
  if (*stop && !(*stop)->mark.deleted) return Done{};
  return Error{.what = "the logbook has no stop \"" + id + "\"", .where = database.path()};
}

std::string at_live_stop(const std::string& more) {
  return "WHERE deleted = 'no' AND stop_id IN (SELECT id FROM stops WHERE deleted = 'no')" + more;
}

}  // namespace

Result<Done> Logbook::put(const StopRecord& stop) {
  return put_record(database_, stop);
}

Result<Done> Logbook::put(const SweepRecord& sweep) {
  if (const auto known = require_stop(database_, sweep.stop_id); !known) return known;
  return put_record(database_, sweep);
}

Result<Done> Logbook::put(const OutcomeRecord& outcome) {
  if (const auto wrong = fault(outcome)) return *wrong;
  if (const auto known = require_stop(database_, outcome.stop_id); !known) return known;
  auto transaction = store::Transaction::begin(database_);
  if (!transaction) return transaction.error();
  const auto before = find(database_, outcome);
  if (!before) return before.error();
  if (*before) {
    const auto kept = write(database_, **before, logbook_file::kOutcomesBefore);
    if (!kept) return kept;
  }
  if (const auto done = write(database_, after(outcome, *before)); !done) return done;
  return transaction->commit();
}

Result<std::optional<OutcomeRecord>> Logbook::take_back(const OutcomeRecord& touched, UtcTime now,
                                                        const std::string& tablet) {
  auto transaction = store::Transaction::begin(database_);
  if (!transaction) return transaction.error();
  const auto standing = find(database_, touched);
  if (!standing) return standing.error();
  const auto before = select<OutcomeRecord>(database_, logbook_file::kOutcomesBefore, kSameStation,
                                            touched.stop_id, touched.source, touched.station_id);
  if (!before) return before.error();
  if (!*standing || ((*standing)->mark.deleted && before->empty())) {
    return Error{.what = "no outcome to take back", .where = database_.path()};
  }
  OutcomeRecord restored = before->empty() ? **standing : before->front();
  const bool deleted = before->empty() || restored.mark.deleted;
  restored.mark = {.changed = now, .tablet = tablet, .deleted = deleted};
  if (const auto done = write(database_, after(restored, *standing)); !done) return done.error();
  auto forget = database_.prepare(
      "DELETE FROM outcomes_before WHERE step = (SELECT step FROM outcomes_before " +
      std::string(kSameStation) + ")");
  if (!forget) return forget.error();
  const auto forgotten =
      forget
          ->bind(std::string_view(touched.stop_id), std::string_view(touched.source),
                 std::string_view(touched.station_id))
          .run();
  if (!forgotten) return forgotten.error();
  if (const auto done = transaction->commit(); !done) return done.error();
  return deleted ? std::nullopt : std::optional(std::move(restored));
}

Result<Done> Logbook::remove_stop(const std::string& id, UtcTime now, const std::string& tablet) {
  return remove_record(database_, stop_named(id), "stop", now, tablet);
}

Result<Done> Logbook::remove_sweep(const std::string& id, UtcTime now, const std::string& tablet) {
  return remove_record(database_, SweepRecord{.id = id}, "sweep", now, tablet);
}

Result<std::optional<StopRecord>> Logbook::stop(const std::string& id) {
  const auto found = find(database_, stop_named(id));
  if (!found) return found.error();
  return *found && !(*found)->mark.deleted ? *found : std::nullopt;
}

Result<std::vector<StopRecord>> Logbook::stops() {
  auto found = select<StopRecord>(database_, kTable<StopRecord>, "WHERE deleted = 'no'");
  if (!found) return found;
  std::stable_sort(found->begin(), found->end(),
                   [](const StopRecord& a, const StopRecord& b) { return a.arrived > b.arrived; });
  return found;
}

Result<std::vector<StopNear>> Logbook::stops_near(const Position& place, double within_m) {
  const auto all = stops();
  if (!all) return all.error();
  std::vector<StopNear> near;
  for (const StopRecord& stop : *all) {
    const double distance_m = path_between(place, stop.position).distance_m;
    if (distance_m > within_m) continue;
    auto tried = outcomes(stop.id);
    if (!tried) return tried.error();
    near.push_back({.stop = stop, .distance_m = distance_m, .outcomes = *std::move(tried)});
  }
  std::stable_sort(near.begin(), near.end(), [](const StopNear& a, const StopNear& b) {
    return a.distance_m < b.distance_m;
  });
  return near;
}

Result<std::vector<OutcomeRecord>> Logbook::outcomes() {
  auto found = select<OutcomeRecord>(database_, kTable<OutcomeRecord>, at_live_stop(""));
  if (!found) return found;
  std::stable_sort(found->begin(), found->end(),
                   [](const OutcomeRecord& a, const OutcomeRecord& b) { return a.when > b.when; });
  return found;
}

Result<std::vector<OutcomeRecord>> Logbook::outcomes(const std::string& stop_id) {
  return select<OutcomeRecord>(database_, kTable<OutcomeRecord>,
                               at_live_stop(" AND stop_id = ? ORDER BY source, station_id"),
                               stop_id);
}

Result<std::vector<SweepRecord>> Logbook::sweeps(const std::string& stop_id) {
  return select<SweepRecord>(database_, kTable<SweepRecord>,
                             at_live_stop(" AND stop_id = ? ORDER BY id"), stop_id);
}

std::vector<HeadingThatWorked> headings_that_worked(std::span<const OutcomeRecord> outcomes) {
  std::map<long, std::set<std::string>> stations;
  for (const OutcomeRecord& outcome : outcomes) {
    if (outcome.mark.deleted || outcome.outcome != Outcome::steady || !outcome.heading) continue;
    const std::string& name = outcome.call_sign.empty() ? outcome.station_id : outcome.call_sign;
    stations[std::lround(outcome.heading->degrees()) % 360].insert(name);
  }
  std::vector<HeadingThatWorked> found;
  for (const auto& [degrees, names] : stations) {
    found.push_back({.heading = Bearing<True>::degrees(static_cast<double>(degrees)),
                     .call_signs = {names.begin(), names.end()}});
  }
  std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
    return a.call_signs.size() > b.call_signs.size();
  });
  return found;
}

}  // namespace mastwise
