#include "core/catalog/catalog_connection.hpp"

#include <fmt/format.h>

namespace mastwise {
namespace {

// "Mwct" as a number, to tell a catalog from another database.
constexpr std::int64_t kApplicationId = 0x4D776374;
constexpr std::int64_t kVersion = 3;

// Empty texts are unknown; other unknowns are NULL. Kinds are stored as words, so that people can
// read the file without Mastwise.
constexpr const char* kSchema = R"sql(
CREATE TABLE sources(
  source INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE,
  date TEXT NOT NULL);
CREATE TABLE stations(
  station INTEGER PRIMARY KEY,
  source INTEGER NOT NULL REFERENCES sources,
  latitude_deg REAL NOT NULL,
  longitude_deg REAL NOT NULL,
  call_sign TEXT NOT NULL,
  id TEXT NOT NULL,
  facility_id TEXT NOT NULL,
  name TEXT NOT NULL,
  network TEXT NOT NULL,
  multiplex TEXT NOT NULL DEFAULT '',
  raster TEXT NOT NULL,
  rf_channel TEXT NOT NULL,
  standard TEXT,
  site_amsl_m REAL,
  antenna_amsl_m REAL,
  haat_m REAL,
  erp_kw REAL,
  polarization TEXT NOT NULL,
  directional INTEGER,
  pattern TEXT,
  translator INTEGER,
  city TEXT NOT NULL,
  state TEXT NOT NULL,
  line INTEGER NOT NULL,
  UNIQUE(source, id));
CREATE INDEX stations_by_call_sign ON stations(call_sign COLLATE NOCASE);
CREATE TABLE programs(
  station INTEGER NOT NULL REFERENCES stations ON DELETE CASCADE,
  place INTEGER NOT NULL,
  virtual_channel TEXT NOT NULL,
  name TEXT NOT NULL,
  network TEXT NOT NULL,
  language TEXT NOT NULL,
  PRIMARY KEY(station, place)) WITHOUT ROWID;
CREATE TABLE program_sources(
  source INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE,
  date TEXT NOT NULL);
CREATE TABLE program_overlay(
  source INTEGER NOT NULL REFERENCES program_sources ON DELETE CASCADE,
  place INTEGER NOT NULL,
  call_sign TEXT NOT NULL COLLATE NOCASE,
  facility_id TEXT NOT NULL,
  rf_channel TEXT NOT NULL,
  virtual_channel TEXT NOT NULL,
  name TEXT NOT NULL,
  network TEXT NOT NULL,
  language TEXT NOT NULL,
  PRIMARY KEY(source, place)) WITHOUT ROWID;
CREATE INDEX overlay_by_call_sign ON program_overlay(call_sign);
CREATE INDEX overlay_by_facility ON program_overlay(facility_id);
CREATE TABLE notes(
  station INTEGER NOT NULL REFERENCES stations ON DELETE CASCADE,
  place INTEGER NOT NULL,
  column_name TEXT NOT NULL,
  text TEXT NOT NULL,
  PRIMARY KEY(station, place)) WITHOUT ROWID;
CREATE VIRTUAL TABLE places USING rtree(station, south, north, west, east);
CREATE VIRTUAL TABLE station_words USING fts5(
  call_sign, name, network, programs, place, channels,
  prefix='1 2 3', tokenize='unicode61 remove_diacritics 2');
)sql";

constexpr const char* kFacilityIndex =
    "CREATE INDEX IF NOT EXISTS stations_by_facility ON stations(facility_id)";

}  // namespace

Result<Done> Catalog::Connection::set_up() {
  // Losing the last import in a power cut is harmless, since the catalog can be rebuilt. A damaged
  // file would not be; the write-ahead log prevents that.
  if (auto done = database.run("PRAGMA journal_mode = WAL; PRAGMA synchronous = NORMAL;"
                               "PRAGMA cache_size = -16000; PRAGMA journal_size_limit = 4000000");
      !done) {
    return done;
  }
  const auto application = database.integer("PRAGMA application_id");
  if (!application) return application.error();
  const auto version = database.integer("PRAGMA user_version");
  if (!version) return version.error();
  const auto tables = database.integer("SELECT count(*) FROM sqlite_master");
  if (!tables) return tables.error();

  if (*application == 0 && *version == 0 && *tables == 0) {
    if (auto created = create(); !created) return created;
  } else if (auto known = check_version(*application, *version); !known) {
    return known;
  }
  if (!database.is_read_only()) {
    if (auto added = add_what_older_ones_lack(); !added) return added;
  }
  return prepare();
}

Result<bool> Catalog::Connection::knows_multiplexes() {
  const auto columns = database.integer(
      "SELECT count(*) FROM pragma_table_info('stations') WHERE name = 'multiplex'");
  if (!columns) return columns.error();
  return *columns > 0;
}

// Catalogs made before programs were joined by number have no such index, and those made before
// single-frequency networks were known by name no such column.
Result<Done> Catalog::Connection::add_what_older_ones_lack() {
  if (auto made = database.run(kFacilityIndex); !made) return made;
  const auto known = knows_multiplexes();
  if (!known) return known.error();
  if (*known) return Done{};
  return database.run("ALTER TABLE stations ADD COLUMN multiplex TEXT NOT NULL DEFAULT ''");
}

Result<Done> Catalog::Connection::set_up_frozen() {
  const auto application = database.integer("PRAGMA application_id");
  if (!application) return application.error();
  const auto version = database.integer("PRAGMA user_version");
  if (!version) return version.error();
  if (auto known = check_version(*application, *version); !known) return known;
  return prepare();
}

Result<Done> Catalog::Connection::check_version(std::int64_t application,
                                                std::int64_t version) const {
  if (application != kApplicationId) {
    return Error{.what = "this file is not a catalog of stations",
                 .where = database.path(),
                 .remedy = "choose another file name"};
  }
  if (version == kVersion) return Done{};
  return Error{.what = fmt::format("this catalog has version {}, Mastwise reads version {}",
                                   version, kVersion),
               .where = database.path(),
               .remedy = "move the file away and import the station tables again"};
}

Result<Done> Catalog::Connection::create() {
  auto transaction = store::Transaction::begin(database);
  if (!transaction) return transaction.error();
  auto made = database.run(fmt::format("{}PRAGMA application_id = {}; PRAGMA user_version = {};",
                                       kSchema, kApplicationId, kVersion));
  return made ? transaction->commit() : made;
}

Result<Done> Catalog::Connection::prepare() {
  // A catalog on a read-only medium may still lack the column; a damaged one may not tell.
  const auto known = knows_multiplexes();
  const std::string multiplex = known && !*known ? "''" : "multiplex";
  const struct {
    store::Statement& statement;
    std::string sql;
  } all[] = {
      {insert_source, "INSERT INTO sources(name, date) VALUES(?, ?)"},
      {select_source, "SELECT source FROM sources WHERE name = ?"},
      {delete_source, "DELETE FROM sources WHERE source = ?"},
      {list_sources,
       "SELECT name, date, (SELECT count(*) FROM stations WHERE stations.source = sources.source) "
       "FROM sources ORDER BY name"},
      {insert_station,
       "INSERT INTO stations(source, latitude_deg, longitude_deg, call_sign, id, facility_id, name,"
       " network, multiplex, raster, rf_channel, standard, site_amsl_m, antenna_amsl_m, haat_m,"
       " erp_kw, polarization, directional, pattern, translator, city, state, line)"
       " VALUES(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"},
      {insert_program, "INSERT INTO programs VALUES(?, ?, ?, ?, ?, ?)"},
      {insert_note, "INSERT INTO notes VALUES(?, ?, ?, ?)"},
      {insert_place, "INSERT INTO places VALUES(?1, ?2, ?2, ?3, ?3)"},
      {insert_words,
       "INSERT INTO station_words(rowid, call_sign, name, network, programs, place, channels)"
       " VALUES(?, ?, ?, ?, ?, ?, ?)"},
      {delete_words,
       "DELETE FROM station_words WHERE rowid IN (SELECT station FROM stations WHERE source = ?)"},
      {delete_places,
       "DELETE FROM places WHERE station IN (SELECT station FROM stations WHERE source = ?)"},
      {delete_stations, "DELETE FROM stations WHERE source = ?"},
      {select_station,
       "SELECT latitude_deg, longitude_deg, call_sign, id, facility_id, stations.name, network,"
       " raster, rf_channel, standard, site_amsl_m, antenna_amsl_m, haat_m, erp_kw, polarization,"
       " directional, translator, city, state, line, pattern, sources.name, sources.date, " +
           multiplex + " FROM stations JOIN sources USING(source) WHERE station = ?"},
      {select_programs,
       "SELECT virtual_channel, name, network, language FROM programs WHERE station = ?"
       " ORDER BY place"},
      {insert_program_source, "INSERT INTO program_sources(name, date) VALUES(?, ?)"},
      {delete_program_source, "DELETE FROM program_sources WHERE name = ?"},
      {list_program_sources,
       "SELECT name, date, (SELECT count(*) FROM program_overlay AS p WHERE p.source ="
       " program_sources.source) FROM program_sources ORDER BY name"},
      {insert_overlay, "INSERT INTO program_overlay VALUES(?, ?, ?, ?, ?, ?, ?, ?, ?)"},
      {select_overlay,
       "SELECT virtual_channel, name, network, language FROM program_overlay"
       " WHERE ((facility_id <> '' AND facility_id = ?2)"
       " OR (call_sign <> '' AND call_sign = ?1 AND (facility_id = '' OR ?2 = '')))"
       " AND (rf_channel = '' OR rf_channel = ?3) ORDER BY source, place"},
      {stations_of_overlay,
       "SELECT station FROM stations WHERE EXISTS(SELECT 1 FROM program_overlay AS p"
       " WHERE ((p.facility_id <> '' AND p.facility_id = stations.facility_id)"
       " OR (p.call_sign <> '' AND p.call_sign = stations.call_sign"
       " AND (p.facility_id = '' OR stations.facility_id = '')))"
       " AND (p.rf_channel = '' OR p.rf_channel = stations.rf_channel))"},
      {station_of_program,
       "SELECT 1 FROM stations WHERE ((?2 <> '' AND facility_id = ?2)"
       " OR (?1 <> '' AND call_sign = ?1 COLLATE NOCASE AND (?2 = '' OR facility_id = '')))"
       " AND (?3 = '' OR rf_channel = ?3) LIMIT 1"},
      {renamed_stations,
       "SELECT s.facility_id, s.call_sign, p.call_sign FROM program_overlay AS p"
       " JOIN program_sources AS q USING(source) JOIN stations AS s ON s.facility_id = "
       "p.facility_id"
       " WHERE q.name = ? AND p.facility_id <> '' AND p.call_sign <> ''"
       " AND p.call_sign <> s.call_sign ORDER BY s.call_sign"},
      {delete_words_of, "DELETE FROM station_words WHERE rowid = ?"},
      {gone_from_source,
       "SELECT station FROM stations AS b WHERE source = ?1 AND NOT EXISTS(SELECT 1 FROM stations"
       " AS n WHERE n.source = ?2 AND n.id = b.id) ORDER BY call_sign, id"},
      {successors,
       // The pluses make SQLite go by the call sign, which few stations share.
       "SELECT station FROM stations AS n WHERE +source = ?2 AND call_sign = ?3 COLLATE NOCASE"
       " AND +facility_id = ?4 AND NOT EXISTS(SELECT 1 FROM stations AS b WHERE b.source = ?1"
       " AND b.id = n.id) ORDER BY id"},
      {rename_source, "UPDATE sources SET name = ? WHERE source = ?"},
      {line_of_station, "SELECT line FROM stations WHERE source = ? AND id = ?"},
      {select_notes, "SELECT column_name, text FROM notes WHERE station = ? ORDER BY place"},
      {count_stations, "SELECT count(*) FROM stations"},
      {count_of_source, "SELECT count(*) FROM stations WHERE source = ?"},
      {by_id,
       "SELECT station FROM stations JOIN sources USING(source) WHERE sources.name = ? AND id = ?"},
      {by_call_sign,
       "SELECT station FROM stations JOIN sources USING(source)"
       " WHERE call_sign = ? COLLATE NOCASE ORDER BY sources.name, id"},
      {in_box,
       "SELECT stations.station, latitude_deg, longitude_deg FROM places JOIN stations"
       " USING(station) WHERE north >= ? AND south <= ? AND east >= ? AND west <= ?"},
      {matching,
       "SELECT stations.station, latitude_deg, longitude_deg, stations.call_sign"
       " FROM station_words JOIN stations ON stations.station = station_words.rowid"
       " WHERE station_words MATCH ?"},
  };
  Result<Done> done = Done{};
  for (const auto& one : all) {
    auto prepared = database.prepare(one.sql);
    if (prepared) {
      one.statement = std::move(prepared).value();
    } else if (done) {
      done = prepared.error();
    }
  }
  return done;
}

Result<std::size_t> Catalog::Connection::drop_source(std::string_view name) {
  const auto found = select_source.bind(name).step();
  if (!found) return found.error();
  if (!*found) return std::size_t{0};
  const std::int64_t source = select_source.integer(0);
  select_source.reset();
  const auto counted = count_of_source.bind(source).step();
  if (!counted) return counted.error();
  const auto stations = static_cast<std::size_t>(count_of_source.integer(0));
  count_of_source.reset();
  // These find words and places through the stations, so they come after them.
  for (store::Statement* statement :
       {&delete_words, &delete_places, &delete_stations, &delete_source}) {
    if (const auto done = statement->bind(source).run(); !done) return done.error();
  }
  return stations;
}

}  // namespace mastwise
