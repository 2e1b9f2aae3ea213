#include "core/catalog/catalog.hpp"
#include "core/catalog/catalog_connection.hpp"
#include "core/import/source_date.hpp"
#include "core/text/words.hpp"

#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace mastwise {
namespace {

// Call signs of the same station often differ in their ending alone: "QAAB" and "QAAB-TV".
bool same_letters(std::string_view a, std::string_view b) {
  return words::same_word(a.substr(0, a.find('-')), b.substr(0, b.find('-')));
}

}  // namespace

Result<std::set<std::int64_t>> Catalog::Connection::rows_of_overlay() {
  std::set<std::int64_t> rows;
  stations_of_overlay.bind();
  while (true) {
    const auto more = stations_of_overlay.step();
    if (!more) return more.error();
    if (!*more) return rows;
    rows.insert(stations_of_overlay.integer(0));
  }
}

Result<Done> Catalog::Connection::find_words_anew(const std::set<std::int64_t>& rows) {
  for (const std::int64_t row : rows) {
    const auto station = read(row, false);
    if (!station) return station.error();
    if (const auto done = delete_words_of.bind(row).run(); !done) return done;
    if (const auto done = insert_words_of(row, *station); !done) return done;
  }
  return Done{};
}

Result<Done> Catalog::Connection::insert_programs(const ProgramTable& table) {
  if (const auto done = insert_program_source.bind(table.source.name, table.source.date).run();
      !done) {
    return done;
  }
  const std::int64_t source = database.last_row();
  std::int64_t place = 0;
  for (const StationProgram& one : table.programs) {
    const std::string channel = one.rf_channel ? to_text(*one.rf_channel) : std::string();
    insert_overlay.bind(source, place++, one.call_sign, one.facility_id, channel,
                        one.program.virtual_channel, one.program.name, one.program.network,
                        one.program.language);
    if (const auto done = insert_overlay.run(); !done) return done;
  }
  return Done{};
}

Result<Done> Catalog::Connection::count_strangers(const ProgramTable& table,
                                                  ProgramReport& report) {
  std::set<std::string> named;
  for (const StationProgram& one : table.programs) {
    const std::string channel = one.rf_channel ? to_text(*one.rf_channel) : std::string();
    const auto found = station_of_program.bind(one.call_sign, one.facility_id, channel).step();
    if (!found) return found.error();
    station_of_program.reset();
    if (*found) continue;
    ++report.without_station;
    const std::string& name = one.call_sign.empty() ? one.facility_id : one.call_sign;
    if (report.strangers.size() < ProgramReport::kListed && named.insert(name).second) {
      report.strangers.push_back(name);
    }
  }
  return Done{};
}

Result<Done> Catalog::Connection::count_renamed(const Source& source, ProgramReport& report) {
  std::set<std::string> named;
  renamed_stations.bind(source.name);
  while (true) {
    const auto more = renamed_stations.step();
    if (!more) return more.error();
    if (!*more) return Done{};
    RenamedStation one{renamed_stations.text(0), renamed_stations.text(1),
                       renamed_stations.text(2)};
    if (same_letters(one.call_sign, one.now) || !named.insert(one.facility_id).second) continue;
    ++report.stations_renamed;
    if (report.renamed.size() < ProgramReport::kListed) {
      report.renamed.push_back(std::move(one));
    }
  }
}

Result<ProgramReport> Catalog::replace_programs(const ProgramTable& table) {
  if (table.source.name.empty()) {
    return Error{.what = "the table of programs has no source",
                 .remedy = "give the name of its source"};
  }
  if (const auto fault = source_date_fault(table.source.date)) return *fault;
  ProgramReport report{.source = table.source,
                       .rows_read = table.rows_read,
                       .programs = table.programs.size(),
                       .rows_without_program = table.rows_without_program,
                       .rejected = table.rejected};
  auto transaction = store::Transaction::begin(connection_->database);
  if (!transaction) return transaction.error();
  auto changed = connection_->rows_of_overlay();
  if (!changed) return changed.error();
  for (const auto& done :
       {connection_->delete_program_source.bind(table.source.name).run(),
        connection_->insert_programs(table), connection_->count_strangers(table, report),
        connection_->count_renamed(table.source, report)}) {
    if (!done) return done.error();
  }
  const auto rows = connection_->rows_of_overlay();
  if (!rows) return rows.error();
  report.stations = rows->size();
  changed->insert(rows->begin(), rows->end());
  if (const auto done = connection_->find_words_anew(*changed); !done) return done.error();
  if (const auto done = transaction->commit(); !done) return done.error();
  return report;
}

Result<Done> Catalog::remove_programs(std::string_view name) {
  auto transaction = store::Transaction::begin(connection_->database);
  if (!transaction) return transaction.error();
  const auto changed = connection_->rows_of_overlay();
  if (!changed) return changed.error();
  if (auto done = connection_->delete_program_source.bind(name).run(); !done) return done;
  if (auto done = connection_->find_words_anew(*changed); !done) return done;
  return transaction->commit();
}

Result<std::vector<SourceSummary>> Catalog::program_sources() {
  return read_summaries(connection_->list_program_sources);
}

}  // namespace mastwise
