#pragma once

#include "app/data/state.hpp"
#include "app/shared/json.hpp"

// The questions and answers of an import as JSON.

NLOHMANN_JSON_NAMESPACE_BEGIN

template <>
struct adl_serializer<mastwise::CheckedStation> {
  static void to_json(json& out, const mastwise::CheckedStation& station) {
    out = {{"call_sign", station.call_sign},
           {"rf_channel", station.rf_channel},
           {"city", station.city},
           {"position", station.position},
           {"at", station.at}};
  }
  static mastwise::CheckedStation from_json(const json& in) {
    return {.call_sign = in.at("call_sign").get<std::string>(),
            .rf_channel = in.at("rf_channel").get<std::string>(),
            .city = in.at("city").get<std::string>(),
            .position = in.at("position").get<mastwise::Position>(),
            .at = in.at("at").get<std::optional<mastwise::map::PlanePoint>>()};
  }
};

template <>
struct adl_serializer<mastwise::CheckMap> {
  static void to_json(json& out, const mastwise::CheckMap& map) {
    out = {{"middle", map.middle},
           {"radius_m", map.radius_m},
           {"lines", map.lines},
           {"squares", map.squares}};
  }
  static mastwise::CheckMap from_json(const json& in) {
    mastwise::CheckMap map{.middle = in.at("middle").get<mastwise::Position>(),
                           .radius_m = in.at("radius_m").get<double>()};
    in.at("lines").get_to(map.lines);
    if (in.contains("squares")) in.at("squares").get_to(map.squares);
    return map;
  }
};

NLOHMANN_JSON_NAMESPACE_END

namespace mastwise::pack {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Origin, source, date, license)

}  // namespace mastwise::pack

namespace mastwise {

NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PackLine, kind, parts, bytes, origin)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(PackLook, name, made, lines, to_write)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(StationChange, kind, id, call_sign, city, state, rf_channel,
                                   erp_kw, distance_m, call_sign_before, rf_channel_before,
                                   erp_kw_before, moved_m)
// Recordings made before changes were listed by station lack some members; likewise below.
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(PackReport, name, tiles_new, tiles_same,
                                                tiles_kept_finer, stations_added, stations_changed,
                                                stations_unchanged, stations_gone, changes,
                                                changes_not_listed)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Fallback, how, columns)
// Recordings made before there were fallbacks lack some members; likewise below.
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(FieldRule, column, factor, scale, unknown, values,
                                                otherwise, optional)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(AngleRule, notation, column, minutes_column, seconds_column,
                                   letter_column, letter_in_cell, positive_is_south_or_west,
                                   sixty_seconds_carry)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(TableMapping, source, separator, comment, raster,
                                                standard, datum, latitude, longitude, fields,
                                                optional_columns, decimal_comma, columns, where,
                                                where_not)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Doubt, kind, field, options, chosen, why)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(RejectedRow, line, reason)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(SourceSummary, source, stations)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(ImportReport, source, renews, rows_read,
                                                stations_added, stations_changed,
                                                stations_unchanged, stations_gone, stations_moved,
                                                stations_on_other_channel, stations_of_other_power,
                                                stations_renamed, stations_changed_notably, changes,
                                                rows_rejected, rejected, remarks)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(RenamedStation, facility_id, call_sign, now)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(ProgramReport, source, rows_read, programs,
                                                stations, without_station, strangers,
                                                stations_renamed, renamed, rows_without_program,
                                                rejected)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(ProgramColumns, call_sign, facility_id, rf_channel,
                                   virtual_channel, name, network, language)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(StationProgram, call_sign, facility_id, rf_channel, program)
// Recordings from before rasters were imported lack some members.
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(TableReading, kind, source, mapping, programs,
                                                ready, classes)
// Those from before the ground was shown, likewise.
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(IntakeQuestion, step, look, folder, path, reading,
                                                taking, way, practice, fetch, for_route)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(GroundSquare, cell, held, land_cover, near_km2, corners)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(GroundAround, squares, way, reach)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(DiskUse, ground_bytes, station_bytes, free_bytes)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(IntakeEntry, kind, path, name, bytes)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(IntakeFolder, path, parent, entries)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(IntakeColumn, name, example)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(Suspicion, kind, as_read, other, share, share_other)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(TableLook, reading, renews, known_by, doubts,
                                                columns, file_date, rows, rejected, first_rejected,
                                                sample, programs, map, suspicion, sample_other,
                                                map_other, remarks, pack, class_tables, trouble)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(GroundReport, land_cover, source, notice, cells, filled,
                                   unlisted_codes)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(FetchOffer, id, kind, name, publisher, license, notice, date,
                                   server, first_address, by_hand, refuses_apps, files, usual_bytes,
                                   cells, cells_on_board, cells_empty)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(FetchReport, name, notice, files, bytes, cells, without_file,
                                   stations)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(RouteChoice, kind, name, points, length_km, stops)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(RouteLook, choices, remarks)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE(GroundHeld, terrain_cells, cover_cells, notices, problems)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(IntakeReport, of_programs, stations, programs,
                                                rejected, first_stations, ground, pack, fetched)
NLOHMANN_DEFINE_TYPE_NON_INTRUSIVE_WITH_DEFAULT(IntakeAnswer, question, generation, stations,
                                                programs, ground, around, disk, places, offers,
                                                connection, folder, look, route, doing, part,
                                                report, trouble)

}  // namespace mastwise
