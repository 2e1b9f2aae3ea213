#include "core/import/write_csv.hpp"

#include "core/import/station_fields.hpp"

#include <algorithm>
#include <vector>

#include <fmt/format.h>

namespace mastwise {
namespace {

// Every cell is quoted: a text may begin with "#" or hold a line end.
std::string quoted_cell(std::string_view text) {
  std::string cell = "\"";
  for (const char c : text) {
    if (c == '"') cell += '"';
    cell += c;
  }
  return cell + '"';
}

std::string number_cell(const std::optional<double>& number) {
  return number ? fmt::format("{}", *number) : std::string();
}

std::string yes_or_no(const std::optional<bool>& fact) {
  return !fact ? "" : *fact ? "yes" : "no";
}

std::string program_part(std::string text) {
  std::replace(text.begin(), text.end(), ';', ',');
  std::replace(text.begin(), text.end(), '|', '/');
  return text;
}

std::string programs_cell(const std::vector<Program>& programs) {
  std::string cell;
  for (const Program& program : programs) {
    if (!cell.empty()) cell += ';';
    cell += fmt::format("{}|{}|{}|{}", program_part(program.virtual_channel),
                        program_part(program.name), program_part(program.network),
                        program_part(program.language));
  }
  return cell;
}

struct WrittenColumn {
  const char* name;
  std::string (*cell)(const Station&);
};
// "site" is part of the id.
const std::vector<WrittenColumn>& written_columns() {
  static const std::vector<WrittenColumn> kColumns{
      {"call_sign", [](const Station& s) { return s.call_sign; }},
      {"raster", [](const Station& s) { return std::string(to_text(s.raster)); }},
      {"rf_channel", [](const Station& s) { return to_text(s.rf_channel); }},
      {"latitude_deg",
       [](const Station& s) { return fmt::format("{}", s.position.latitude_deg()); }},
      {"longitude_deg",
       [](const Station& s) { return fmt::format("{}", s.position.longitude_deg()); }},
      {"id", [](const Station& s) { return s.id; }},
      {"facility_id", [](const Station& s) { return s.facility_id; }},
      {"name", [](const Station& s) { return s.name; }},
      {"network", [](const Station& s) { return s.network; }},
      {"programs", [](const Station& s) { return programs_cell(s.programs); }},
      {"standard",
       [](const Station& s) { return std::string(s.standard ? to_text(*s.standard) : ""); }},
      {"site_amsl_m", [](const Station& s) { return number_cell(s.site_amsl_m); }},
      {"antenna_amsl_m", [](const Station& s) { return number_cell(s.antenna_amsl_m); }},
      {"haat_m", [](const Station& s) { return number_cell(s.haat_m); }},
      {"erp_kw", [](const Station& s) { return number_cell(s.erp_kw); }},
      {"polarization",
       [](const Station& s) {
         const bool known = s.polarization != Polarization::unknown;
         return std::string(known ? to_text(s.polarization) : "");
       }},
      {"directional", [](const Station& s) { return yes_or_no(s.directional); }},
      {"pattern", [](const Station& s) { return s.pattern ? to_text(*s.pattern) : std::string(); }},
      {"city", [](const Station& s) { return s.city; }},
      {"state", [](const Station& s) { return s.state; }},
      {"translator", [](const Station& s) { return yes_or_no(s.translator); }},
      {"multiplex", [](const Station& s) { return s.multiplex; }}};
  return kColumns;
}

// In the order in which they first occur.
std::vector<std::string> note_columns(std::span<const Station> stations) {
  std::vector<std::string> columns;
  for (const Station& station : stations) {
    for (const Note& note : station.notes) {
      const bool taken = fields::is_known(note.column) || note.column == "latitude_deg" ||
                         note.column == "longitude_deg";
      if (taken || std::find(columns.begin(), columns.end(), note.column) != columns.end()) {
        continue;
      }
      columns.push_back(note.column);
    }
  }
  return columns;
}

}  // namespace

std::string write_station_csv(std::span<const Station> stations) {
  const std::vector<std::string> notes = note_columns(stations);
  std::string text;
  for (const WrittenColumn& column : written_columns()) {
    text += (text.empty() ? "" : ",") + std::string(column.name);
  }
  for (const std::string& column : notes) text += "," + quoted_cell(column);
  text += "\n";
  for (const Station& station : stations) {
    std::string row;
    for (const WrittenColumn& column : written_columns()) {
      row += (row.empty() ? "" : ",") + quoted_cell(column.cell(station));
    }
    for (const std::string& column : notes) {
      const auto found = std::find_if(station.notes.begin(), station.notes.end(),
                                      [&](const Note& note) { return note.column == column; });
      row += "," + quoted_cell(found == station.notes.end() ? "" : found->text);
    }
    text += row + "\n";
  }
  return text;
}

}  // namespace mastwise
