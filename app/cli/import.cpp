#include "app/cli/arguments.hpp"
#include "app/cli/import_report.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/known_tables.hpp"
#include "app/service/startup.hpp"
#include "app/service/station_source.hpp"
#include "app/words/suspicions.hpp"
#include "core/catalog/catalog.hpp"
#include "core/import/import_csv.hpp"

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
  std::string positions = {};
  std::string near = {};
  std::size_t most_changes = ImportFocus().most;
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

struct PositionChoice {
  const char* name;
  CoordinateReading reading;
};
constexpr PositionChoice kPositions[] = {
    {"as-read", CoordinateReading::as_mapped},
    {"latitude-turned", CoordinateReading::latitude_turned},
    {"longitude-turned", CoordinateReading::longitude_turned},
    {"both-turned", CoordinateReading::both_turned},
    {"swapped", CoordinateReading::swapped},
    {"swapped-longitude-turned", CoordinateReading::swapped_longitude_turned},
};

const char* name_of(CoordinateReading reading) {
  for (const PositionChoice& choice : kPositions) {
    if (choice.reading == reading) return choice.name;
  }
  return "";
}

// A few stations as one reading places them.
std::string placed(const std::string& head, const TableMapping& mapping) {
  constexpr std::size_t kFew = 3;
  std::vector<std::string> places;
  for (const Station& station : sample_stations(head, mapping, kFew)) {
    places.push_back(fmt::format("{} at {:.3f}, {:.3f}", station.call_sign,
                                 station.position.latitude_deg(),
                                 station.position.longitude_deg()));
  }
  return places.empty() ? "no station" : fmt::format("{}", fmt::join(places, "; "));
}

// Reads the coordinates as --positions says. Without it, positions that look wrong are an error
// with both readings.
Result<Done> settle_positions(const ImportOptions& options, sources::Way& way) {
  if (std::holds_alternative<JoinedMapping>(way)) return Done{};
  const auto* own = std::get_if<sources::OwnFormat>(&way);
  const TableMapping mapping =
      own != nullptr ? own_mapping(own->source) : std::get<TableMapping>(way);
  if (!options.positions.empty()) {
    for (const PositionChoice& choice : kPositions) {
      if (options.positions != choice.name) continue;
      way = reread(mapping, choice.reading);
      return Done{};
    }
    std::vector<const char*> names;
    for (const PositionChoice& choice : kPositions) names.push_back(choice.name);
    return Error{.what = fmt::format("\"{}\" is not a way to read positions", options.positions),
                 .where = "--positions",
                 .remedy = fmt::format("choose one of: {}", fmt::join(names, ", "))};
  }
  const auto head = sources::head_of(options.file);
  if (!head) return head.error();
  const auto towns = service::load_places();
  if (!towns) return towns.error();
  const auto suspicion = suspicion_of(*head, mapping, sources::countries_by(*towns));
  if (!suspicion) return Done{};
  Error error{
      .what = fmt::format("{} As read: {}.", words::suspicion(*suspicion), placed(*head, mapping)),
      .where = options.file,
      .remedy = "nothing was imported; add --positions as-read if they are right"};
  if (suspicion->other) {
    error.what +=
        fmt::format(" The other way: {}", placed(*head, reread(mapping, *suspicion->other)));
    error.remedy +=
        fmt::format(", or --positions {} for the other way", name_of(*suspicion->other));
  }
  return error;
}

Result<Done> import_stations(const ImportOptions& options) {
  auto way = way_of(options);
  if (!way) return way.error();
  if (!*way) {
    return Error{.what = "nothing imported: Mastwise only guessed the columns",
                 .where = options.file,
                 .remedy =
                     "add --accept-guess if the stations look right, --choose "
                     "FIELD=READING for another reading, or --mapping"};
  }
  if (const auto settled = settle_positions(options, **way); !settled) return settled.error();
  const auto path = catalog_path(options.catalog);
  if (!path) return path.error();
  auto catalog = Catalog::open(*path);
  if (!catalog) return catalog.error();
  ImportFocus focus{.most = options.most_changes};
  if (!options.near.empty()) {
    const auto near = position_argument("--near", options.near);
    if (!near) return near.error();
    focus.near = *near;
  }
  const auto report = sources::import_stations(options.file, **way, *catalog, {}, focus);
  if (!report) {
    return options.mapping.empty() ? in_file(options.file, report.error()) : report.error();
  }
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
  stations->add_option(
      "--mapping", options->mapping,
      "column mapping: a file, or a built-in one (us_post_auction, us_lms, ca_white_space)");
  stations->add_flag("--accept-guess", options->accept_guess,
                     "without a mapping: import by the guessed columns");
  stations->add_option("--choose", options->readings,
                       "another reading of a doubtful field, such as longitude=west");
  stations->add_option("--positions", options->positions,
                       "how to read positions that look wrong: as-read, swapped, longitude-turned, "
                       "latitude-turned, both-turned, swapped-longitude-turned");
  stations->add_option("--near", options->near, "list what changed nearest to this position first");
  stations->add_option("--changes", options->most_changes,
                       "the most changed stations to list (default: 200)");
  stations->add_option("--date", options->date, "date of the table");
  stations->add_option("--catalog", options->catalog, "catalog file to use instead of yours");
  stations->add_flag("--json", options->json, "print one JSON object");
  stations->callback(
      [&chosen, options] { chosen = [options] { return import_stations(*options); }; });
}

}  // namespace mastwise::cli
