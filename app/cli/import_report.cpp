#include "app/cli/import_report.hpp"

#include "app/words/changes.hpp"

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

using nlohmann::json;

json rejected_json(const std::vector<RejectedRow>& rows) {
  json rejected = json::array();
  for (const RejectedRow& row : rows) {
    rejected.push_back({{"line", row.line}, {"reason", row.reason}});
  }
  return rejected;
}

std::string rejected_text(const std::vector<RejectedRow>& rows) {
  std::string text;
  for (const RejectedRow& row : rows) text += fmt::format("  line {}: {}\n", row.line, row.reason);
  return text;
}

// A bounded list of call signs and the number left out.
std::string listed(const char* what, const std::vector<std::string>& names, std::size_t all) {
  if (names.empty()) return {};
  return fmt::format("  {}: {}{}\n", what, fmt::join(names, ", "),
                     all > names.size() ? fmt::format(" and {} more", all - names.size()) : "");
}

json change_json(const StationChange& change) {
  json told = {{"kind", to_text(change.kind)},  {"id", change.id},
               {"call_sign", change.call_sign}, {"city", change.city},
               {"state", change.state},         {"rf_channel", to_text(change.rf_channel)}};
  if (change.erp_kw) told["erp_kw"] = *change.erp_kw;
  if (change.distance_m) told["distance_m"] = *change.distance_m;
  if (!change.call_sign_before.empty()) told["call_sign_before"] = change.call_sign_before;
  if (change.rf_channel_before) told["rf_channel_before"] = to_text(*change.rf_channel_before);
  if (change.erp_kw_before) told["erp_kw_before"] = *change.erp_kw_before;
  if (change.moved_m > 0.0) told["moved_m"] = change.moved_m;
  return told;
}

std::string place_text(const Station& station) {
  return fmt::format("  {:<10} RF {:<4} {:9.4f} {:10.4f}  {}\n", station.call_sign,
                     to_text(station.rf_channel), station.position.latitude_deg(),
                     station.position.longitude_deg(), station.city);
}

}  // namespace

json report_json(const ImportReport& report) {
  json changes = json::array();
  for (const StationChange& change : report.changes) changes.push_back(change_json(change));
  return {{"source", report.source.name},
          {"source_date", report.source.date},
          {"rows_read", report.rows_read},
          {"stations_added", report.stations_added},
          {"stations_changed", report.stations_changed},
          {"stations_unchanged", report.stations_unchanged},
          {"stations_gone", report.stations_gone},
          {"stations_moved", report.stations_moved},
          {"stations_on_other_channel", report.stations_on_other_channel},
          {"stations_of_other_power", report.stations_of_other_power},
          {"stations_renamed", report.stations_renamed},
          {"changes", changes},
          {"changes_not_listed", changes_not_listed(report)},
          {"rows_rejected", report.rows_rejected},
          {"rejected", rejected_json(report.rejected)},
          {"remarks", report.remarks}};
}

std::string report_text(const ImportReport& report) {
  std::string text = fmt::format(
      "{}: {} rows read, {} stations added, {} changed, {} unchanged, {} gone, {} moved, {} rows "
      "rejected\n",
      report.source.name, report.rows_read, report.stations_added, report.stations_changed,
      report.stations_unchanged, report.stations_gone, report.stations_moved, report.rows_rejected);
  for (const StationChange& change : report.changes) {
    text += fmt::format("  {}: {}\n", words::change_title(change, false),
                        words::change_facts(change, false));
  }
  if (const std::size_t more = changes_not_listed(report); more > 0) {
    text += fmt::format("  and {} more; --changes {} lists them all\n", more,
                        more + report.changes.size());
  }
  text += rejected_text(report.rejected);
  for (const std::string& remark : report.remarks) text += "  " + remark + "\n";
  return text;
}

json report_json(const ProgramReport& report) {
  json renamed = json::array();
  for (const RenamedStation& one : report.renamed) {
    renamed.push_back(
        {{"facility_id", one.facility_id}, {"call_sign", one.call_sign}, {"now", one.now}});
  }
  return {{"source", report.source.name},
          {"source_date", report.source.date},
          {"rows_read", report.rows_read},
          {"programs", report.programs},
          {"stations", report.stations},
          {"without_station", report.without_station},
          {"strangers", report.strangers},
          {"stations_renamed", report.stations_renamed},
          {"renamed", renamed},
          {"rows_without_program", report.rows_without_program},
          {"rows_rejected", report.rejected.size()},
          {"rejected", rejected_json(report.rejected)}};
}

std::string report_text(const ProgramReport& report) {
  std::vector<std::string> renamed;
  for (const RenamedStation& one : report.renamed) {
    renamed.push_back(fmt::format("{} is {} here", one.call_sign, one.now));
  }
  return fmt::format(
             "{}: {} rows read, {} programs, {} without a station in the catalog, {} rows "
             "rejected, {} rows name no program; {} stations have added programs\n",
             report.source.name, report.rows_read, report.programs, report.without_station,
             report.rejected.size(), report.rows_without_program, report.stations) +
         listed("other call signs", renamed, report.stations_renamed) +
         listed("without a station", report.strangers, report.strangers.size()) +
         rejected_text(report.rejected);
}

json guess_json(const GuessedMapping& guess, const std::vector<Station>& sample) {
  json doubts = json::array();
  for (const Doubt& doubt : guess.doubts) {
    doubts.push_back({{"field", doubt.field},
                      {"assumed", doubt.options.at(doubt.chosen)},
                      {"options", doubt.options},
                      {"why", doubt.why}});
  }
  json stations = json::array();
  for (const Station& station : sample) {
    stations.push_back({{"call_sign", station.call_sign},
                        {"rf_channel", to_text(station.rf_channel)},
                        {"latitude_deg", station.position.latitude_deg()},
                        {"longitude_deg", station.position.longitude_deg()}});
  }
  return {{"guess", json::parse(to_json(guess.mapping), nullptr, false)},
          {"doubts", doubts},
          {"remarks", guess.remarks},
          {"sample", stations},
          {"imported", false}};
}

std::string guess_text(const GuessedMapping& guess, const std::vector<Station>& sample) {
  const TableMapping& mapping = guess.mapping;
  std::string text = "Guessed columns:\n";
  text += fmt::format("  latitude from {}, longitude from {}\n", mapping.latitude.column,
                      mapping.longitude.column);
  for (const auto& [name, rule] : mapping.fields) {
    text += fmt::format("  {} from {}\n", name, rule.column);
  }
  for (const std::string& remark : guess.remarks) text += "Recognized: " + remark + "\n";
  for (const Doubt& doubt : guess.doubts) {
    text += fmt::format("In doubt: {} read as {} (choices: {}): {}\n", doubt.field,
                        doubt.options.at(doubt.chosen), fmt::join(doubt.options, ", "), doubt.why);
  }
  text += "Some stations read this way:\n";
  for (const Station& station : sample) text += place_text(station);
  return text;
}

}  // namespace mastwise::cli
