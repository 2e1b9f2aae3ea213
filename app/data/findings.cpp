#include "app/data/findings.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"
#include "core/geo/geodesic.hpp"
#include "core/text/iso_time.hpp"

#include <algorithm>
#include <filesystem>
#include <map>

// The import as shown on the screen.
namespace mastwise {
namespace {

const std::map<std::string, std::string>& labels() {
  static const std::map<std::string, std::string> kLabels{
      {"call_sign", "Call sign"},
      {"rf_channel", "RF channel"},
      {"latitude", "Latitude"},
      {"latitude.notation", "Latitude is written"},
      {"latitude.sign", "Latitude counts up to"},
      {"latitude.minutes", "Latitude, minutes"},
      {"latitude.seconds", "Latitude, seconds"},
      {"latitude.letter", "Latitude, letter"},
      {"longitude", "Longitude"},
      {"longitude.notation", "Longitude is written"},
      {"longitude.sign", "Longitude counts up to"},
      {"longitude.minutes", "Longitude, minutes"},
      {"longitude.seconds", "Longitude, seconds"},
      {"longitude.letter", "Longitude, letter"},
      {"datum", "Datum"},
      {"raster", "Channels of"},
      {"standard", "Standard"},
      {"erp_kw", "Power"},
      {"erp_kw.unit", "Power is in"},
      {"antenna_amsl_m", "Antenna above the sea"},
      {"haat_m", "Antenna above terrain"},
      {"site_amsl_m", "Ground above the sea"},
      {"heights.unit", "Heights are in"},
      {"antenna_amsl_m.zero", "Above the sea, 0 means"},
      {"haat_m.zero", "Above terrain, 0 means"},
      {"site_amsl_m.zero", "Ground, 0 means"},
      {"virtual_channel", "Virtual channel"},
      {"network", "Network"},
      {"multiplex", "Multiplex"},
      {"name", "Name"},
      {"city", "Town"},
      {"state", "State"},
      {"facility_id", "Facility number"},
      {"site", "Site number"},
      {"directional", "Directional"},
      {"polarization", "Polarization"},
  };
  return kLabels;
}

std::string label_of(const std::string& part) {
  const auto found = labels().find(part);
  return found == labels().end() ? part : found->second;
}

std::string example_of(const TableLook& look, const std::string& column) {
  for (const IntakeColumn& one : look.columns) {
    if (one.name == column) return one.example;
  }
  return {};
}

// The one behind `value`, or the first.
std::string next_of(const std::vector<std::string>& choices, const std::string& value) {
  const auto at = std::find(choices.begin(), choices.end(), value);
  if (choices.empty()) return value;
  return at == choices.end() || at + 1 == choices.end() ? choices.front() : *(at + 1);
}

void add_once(std::vector<std::string>& choices, const std::string& choice) {
  if (std::find(choices.begin(), choices.end(), choice) == choices.end()) choices.push_back(choice);
}

struct ProgramPart {
  const char* name;
  const char* label;
  std::string ProgramColumns::*member;
};
constexpr ProgramPart kProgramParts[] = {
    {"programs.call_sign", "Call sign", &ProgramColumns::call_sign},
    {"programs.facility_id", "Facility number", &ProgramColumns::facility_id},
    {"programs.virtual_channel", "Virtual channel", &ProgramColumns::virtual_channel},
    {"programs.network", "Network", &ProgramColumns::network},
    {"programs.name", "Name", &ProgramColumns::name},
    {"programs.language", "Language", &ProgramColumns::language},
    {"programs.rf_channel", "RF channel", &ProgramColumns::rf_channel},
};

class RowWriter {
 public:
  RowWriter(const Intake& intake, const TableLook& look, const TableReading& reading)
      : intake_(intake), look_(look), reading_(reading) {}

  IntakeRow source() const;
  IntakeRow date() const;
  IntakeRow kind() const;
  std::vector<IntakeRow> program_parts() const;
  std::vector<IntakeRow> parts() const;
  IntakeRow classes() const;

 private:
  bool decided(const std::string& part) const {
    const auto& all = intake_.decided;
    return std::find(all.begin(), all.end(), part) != all.end();
  }
  std::string doubt_about(const std::string& part) const;
  const std::vector<SourceSummary>& known() const {
    return reading_.kind == TableReading::Kind::Programs ? intake_.answer->programs
                                                         : intake_.answer->stations;
  }

  const Intake& intake_;
  const TableLook& look_;
  const TableReading& reading_;
};

std::string RowWriter::doubt_about(const std::string& part) const {
  if (decided(part)) return {};
  for (const Doubt& doubt : look_.doubts) {
    if (part_of(doubt) == part) return words::sentence(doubt.why);
  }
  return {};
}

IntakeRow RowWriter::source() const {
  IntakeRow row{.part = "source.name", .label = "Source name", .value = reading_.source.name};
  std::vector<std::string> names{look_.reading.source.name};
  add_once(names, std::filesystem::path(intake_.question.path).filename().string());
  for (const SourceSummary& source : known()) add_once(names, source.source.name);
  row.next = next_of(names, row.value);
  for (const SourceSummary& source : known()) {
    if (source.source.name != row.value) continue;
    row.label = "Updates";
    row.note = words::fill(words::say("Replaces its {number} entries in the catalog"),
                           {{"number", std::to_string(source.stations)}});
    if (look_.renews == row.value) row.note += words::say("; it has most of the rows shown here");
  }
  if (row.note.empty() && !known().empty()) {
    row.note = words::say("A new source. Touch to update an existing one instead");
  }
  return row;
}

IntakeRow RowWriter::date() const {
  IntakeRow row{.part = "source.date", .label = "Date", .value = reading_.source.date};
  std::vector<std::string> dates{std::string()};
  add_once(dates, look_.reading.source.date);
  add_once(dates, look_.file_date);
  row.next = next_of(dates, row.value);
  if (row.value.empty()) {
    row.value = "unknown";
  } else if (row.value == look_.file_date && row.value != look_.reading.source.date) {
    row.note = words::say("The file's date: the table may be older");
  }
  return row;
}

IntakeRow RowWriter::kind() const {
  const bool programs = reading_.kind == TableReading::Kind::Programs;
  return {.part = "kind",
          .label = "The table lists",
          .value = words::say(programs ? "programs" : "stations"),
          .next = programs ? kStationsKind : kProgramsKind};
}

std::vector<IntakeRow> RowWriter::program_parts() const {
  std::vector<IntakeRow> rows;
  ProgramColumns columns = reading_.programs;
  const bool of_stations = !columns.call_sign.empty() || !columns.facility_id.empty();
  for (const ProgramPart& part : kProgramParts) {
    IntakeRow row{.part = part.name, .label = part.label, .value = columns.*part.member};
    row.column = true;
    row.example = example_of(look_, row.value);
    const bool needed = part.member == &ProgramColumns::virtual_channel ||
                        (part.member == &ProgramColumns::call_sign && !of_stations);
    row.missing = needed && row.value.empty();
    if (row.missing) row.note = words::say("Required: choose a column");
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<IntakeRow> RowWriter::parts() const {
  std::vector<IntakeRow> rows;
  for (const MappingPart& part : mapping_parts(reading_.mapping)) {
    IntakeRow row{.part = part.name,
                  .label = label_of(part.name),
                  .value = part.value,
                  .note = doubt_about(part.name),
                  .column = part.readings.empty()};
    if (row.column) {
      row.example = example_of(look_, part.value);
      row.missing = part.needed && part.value.empty();
      if (row.missing) row.note = words::say("Required: choose a column");
    } else {
      row.next = next_of(part.readings, part.value);
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

IntakeRow RowWriter::classes() const {
  IntakeRow row{.part = "classes",
                .label = "Land cover classes of",
                .value = reading_.classes,
                .missing = reading_.classes.empty()};
  row.next = next_of(look_.class_tables, row.value);
  row.note = words::say(row.missing ? "Required: touch to choose"
                                    : "Touch if they are of another product");
  return row;
}

std::vector<IntakeSource> sources_shown(const std::vector<SourceSummary>& sources,
                                        std::chrono::local_days today) {
  std::vector<IntakeSource> shown;
  for (const SourceSummary& source : sources) shown.push_back(source_shown(source, today));
  return shown;
}

SquaresCounted counted(const GroundAround& around) {
  SquaresCounted counted;
  std::vector<std::pair<double, std::string>> missing;
  double near_km2 = 0.0, missing_km2 = 0.0;
  for (const GroundSquare& square : around.squares) {
    if (square.near_km2 == 0.0 || square.held == SquareHeld::Sea) continue;
    ++counted.all;
    near_km2 += square.near_km2;
    counted.land_cover += square.land_cover ? 1 : 0;
    if (square.held != SquareHeld::Missing) continue;
    ++counted.missing;
    missing_km2 += square.near_km2;
    missing.emplace_back(-square.near_km2, square.cell);
  }
  if (near_km2 > 0.0) counted.missing_part = missing_km2 / near_km2;
  std::sort(missing.begin(), missing.end());
  for (const auto& [order, cell] : missing) counted.missing_cells.push_back(cell);
  return counted;
}

}  // namespace

const FetchOffer* offer_shown(const Intake& intake) {
  if (!intake.answer || intake.offered.empty()) return nullptr;
  for (const FetchOffer& offer : intake.answer->offers) {
    if (offer.id == intake.offered) return &offer;
  }
  return nullptr;
}

bool suspected(const Intake& intake) {
  const auto& all = intake.decided;
  return intake.look && intake.look->suspicion &&
         std::find(all.begin(), all.end(), "positions") == all.end();
}

std::string* program_column(ProgramColumns& columns, std::string_view part) {
  for (const ProgramPart& one : kProgramParts) {
    if (part == one.name) return &(columns.*one.member);
  }
  return nullptr;
}

IntakeSource source_shown(const SourceSummary& source, std::chrono::local_days today) {
  const auto age = source_age(source.source.date, today);
  const auto made_on = parse_iso_day(source.source.date);
  IntakeSource shown{.name = source.source.name,
                     .entries = source.stations,
                     .age = words::data_age(source.source.date, today),
                     .caution = words::data_caution(source.source.date, today)};
  if (age) {
    shown.dated = std::chrono::local_days(made_on->time_since_epoch());
    shown.freshness = age->freshness;
  }
  return shown;
}

IntakeFindings intake_findings(const Intake& intake, std::chrono::local_days today,
                               const std::optional<Position>& here, bool miles) {
  IntakeFindings found;
  if (!intake.answer) return found;
  found.stations = sources_shown(intake.answer->stations, today);
  found.programs = sources_shown(intake.answer->programs, today);
  // Aiming does not depend on names.
  for (IntakeSource& source : found.programs) {
    source.caution.clear();
    source.freshness.reset();
  }
  if (intake.answer->around) found.squares = counted(*intake.answer->around);
  if (!intake.look || !intake.reading) return found;
  const TableLook& look = *intake.look;
  const RowWriter writer(intake, look, *intake.reading);
  const auto kind = intake.reading->kind;
  if (kind == TableReading::Kind::LandCover) {
    found.rows = {writer.classes()};
  } else if (kind != TableReading::Kind::Terrain && kind != TableReading::Kind::Pack) {
    found.rows = {writer.source(), writer.date()};
  }
  if (kind == TableReading::Kind::Mapped || kind == TableReading::Kind::Programs) {
    found.rows.push_back(writer.kind());
  }
  if (kind == TableReading::Kind::Programs) {
    const auto parts = writer.program_parts();
    found.rows.insert(found.rows.end(), parts.begin(), parts.end());
  }
  if (kind == TableReading::Kind::Mapped) {
    const auto parts = writer.parts();
    found.rows.insert(found.rows.end(), parts.begin(), parts.end());
  }
  found.ready = look.trouble.empty() && !suspected(intake);
  if (look.map && here) {
    const PathBetween way = path_between(*here, look.map->middle);
    found.from_here = words::fill(words::say("Their middle is {distance} {octant} of here"),
                                  {{"distance", words::distance(way.distance_m, miles)},
                                   {"octant", words::octant(way.bearing)}});
  }
  return found;
}

}  // namespace mastwise
