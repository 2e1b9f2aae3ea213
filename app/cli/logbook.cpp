#include "core/logbook/logbook.hpp"

#include "app/cli/arguments.hpp"
#include "app/cli/verbs.hpp"
#include "core/logbook/logbook_csv.hpp"
#include "core/logbook/logbook_gpx.hpp"
#include "platform/atomic_save.hpp"
#include "platform/files.hpp"

#include <filesystem>
#include <iostream>
#include <memory>
#include <span>

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

// An export of a logbook that is not there would begin a new one, and write an empty file.
Result<Logbook> open_existing(const std::string& given) {
  const auto path = logbook_path(given);
  if (!path) return path.error();
  if (platform::exists(*path)) return Logbook::open(*path);
  return Error{.what = "there is no logbook",
               .where = *path,
               .remedy = "name the logbook's file with --logbook"};
}

Result<Done> save(const std::string& path, const std::string& text) {
  return platform::save_atomically(path, std::as_bytes(std::span(text)));
}

template <class Record>
std::size_t live(const std::vector<Record>& records) {
  std::size_t count = 0;
  for (const Record& record : records) count += record.mark.deleted ? 0 : 1;
  return count;
}

Result<Done> export_logbook(const ExportOptions& options) {
  if (options.csv.empty() && options.gpx.empty() && options.backup.empty()) {
    return Error{.what = "nothing is asked for",
                 .where = "export logbook",
                 .remedy = "give --csv FILE, --gpx FILE or --backup FILE"};
  }
  auto logbook = open_existing(options.logbook);
  if (!logbook) return logbook.error();
  const auto content = logbook->content();
  if (!content) return content.error();
  nlohmann::json written = nlohmann::json::array();
  const auto keep = [&](const std::string& path, const Result<Done>& done) {
    if (done) written.push_back(path);
    return done;
  };
  Result<Done> done = Done{};
  if (!options.csv.empty()) done = keep(options.csv, save(options.csv, logbook_csv(*content)));
  if (done && !options.gpx.empty()) {
    done = keep(options.gpx, save(options.gpx, logbook_gpx(*content)));
  }
  if (done && !options.backup.empty()) {
    done = keep(options.backup, logbook->back_up(options.backup));
  }
  if (!done) return done;
  const nlohmann::json report{{"written", written},
                              {"stops", live(content->stops)},
                              {"outcomes", live(content->outcomes)},
                              {"sweeps", live(content->sweeps)}};
  if (options.json) {
    print(report);
    return Done{};
  }
  for (const auto& path : written) {
    std::cout << fmt::format("{}: {} stops, {} outcomes\n", path.get<std::string>(),
                             live(content->stops), live(content->outcomes));
  }
  return Done{};
}

// A logbook's file or a table, by what it holds and not by its name.
Result<LogbookTable> read_any(const std::string& path) {
  const auto text = platform::read_file(path);
  if (!text) return text.error();
  constexpr std::string_view kDatabase("SQLite format 3\0", 16);
  if (text->compare(0, kDatabase.size(), kDatabase) == 0) {
    auto content = read_logbook(path);
    if (!content) return content.error();
    return LogbookTable{.content = *std::move(content)};
  }
  auto table = read_logbook_csv(*text);
  if (table) return table;
  Error error = table.error();
  error.where = error.where.empty() ? path : path + ", " + error.where;
  return error;
}

nlohmann::json counts_json(const MergeCounts& counts) {
  return {{"added", counts.added},
          {"renewed", counts.renewed},
          {"same", counts.same},
          {"kept", counts.kept}};
}

std::string counts_text(const char* what, const MergeCounts& counts) {
  return fmt::format("{}: {} new, {} newer, {} the same, {} older than here\n", what, counts.added,
                     counts.renewed, counts.same, counts.kept);
}

Result<Done> import_logbook(const ImportOptions& options) {
  const auto table = read_any(options.file);
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
  std::cout << counts_text("stops", report->stops) << counts_text("outcomes", report->outcomes)
            << counts_text("sweeps", report->sweeps);
  for (const RejectedRow& row : table->rejected) {
    std::cout << fmt::format("  line {}: {}\n", row.line, row.reason);
  }
  return Done{};
}

}  // namespace

void add_export(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<ExportOptions>();
  CLI::App* verb = program.add_subcommand("export", "Gives out the logbook");
  verb->require_subcommand(1);
  CLI::App* logbook = verb->add_subcommand(
      "logbook", "Stops and what came in, as a table, as waypoints or as a backup");
  logbook->add_option("--csv", options->csv, "a table to write");
  logbook->add_option("--gpx", options->gpx, "a GPX file of the stops to write");
  logbook->add_option("--backup", options->backup, "a copy of the whole logbook to write");
  logbook->add_option("--logbook", options->logbook,
                      "the logbook's file in place of the user's own");
  logbook->add_flag("--json", options->json, "print one JSON object");
  logbook->callback(
      [&chosen, options] { chosen = [options] { return export_logbook(*options); }; });
}

void add_import_logbook(CLI::App& import, Job& chosen) {
  auto options = std::make_shared<ImportOptions>();
  CLI::App* verb = import.add_subcommand(
      "logbook",
      "Another tablet's logbook, a backup or an exported table; the later writing holds");
  verb->add_option("file", options->file, "the logbook, backup or table")->required();
  verb->add_option("--logbook", options->logbook, "the logbook's file in place of the user's own");
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] { chosen = [options] { return import_logbook(*options); }; });
}

}  // namespace mastwise::cli
