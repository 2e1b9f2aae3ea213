#include "app/cli/arguments.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/logbook_files.hpp"
#include "app/words/files.hpp"
#include "platform/files.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

struct ExportOptions {
  std::string csv, gpx, backup, logbook;
  bool json = false;
};

struct ImportOptions {
  std::string file, logbook;
  bool json = false;
};

Result<std::string> logbook_path(const std::string& given) {
  if (!given.empty()) return given;
  const auto folder = platform::data_folder();
  if (!folder) return folder.error();
  return *folder + "/logbook";
}

// Opening a missing logbook creates it, so the export would be empty.
Result<Logbook> open_existing(const std::string& given) {
  const auto path = logbook_path(given);
  if (!path) return path.error();
  if (platform::exists(*path)) return Logbook::open(*path);
  return Error{.what = "no logbook found",
               .where = *path,
               .remedy = "name the logbook's file with --logbook"};
}

Result<Done> export_logbook(const ExportOptions& options) {
  auto logbook = open_existing(options.logbook);
  if (!logbook) return logbook.error();
  const auto content = logbook->content();
  if (!content) return content.error();
  if (options.csv == "-") {
    std::cout << logbook_csv(*content);
    if (options.gpx.empty() && options.backup.empty()) return Done{};
  }
  nlohmann::json written = nlohmann::json::array();
  using sources::LogbookForm;
  for (const auto& [form, file] :
       {std::pair(LogbookForm::table, options.csv), std::pair(LogbookForm::waypoints, options.gpx),
        std::pair(LogbookForm::backup, options.backup)}) {
    if (file.empty() || (file == "-" && form == LogbookForm::table)) continue;
    const auto done = sources::give_out(*logbook, *content, form, file);
    if (!done) return done;
    written.push_back(file);
  }
  const sources::LogbookSize size = sources::size_of(*content);
  const nlohmann::json report{{"written", written},
                              {"stops", size.stops},
                              {"outcomes", size.outcomes},
                              {"sweeps", size.sweeps}};
  if (options.json) {
    print(report);
    return Done{};
  }
  for (const auto& path : written) {
    std::cout << fmt::format("{}: {} stops, {} outcomes\n", path.get<std::string>(), size.stops,
                             size.outcomes);
  }
  return Done{};
}

nlohmann::json counts_json(const MergeCounts& counts) {
  return {{"added", counts.added},
          {"renewed", counts.renewed},
          {"same", counts.same},
          {"kept", counts.kept}};
}

Result<Done> import_logbook(const ImportOptions& options) {
  const auto table = sources::read_any_logbook(options.file);
  if (!table) return table.error();
  const auto path = logbook_path(options.logbook);
  if (!path) return path.error();
  auto logbook = Logbook::open(*path);
  if (!logbook) return logbook.error();
  const auto report = logbook->merge(table->content);
  if (!report) return report.error();
  if (options.json) {
    nlohmann::json rejected = nlohmann::json::array();
    for (const RejectedRow& row : table->rejected) {
      rejected.push_back({{"line", row.line}, {"reason", row.reason}});
    }
    print({{"stops", counts_json(report->stops)},
           {"outcomes", counts_json(report->outcomes)},
           {"sweeps", counts_json(report->sweeps)},
           {"rejected", rejected}});
    return Done{};
  }
  for (const std::string& line : words::merged(*report)) std::cout << line << '\n';
  for (const RejectedRow& row : table->rejected) {
    std::cout << fmt::format("  line {}: {}\n", row.line, row.reason);
  }
  return Done{};
}

}  // namespace

void add_export(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<ExportOptions>();
  CLI::App* verb = program.add_subcommand("export", "Export the logbook");
  verb->require_subcommand(1);
  CLI::App* logbook =
      verb->add_subcommand("logbook", "Export stops and results as a table, waypoints or a backup");
  logbook->add_option("--csv", options->csv,
                      "write this table; - writes it to the standard output");
  logbook->add_option("--gpx", options->gpx, "write the stops to this GPX file");
  logbook->add_option("--backup", options->backup, "write a copy of the whole logbook");
  logbook->add_option("--logbook", options->logbook, "logbook file to use instead of yours");
  logbook->add_flag("--json", options->json, "print one JSON object");
  logbook->callback([&chosen, options] {
    if (options->csv.empty() && options->gpx.empty() && options->backup.empty()) {
      wrong_usage({.what = "no file to write",
                   .where = "export logbook",
                   .remedy = "add --csv FILE, --gpx FILE or --backup FILE"});
    }
    chosen = [options] { return export_logbook(*options); };
  });
}

void add_import_logbook(CLI::App& import, Job& chosen) {
  auto options = std::make_shared<ImportOptions>();
  CLI::App* verb = import.add_subcommand(
      "logbook",
      "Import another tablet's logbook, a backup or an exported table; the later entry wins");
  verb->add_option("file", options->file, "the logbook, backup or table")->required();
  verb->add_option("--logbook", options->logbook, "logbook file to use instead of yours");
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] { chosen = [options] { return import_logbook(*options); }; });
}

}  // namespace mastwise::cli
