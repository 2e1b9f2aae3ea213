#include "core/catalog/catalog_connection.hpp"
#include "core/catalog/catalog_search.hpp"
#include "core/import/program_table.hpp"

#include <string>

namespace mastwise {
namespace {

std::optional<std::int64_t> stored(std::optional<bool> value) {
  if (!value) return std::nullopt;
  return *value ? 1 : 0;
}

std::optional<bool> yes_no(std::optional<std::int64_t> value) {
  if (!value) return std::nullopt;
  return *value != 0;
}

std::optional<std::string_view> stored(std::optional<BroadcastStandard> standard) {
  if (!standard) return std::nullopt;
  return to_text(*standard);
}

Error damaged(const store::Database& database, const Error& error) {
  return Error{.what = "a station of the catalog is damaged: " + error.message(),
               .where = database.path(),
               .remedy = "import the station tables again",
               .damaged = true};
}

std::optional<std::string> stored(const std::optional<TransmitPattern>& pattern) {
  if (!pattern) return std::nullopt;
  return to_text(*pattern);
}

// The kinds that are stored as words.
Result<Done> read_kinds(const store::Statement& row, Station& station) {
  const auto raster = parse_raster(row.text_view(7));
  if (!raster) return raster.error();
  station.raster = *raster;
  const auto channel = parse_rf_channel(row.text_view(8));
  if (!channel) return channel.error();
  station.rf_channel = *channel;
  if (!row.is_null(9)) {
    const auto standard = parse_broadcast_standard(row.text_view(9));
    if (!standard) return standard.error();
    station.standard = *standard;
  }
  const auto polarization = parse_polarization(row.text_view(14));
  if (!polarization) return polarization.error();
  station.polarization = *polarization;
  if (!row.is_null(20)) {
    auto pattern = parse_transmit_pattern(row.text_view(20));
    if (!pattern) return pattern.error();
    station.pattern = std::move(pattern).value();
  }
  return Done{};
}

// Columns in the order of Connection::select_station.
Result<Station> read_facts(const store::Statement& row) {
  const auto position = Position::at_deg(row.real(0), row.real(1));
  if (!position) return position.error();
  Station station{
      .id = row.text(3),
      .call_sign = row.text(2),
      .facility_id = row.text(4),
      .name = row.text(5),
      .network = row.text(6),
      .multiplex = row.text(23),
      .position = *position,
      .site_amsl_m = row.optional_real(10),
      .antenna_amsl_m = row.optional_real(11),
      .haat_m = row.optional_real(12),
      .erp_kw = row.optional_real(13),
      .directional = yes_no(row.optional_integer(15)),
      .translator = yes_no(row.optional_integer(16)),
      .city = row.text(17),
      .state = row.text(18),
      .provenance = {{row.text(21), row.text(22)}, static_cast<std::size_t>(row.integer(19))}};
  if (const auto kinds = read_kinds(row, station); !kinds) return kinds.error();
  return station;
}

}  // namespace

Result<std::int64_t> Catalog::Connection::insert(std::int64_t source, const Station& s) {
  insert_station.bind(source, s.position.latitude_deg(), s.position.longitude_deg(), s.call_sign,
                      s.id, s.facility_id, s.name, s.network, s.multiplex, to_text(s.raster),
                      to_text(s.rf_channel), stored(s.standard), s.site_amsl_m, s.antenna_amsl_m,
                      s.haat_m, s.erp_kw, to_text(s.polarization), stored(s.directional),
                      stored(s.pattern), stored(s.translator), s.city, s.state,
                      static_cast<std::int64_t>(s.provenance.line));
  if (const auto done = insert_station.run(); !done) return done.error();
  const std::int64_t row = database.last_row();

  std::int64_t place = 0;
  for (const Program& program : s.programs) {
    insert_program.bind(row, place++, program.virtual_channel, program.name, program.network,
                        program.language);
    if (const auto done = insert_program.run(); !done) return done.error();
  }
  place = 0;
  for (const Note& note : s.notes) {
    if (const auto done = insert_note.bind(row, place++, note.column, note.text).run(); !done) {
      return done.error();
    }
  }
  insert_place.bind(row, s.position.latitude_deg(), s.position.longitude_deg());
  if (const auto done = insert_place.run(); !done) return done.error();
  if (const auto done = insert_words_of(row, s); !done) return done.error();
  return row;
}

Result<Done> Catalog::Connection::insert_words_of(std::int64_t row, const Station& s) {
  const auto overlay = overlay_of(s);
  if (!overlay) return overlay.error();
  const catalog_search::Words words = overlay->empty() ? catalog_search::words_of(s) : [&] {
    Station completed = s;
    completed.programs = merged_programs(s.programs, *overlay);
    return catalog_search::words_of(completed);
  }();
  return insert_words
      .bind(row, s.call_sign, s.name, words.networks, words.programs, words.place, words.channels)
      .run();
}

Result<std::vector<Program>> Catalog::Connection::overlay_of(const Station& station) {
  std::vector<Program> programs;
  select_overlay.bind(station.call_sign, station.facility_id, to_text(station.rf_channel));
  while (true) {
    const auto more = select_overlay.step();
    if (!more) return more.error();
    if (!*more) return programs;
    programs.push_back({select_overlay.text(0), select_overlay.text(1), select_overlay.text(2),
                        select_overlay.text(3)});
  }
}

Result<Station> Catalog::Connection::read(std::int64_t row, bool with_overlay) {
  const auto found = select_station.bind(row).step();
  if (!found) return found.error();
  if (!*found) return damaged(database, Error{.what = "the record is missing"});
  auto station = read_facts(select_station);
  select_station.reset();
  if (!station) return damaged(database, station.error());
  if (const auto parts = read_parts(row, *station); !parts) return parts.error();
  if (!with_overlay) return station;
  const auto overlay = overlay_of(*station);
  if (!overlay) return overlay.error();
  if (!overlay->empty()) {
    station->programs = merged_programs(std::move(station->programs), *overlay);
  }
  return station;
}

Result<Done> Catalog::Connection::read_parts(std::int64_t row, Station& station) {
  select_programs.bind(row);
  while (true) {
    const auto more = select_programs.step();
    if (!more) return more.error();
    if (!*more) break;
    station.programs.push_back({select_programs.text(0), select_programs.text(1),
                                select_programs.text(2), select_programs.text(3)});
  }
  select_notes.bind(row);
  while (true) {
    const auto more = select_notes.step();
    if (!more) return more.error();
    if (!*more) break;
    station.notes.push_back({select_notes.text(0), select_notes.text(1)});
  }
  return Done{};
}

}  // namespace mastwise
