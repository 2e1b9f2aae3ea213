#include "app/cli/arguments.hpp"
#include "app/cli/import_report.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/station_source.hpp"
#include "core/catalog/catalog.hpp"

#include <algorithm>
#include <iostream>
#include <memory>
#include <optional>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

struct ImportOptions {
  std::string file, mapping, catalog, date;
  std::vector<std::string> readings = {};  // "longitude=west"
  bool accept_guess = false;
  bool json = false;
};

Error in_file(const std::string& file, Error error) {
  if (error.where.find(file) != std::string::npos) return error;
  error.where = error.where.empty() ? file : file + ", " + error.where;
  return error;
}

// Applies the readings given by --choose.
Result<Done> take_readings(GuessedMapping& guess, const std::vector<std::string>& readings) {
  for (const std::string& reading : readings) {
    const std::string field = reading.substr(0, reading.find('='));
    const std::string option = reading.substr(std::min(field.size() + 1, reading.size()));
    bool taken = false;
    for (std::size_t i = 0; i < guess.doubts.size(); ++i) {
      const auto& options = guess.doubts[i].options;
      const auto found = std::find(options.begin(), options.end(), option);
      if (guess.doubts[i].field != field || found == options.end()) continue;
      choose(guess, i, static_cast<std::size_t>(found - options.begin()));
      taken = true;
    }
    if (!taken) {
      return Error{.what = fmt::format("\"{}\" does not match a doubtful field", reading),
                   .where = "--choose",
                   .remedy = "run without --choose to list the doubtful fields and their readings"};
    }
  }
  return Done{};
}

void show(const GuessedMapping& guess, const std::string& head, bool json) {
  const auto sample = sample_stations(head, guess.mapping);
  if (json) {
    print(guess_json(guess, sample));
  } else {
    std::cout << guess_text(guess, sample);
  }
}

// The way to read the table; empty if the guess was only printed.
Result<std::optional<sources::Way>> way_of(const ImportOptions& options) {
  if (!options.mapping.empty()) {
    auto way = sources::load_mapping(options.mapping, options.date);
    if (!way) return way.error();
    return std::optional(std::move(way).value());
  }
  const auto head = sources::head_of(options.file);
  if (!head) return head.error();
  const Source source = sources::source_of(options.file, options.date);
  if (sources::is_own_format(*head)) {
    return std::optional<sources::Way>(sources::OwnFormat{source});
  }
  auto guess = guess_mapping(*head, source);
  if (!guess) {
    Error error = in_file(options.file, guess.error());
    error.remedy +=
        "; Mastwise's format has call_sign, raster, rf_channel, latitude_deg, longitude_deg";
    return error;
  }
  if (const auto done = take_readings(*guess, options.readings); !done) return done.error();
  if (options.accept_guess) return std::optional<sources::Way>(guess->mapping);
  show(*guess, *head, options.json);
  return std::optional<sources::Way>();
}

Result<Done> import_stations(const ImportOptions& options) {
  const auto way = way_of(options);
  if (!way) return way.error();
  if (!*way) {
    return Error{.what = "nothing imported: Mastwise only guessed the columns",
                 .where = options.file,
                 .remedy =
                     "add --accept-guess if the stations look right, --choose "
                     "FIELD=READING for another reading, or --mapping"};
  }
  const auto table = sources::read_stations(options.file, **way);
  if (!table) return options.mapping.empty() ? in_file(options.file, table.error()) : table.error();
  const auto path = catalog_path(options.catalog);
  if (!path) return path.error();
  auto catalog = Catalog::open(*path);
  if (!catalog) return catalog.error();
  const auto report = catalog->replace_source(*table);
  if (!report) return report.error();
  if (options.json) {
    print(report_json(*report));
  } else {
    std::cout << report_text(*report);
  }
  return Done{};
}

}  // namespace

void add_import(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<ImportOptions>();
  CLI::App* verb = program.add_subcommand(
      "import", "Import stations, programs, terrain, land cover or a logbook");
  verb->require_subcommand(1);
  add_import_landcover(*verb, chosen);
  add_import_logbook(*verb, chosen);
  add_import_terrain(*verb, chosen);
  add_import_programs(*verb, chosen);
  CLI::App* stations =
      verb->add_subcommand("stations",
                           "Import a station table: Mastwise's CSV, any table by a mapping or by "
                           "guessed columns, or a folder or archive of joined tables by a mapping");
  stations->add_option("file", options->file, "the table, plain or zipped, or the folder")
      ->required();
  stations->add_option("--mapping", options->mapping,
                       "column mapping: a file, or a built-in one (us_post_auction, us_lms)");
  stations->add_flag("--accept-guess", options->accept_guess,
                     "without a mapping: import by the guessed columns");
  stations->add_option("--choose", options->readings,
                       "another reading of a doubtful field, such as longitude=west");
  stations->add_option("--date", options->date, "date of the table");
  stations->add_option("--catalog", options->catalog, "catalog file to use instead of yours");
  stations->add_flag("--json", options->json, "print one JSON object");
  stations->callback(
      [&chosen, options] { chosen = [options] { return import_stations(*options); }; });
}

}  // namespace mastwise::cli
