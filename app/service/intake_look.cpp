#include "app/service/intake_look.hpp"

#include "app/service/browsing.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "core/geo/geodesic.hpp"
#include "core/import/guess_columns.hpp"
#include "core/import/import_csv.hpp"
#include "core/import/import_table.hpp"
#include "core/import/program_table.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <numbers>

namespace mastwise {
namespace {

using Kind = TableReading::Kind;
using words::fill;
using words::say;

void joined_set(TableLook& look, const std::string& path) {
  look.reading = {.kind = Kind::Joined, .source = sources::source_of(path)};
  const auto ready = sources::ready_for_set(path);
  if (!ready) {
    look.trouble =
        say("No built-in mapping knows these tables. Join them by your mapping on the command "
            "line");
    return;
  }
  const auto& mapping = std::get<JoinedMapping>(ready->way);
  look.known_by =
      fill(say("A set of tables with a built-in mapping, {name}"), {{"name", ready->name}});
  look.reading.ready = ready->name;
  look.reading.source = mapping.stations.source;
}

void mapped(TableLook& look, const std::string& head, const sources::MappingMemory& memory) {
  const Source own = look.reading.source;
  look.reading.kind = Kind::Mapped;
  if (const auto known = memory.recall(head)) {
    look.known_by = say("Same columns as an earlier import: read as you corrected it then");
    look.reading.mapping = *known;
  } else if (const auto ready = sources::ready_for_table(head)) {
    look.known_by =
        fill(say("Its columns match the built-in mapping {name}"), {{"name", ready->name}});
    look.reading.mapping = std::get<TableMapping>(ready->way);
    look.reading.source = look.reading.mapping.source;
  } else if (const auto guess = guess_mapping(head, own)) {
    look.known_by = say("Guessed columns: check them with stations you know");
    look.reading.mapping = guess->mapping;
    look.doubts = guess->doubts;
    look.remarks = guess->remarks;
  } else {
    look.known_by =
        fill(say("Choose columns that cannot be guessed: {why}"), {{"why", guess.error().what}});
    const GuessedMapping recognized = recognized_columns(head, own);
    look.reading.mapping = recognized.mapping;
    look.remarks = recognized.remarks;
  }
  look.reading.mapping.source = look.reading.source;
}

void identify(TableLook& look, const std::string& path, const std::string& head,
              const sources::MappingMemory& memory) {
  look.reading.source = sources::source_of(path);
  look.reading.programs = program_columns_named(head);
  if (sources::is_program_table(head)) {
    // A person may know that it is of stations.
    look.reading.mapping = recognized_columns(head, look.reading.source).mapping;
    look.known_by = say("A table of programs for stations in the catalog");
    look.reading.kind = Kind::Programs;
  } else if (sources::is_own_format(head)) {
    look.known_by = say("Mastwise's station table");
    look.reading.kind = Kind::OwnFormat;
  } else {
    mapped(look, head, memory);
  }
}

void take_rejected(TableLook& look, std::size_t rows, const std::vector<RejectedRow>& rejected) {
  look.rows = rows;
  look.rejected = rejected.size();
  const std::size_t shown = std::min(rejected.size(), IntakeReport::kRejected);
  look.first_rejected.assign(rejected.begin(),
                             rejected.begin() + static_cast<std::ptrdiff_t>(shown));
}

std::string none_readable(const std::vector<RejectedRow>& rejected) {
  if (rejected.empty()) return say("The table has no rows below the header");
  return fill(say("All rows rejected. Line {line}: {why}"),
              {{"line", std::to_string(rejected.front().line)}, {"why", rejected.front().reason}});
}

std::vector<CheckedStation> checked(const std::vector<Station>& stations) {
  constexpr std::size_t kSample = 10;
  std::vector<CheckedStation> sample;
  for (const Station& station : spread_over(stations, kSample)) {
    sample.push_back({.call_sign = station.call_sign,
                      .rf_channel = to_text(station.rf_channel),
                      .city = station.city,
                      .position = station.position});
  }
  return sample;
}

TableMapping mapping_of(const TableReading& reading) {
  return reading.kind == Kind::OwnFormat ? own_mapping(reading.source) : reading.mapping;
}

// Whether the stations lie where they can be, and by which other reading they would.
void suspect(TableLook& look, const std::string& head, const CountriesNear& countries_near) {
  if (!countries_near) return;
  const TableMapping mapping = mapping_of(look.reading);
  look.suspicion = suspicion_of(head, mapping, countries_near);
  if (!look.suspicion || !look.suspicion->other) return;
  const auto table =
      read_station_table(guess::whole_lines(head), reread(mapping, *look.suspicion->other));
  if (table) look.sample_other = checked(table->stations);
}

void sample_stations_of(TableLook& look, const std::string& head,
                        const CountriesNear& countries_near) {
  if (look.columns.empty()) {
    look.known_by.clear();
    look.trouble = say("The table is empty. Choose a file with a header line and rows");
    return;
  }
  const std::string_view lines = guess::whole_lines(head);
  for (const MappingPart& part : mapping_parts(look.reading.mapping)) {
    if (look.reading.kind != Kind::Mapped || !part.needed || !part.value.empty()) continue;
    look.trouble = say("Choose the required columns");
    return;
  }
  const auto table = read_station_table(lines, mapping_of(look.reading));
  if (!table) {
    look.trouble = table.error().message();
    return;
  }
  take_rejected(look, table->rows_read, table->rejected);
  look.sample = checked(table->stations);
  suspect(look, head, countries_near);
  if (table->stations.empty()) look.trouble = none_readable(table->rejected);
}

void sample_programs_of(TableLook& look, const std::string& head) {
  const auto table =
      read_program_csv(guess::whole_lines(head), look.reading.source, look.reading.programs);
  if (!table) {
    look.trouble = table.error().message();
    return;
  }
  take_rejected(look, table->rows_read, table->rejected);
  if (table->programs.empty()) {
    look.trouble = table->rows_without_program > 0 ? say("No row names a program")
                                                   : none_readable(table->rejected);
  }
  constexpr std::size_t kSample = 10;
  const std::size_t shown = std::min(kSample, table->programs.size());
  look.programs.assign(table->programs.begin(),
                       table->programs.begin() + static_cast<std::ptrdiff_t>(shown));
}

// The direction of the mean of the positions' unit vectors; empty if they cancel.
std::optional<Position> middle_of(const std::vector<CheckedStation>& stations) {
  constexpr double kRadian = std::numbers::pi / 180.0;
  double x = 0.0, y = 0.0, z = 0.0;
  for (const CheckedStation& station : stations) {
    const double latitude = station.position.latitude_deg() * kRadian;
    const double longitude = station.position.longitude_deg() * kRadian;
    x += std::cos(latitude) * std::cos(longitude);
    y += std::cos(latitude) * std::sin(longitude);
    z += std::sin(latitude);
  }
  if (std::hypot(x, y, z) < 1e-6) return std::nullopt;
  const auto middle =
      Position::at_deg(std::atan2(z, std::hypot(x, y)) / kRadian, std::atan2(y, x) / kRadian);
  if (!middle) return std::nullopt;
  return *middle;
}

// Skips points too close to distinguish.
std::vector<map::PlanePoint> thinned(const std::vector<map::PlanePoint>& points, double least_m) {
  std::vector<map::PlanePoint> kept;
  for (const map::PlanePoint& point : points) {
    const bool last = &point == &points.back();
    if (!kept.empty() && !last &&
        std::hypot(point.east_m - kept.back().east_m, point.north_m - kept.back().north_m) <
            least_m) {
      continue;
    }
    kept.push_back(point);
  }
  return kept;
}

std::optional<CheckMap> map_of(std::vector<CheckedStation>& sample, const map::Borders* borders) {
  constexpr double kLeastRadius_m = 30e3, kAround = 1.2;
  const auto middle = middle_of(sample);
  if (!middle) return std::nullopt;
  const auto projection = map::Projection::around(*middle);
  if (!projection) return std::nullopt;
  CheckMap map{.middle = *middle, .radius_m = kLeastRadius_m};
  for (CheckedStation& station : sample) {
    station.at = projection->to_plane(station.position);
    if (!station.at) continue;
    map.radius_m =
        std::max(map.radius_m, kAround * std::hypot(station.at->east_m, station.at->north_m));
  }
  map.radius_m = std::min(map.radius_m, map::Projection::kFarthestM);
  add_lines(map, *projection, borders);
  return map;
}

}  // namespace

void add_lines(CheckMap& map, const map::Projection& projection, const map::Borders* borders) {
  constexpr double kPartOfRadius = 0.004;
  if (borders == nullptr) return;
  const double corner_m = std::min(1.5 * map.radius_m, map::Projection::kFarthestM);
  for (const map::PlaneLine& line : borders->on_plane(projection, corner_m)) {
    map.lines.push_back(thinned(line.points, kPartOfRadius * map.radius_m));
  }
}

Result<sources::Way> way_of(const TableReading& reading) {
  if (reading.kind == Kind::OwnFormat) return sources::Way(sources::OwnFormat{reading.source});
  if (reading.kind == Kind::Mapped) {
    TableMapping mapping = reading.mapping;
    mapping.source = reading.source;
    return sources::Way(std::move(mapping));
  }
  auto way = sources::load_mapping(reading.ready);
  if (way) {
    if (auto* joined = std::get_if<JoinedMapping>(&*way)) joined->stations.source = reading.source;
  }
  return way;
}

TableLook look_into(const std::string& path, const std::optional<TableReading>& reading,
                    const sources::MappingMemory& memory, const CountriesNear& countries_near) {
  TableLook look{.file_date = sources::day_written(path)};
  std::error_code ignored;
  const bool folder = std::filesystem::is_directory(path, ignored);
  const auto head = sources::head_of(path);
  if (folder || (!head && sources::is_archive(path) && sources::ready_for_set(path))) {
    joined_set(look, path);
  } else if (!head) {
    look.reading.source = sources::source_of(path);
    look.trouble = head.error().message();
  } else {
    identify(look, path, *head, memory);
    for (const sources::ColumnShown& column : sources::columns_shown(*head)) {
      look.columns.push_back({column.name, column.example});
    }
    const auto of_text = sources::encoding_remarks(path, *head);
    look.remarks.insert(look.remarks.begin(), of_text.begin(), of_text.end());
  }
  // Source and doubts describe the table, not the correction.
  const TableReading first = look.reading;
  if (reading) look.reading = *reading;
  if (head && look.reading.kind == Kind::Programs) sample_programs_of(look, *head);
  if (head && (look.reading.kind == Kind::OwnFormat || look.reading.kind == Kind::Mapped)) {
    sample_stations_of(look, *head, countries_near);
  }
  look.reading = first;
  return look;
}

void add_maps(TableLook& look, const map::Borders* borders) {
  look.map = map_of(look.sample, borders);
  look.map_other = map_of(look.sample_other, borders);
}

}  // namespace mastwise
