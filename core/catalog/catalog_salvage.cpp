#include "core/catalog/catalog.hpp"
#include "core/catalog/catalog_connection.hpp"
#include "core/store/salvage.hpp"

#include <map>
#include <set>
#include <utility>

namespace mastwise {
namespace {

using store::Statement;

template <class Table>
std::vector<Table> tables_of(std::map<std::string, Table> by_source) {
  std::vector<Table> tables;
  for (auto& [source, table] : by_source) tables.push_back(std::move(table));
  return tables;
}

// Columns: source, its date, and those of the overlay.
StationProgram program_of(const Statement& row) {
  StationProgram one{.call_sign = row.text(2), .facility_id = row.text(3)};
  if (const auto channel = parse_rf_channel(row.text_view(4))) one.rf_channel = *channel;
  one.program = {row.text(5), row.text(6), row.text(7), row.text(8)};
  return one;
}

std::vector<ProgramTable> salvage_programs(store::Database& database) {
  std::map<std::string, ProgramTable> tables;
  std::map<std::pair<std::string, std::int64_t>, StationProgram> programs;
  const std::string query =
      "SELECT s.name, s.date, p.call_sign, p.facility_id, p.rf_channel, p.virtual_channel, p.name,"
      " p.network, p.language, p.place FROM program_overlay AS p JOIN program_sources AS s"
      " USING(source) ORDER BY ";
  store::read_from_both_ends(
      database, query + "p.source, p.place", query + "p.source DESC, p.place DESC",
      [&](const Statement& row) {
        tables.try_emplace(row.text(0), ProgramTable{.source = {row.text(0), row.text(1)}});
        return programs.try_emplace({row.text(0), row.integer(9)}, program_of(row)).second;
      });
  for (auto& [place, program] : programs) {
    ProgramTable& table = tables[place.first];
    ++table.rows_read;
    table.programs.push_back(std::move(program));
  }
  return tables_of(std::move(tables));
}

}  // namespace

Result<Done> Catalog::check(const std::string& path) {
  auto database = store::Database::open_existing(path);
  if (!database) return database.error();
  if (!*database) return Done{};
  // An empty file is left if the app is killed while it makes the catalog.
  if (const auto pages = (*database)->integer("PRAGMA page_count"); pages && *pages == 0) {
    return Done{};
  }
  auto damage = (*database)->damage();
  if (!damage && !damage.error().damaged) {
    // As on a read-only medium.
    auto frozen = store::Database::open_frozen(path);
    if (frozen) damage = frozen->damage();
  }
  if (!damage) return damage.error();
  if (damage->empty()) return Done{};
  return Error{.what = "the catalog is damaged: " + *damage,
               .where = path,
               .remedy = "import the station tables again",
               .damaged = true};
}

SalvagedCatalog Catalog::salvage(const std::string& path) {
  auto database = store::open_damaged(path);
  if (!database) return {};
  Connection connection(*std::move(database));
  // Stations do not need the statements of a damaged index.
  static_cast<void>(connection.prepare());
  std::set<std::int64_t> rows;
  // A second column, since an index alone has the first.
  const std::string query = "SELECT station, latitude_deg FROM stations ORDER BY station";
  store::read_from_both_ends(
      connection.database, query, query + " DESC",
      [&](const Statement& row) { return rows.insert(row.integer(0)).second; });
  std::map<std::string, StationTable> tables;
  for (const std::int64_t row : rows) {
    auto station = connection.read(row, false);
    if (!station || station->provenance.source.name.empty()) continue;
    StationTable& table = tables[station->provenance.source.name];
    table.source = station->provenance.source;
    ++table.rows_read;
    table.stations.push_back(*std::move(station));
  }
  return {.stations = tables_of(std::move(tables)),
          .programs = salvage_programs(connection.database)};
}

}  // namespace mastwise
