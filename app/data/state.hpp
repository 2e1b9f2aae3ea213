#pragma once

#include "app/data/ground.hpp"
#include "app/shared/ahead_stop.hpp"
#include "app/shared/names.hpp"
#include "core/catalog/catalog.hpp"
#include "core/catalog/source_age.hpp"
#include "core/geo/position.hpp"
#include "core/import/guess_mapping.hpp"
#include "core/import/mapping_parts.hpp"
#include "core/import/suspicion.hpp"
#include "core/import/table_mapping.hpp"
#include "core/map/projection.hpp"
#include "core/pack/manifest.hpp"
#include "core/time.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

// Import of station and program tables and of rasters by touch: the questions to the worker, its
// answers, and the person's choices.
namespace mastwise {

enum class IntakeStep { Catalog, Folder, Table, TakingIn, Report, Places, Offers, Fetching, Route };
template <>
inline constexpr std::array kStoredNames<IntakeStep> = names({"catalog", "folder", "table",
                                                              "taking_in", "report", "places",
                                                              "offers", "fetching", "route"});

// How a table is read.
struct TableReading {
  enum class Kind {
    OwnFormat,  // Mastwise's station table
    Mapped,     // another table, by `mapping`
    Joined,     // a set of tables, by the built-in mapping `ready`
    Programs,   // a table of programs
    Terrain,    // a raster of heights
    LandCover,  // a raster of land cover codes, by the class table `classes`
    Pack,       // all that a region needs, in one file
  };
  Kind kind = Kind::OwnFormat;
  Source source = {};  // its name and date in the catalog
  TableMapping mapping = {};
  ProgramColumns programs = {};  // of a table of programs
  std::string ready = {};
  std::string classes = {};
  bool operator==(const TableReading&) const = default;
};

struct IntakeQuestion {
  IntakeStep step = IntakeStep::Catalog;
  std::size_t look = 0;  // raised each time the person looks again
  std::string folder = {};
  std::string path = {};                     // of the table
  std::optional<TableReading> reading = {};  // as corrected; empty: identify the table
  std::size_t taking = 0;                    // the number of the last import
  std::vector<Position> way = {};            // the stop and the places ahead, as of the last look
  bool practice = false;                     // whose ground is looked at
  std::string fetch = {};                    // the data set to fetch
  bool for_route = false;                    // a folder is looked at for routes and lists of places
  bool operator==(const IntakeQuestion&) const = default;
};

// An entry in the list of a folder.
struct IntakeEntry {
  enum class Kind { Folder, Table, Archive, Set, Raster, Pack, Route } kind = Kind::Folder;
  std::string path = {};
  std::string name = {};
  std::uint64_t bytes = 0;
  bool operator==(const IntakeEntry&) const = default;
};

struct IntakeFolder {
  std::string path = {};
  std::string parent = {};  // empty if it has none
  std::vector<IntakeEntry> entries = {};
  bool operator==(const IntakeFolder&) const = default;
};

// A column of the table with the values of its first rows.
struct IntakeColumn {
  std::string name = {};
  std::string example = {};
  bool operator==(const IntakeColumn&) const = default;
};

// A station read from the table, for a person to check.
struct CheckedStation {
  std::string call_sign = {};
  std::string rf_channel = {};
  std::string city = {};
  Position position;
  std::optional<map::PlanePoint> at = {};  // on the plane around the middle of all
  bool operator==(const CheckedStation&) const = default;
};

struct CheckMap {
  Position middle;
  double radius_m = 0.0;
  std::vector<std::vector<map::PlanePoint>> lines = {};  // coasts and borders
  // Squares of ground, each from its south-west corner counterclockwise.
  std::vector<std::array<map::PlanePoint, 4>> squares = {};
  bool operator==(const CheckMap&) const = default;
};

// What a pack has of one kind from one source.
struct PackLine {
  pack::PartKind kind = pack::PartKind::terrain;
  std::size_t parts = 0;
  std::uint64_t bytes = 0;
  pack::Origin origin = {};
  bool operator==(const PackLine&) const = default;
};

struct PackLook {
  std::string name = {};
  std::string made = {};  // the day
  std::vector<PackLine> lines = {};
  std::uint64_t to_write = 0;  // bytes that are not on board yet
  bool operator==(const PackLook&) const = default;
};

// The result of reading a table's head.
struct TableLook {
  TableReading reading = {};
  std::string renews = {};    // the source with most of the sample's call signs
  std::string known_by = {};  // why it is read this way
  std::vector<Doubt> doubts = {};
  std::vector<IntakeColumn> columns = {};
  std::string file_date = {};  // date of the file, "2026-05-01"
  std::size_t rows = 0;        // of the head, and how many were rejected
  std::size_t rejected = 0;
  std::vector<RejectedRow> first_rejected = {};
  std::vector<CheckedStation> sample = {};
  std::vector<StationProgram> programs = {};  // of a table of programs
  std::optional<CheckMap> map = {};
  std::optional<Suspicion> suspicion = {};        // why the positions look wrong
  std::vector<CheckedStation> sample_other = {};  // the sample by the suspicion's other reading
  std::optional<CheckMap> map_other = {};
  std::vector<std::string> remarks = {};  // what was recognized: encoding, decimal commas
  std::optional<PackLook> pack = {};
  std::vector<std::string> class_tables = {};  // to choose from, of a raster of land cover
  std::string trouble = {};                    // why nothing can be read this way
  bool operator==(const TableLook&) const = default;
};

// The result of an import of a raster.
struct GroundReport {
  bool land_cover = false;               // else terrain
  std::string source = {};               // the class table's name or the file's
  std::string notice = {};               // of the source, to show; may be empty
  std::vector<std::string> cells = {};   // tiles created or completed, "N44W072"
  std::size_t filled = 0;                // heights or areas that were unknown before
  std::vector<int> unlisted_codes = {};  // without a class: they stay unknown
  bool operator==(const GroundReport&) const = default;
};

// The result of taking in a pack.
struct PackReport {
  std::string name = {};
  std::size_t tiles_new = 0, tiles_same = 0, tiles_kept_finer = 0;
  std::size_t stations_added = 0, stations_changed = 0, stations_unchanged = 0, stations_gone = 0;
  std::vector<StationChange> changes = {};
  std::size_t changes_not_listed = 0;
  bool operator==(const PackReport&) const = default;
};

// Data that a publisher has for the stop and the way, and what fetching it would take.
struct FetchOffer {
  std::string id = {};
  pack::PartKind kind = pack::PartKind::terrain;
  std::string name = {}, publisher = {}, license = {}, notice = {};
  std::string date = {};    // of the data; empty: of the day it is fetched
  std::string server = {};  // host name
  std::string first_address = {};
  std::string by_hand = {};  // how to get a file in a browser
  bool refuses_apps = false;
  std::size_t files = 0;                // to fetch
  std::uint64_t usual_bytes = 0;        // of all; 0: not known
  std::vector<std::string> cells = {};  // squares to fetch, "N44W072"
  std::size_t cells_on_board = 0;
  std::size_t cells_empty = 0;  // an earlier fetch found no data there
  bool operator==(const FetchOffer&) const = default;
};

// What a download would go over.
enum class Connection { None, Mobile, Other };
template <>
inline constexpr std::array kStoredNames<Connection> = names({"none", "mobile", "other"});

// The result of fetching a data set.
struct FetchReport {
  std::string name = {};
  std::string notice = {};              // to show with the data
  std::size_t files = 0;                // fetched and imported
  std::uint64_t bytes = 0;              // over the line
  std::vector<std::string> cells = {};  // tiles created or completed
  std::size_t without_file = 0;         // squares that the publisher has no file for
  std::optional<ImportReport> stations = {};
  bool operator==(const FetchReport&) const = default;
};

// A way or a list of places in a file.
struct RouteChoice {
  enum class Kind { Route, Track, Places } kind = Kind::Route;
  std::string name = {};
  std::size_t points = 0;  // in the file
  double length_km = 0.0;  // along them; 0 for places
  std::vector<AheadStop> stops = {};
  bool operator==(const RouteChoice&) const = default;
};

struct RouteLook {
  std::vector<RouteChoice> choices = {};
  std::vector<std::string> remarks = {};
  bool operator==(const RouteLook&) const = default;
};

// The tiles on board.
struct GroundHeld {
  std::size_t terrain_cells = 0;
  std::size_t cover_cells = 0;
  std::vector<std::string> notices = {};   // of the sources of land cover
  std::vector<std::string> problems = {};  // tiles that cannot be used
  bool operator==(const GroundHeld&) const = default;
};

// The result of an import, with the first kRejected rejected rows and their number.
struct IntakeReport {
  static constexpr std::size_t kRejected = 12;
  bool of_programs = false;
  ImportReport stations = {};
  ProgramReport programs = {};
  std::size_t rejected = 0;
  bool first_stations = false;              // the catalog had none before
  std::optional<GroundReport> ground = {};  // of a raster; then the rest is empty
  std::optional<PackReport> pack = {};      // of a pack; likewise
  std::optional<FetchReport> fetched = {};  // of a download; likewise
  bool operator==(const IntakeReport&) const = default;
};

struct IntakeAnswer {
  IntakeQuestion question = {};
  std::size_t generation = 0;  // number of changes the worker made to the catalog
  std::vector<SourceSummary> stations = {}, programs = {};
  GroundHeld ground = {};                   // at the catalog and after an import
  std::optional<GroundAround> around = {};  // at the catalog
  std::optional<DiskUse> disk = {};         // at the catalog
  std::vector<IntakeEntry> places = {};     // start folders
  std::vector<FetchOffer> offers = {};
  Connection connection = Connection::Other;  // with the offers
  std::optional<IntakeFolder> folder = {};
  std::optional<TableLook> look = {};
  std::optional<RouteLook> route = {};
  std::string doing = {};           // during an import
  std::optional<double> part = {};  // fraction done, 0 to 1; empty if unknown
  std::optional<IntakeReport> report = {};
  std::string trouble = {};  // why it failed
  bool operator==(const IntakeAnswer&) const = default;
};

// A part of the table's mapping, as shown.
struct IntakeRow {
  std::string part = {};
  std::string label = {};
  std::string value = {};
  std::string example = {};  // a value of the column
  std::string note = {};     // why it is in doubt
  std::string next = {};     // the reading after a touch; columns have a list instead
  bool column = false;
  bool missing = false;  // required to read the table
  bool operator==(const IntakeRow&) const = default;
};

// A source of the catalog, as shown.
struct IntakeSource {
  std::string name = {};
  std::size_t entries = 0;
  std::optional<std::chrono::local_days> dated = {};  // empty: no date, or one ahead of today
  std::optional<SourceFreshness> freshness = {};      // of stations
  std::string age = {};
  std::string caution = {};
  bool operator==(const IntakeSource&) const = default;
};

// The near squares, by whether their heights are on board.
struct SquaresCounted {
  std::size_t missing = 0;
  std::size_t all = 0;                          // without those at sea
  std::size_t land_cover = 0;                   // of them, with a tile of land cover
  double missing_part = 0.0;                    // of the near ground, within [0, 1]
  std::vector<std::string> missing_cells = {};  // those with most near ground first
  bool operator==(const SquaresCounted&) const = default;
};

struct IntakeFindings {
  std::vector<IntakeRow> rows = {};
  std::optional<SquaresCounted> squares = {};
  std::vector<IntakeSource> stations = {}, programs = {};
  std::optional<IntakeSource> practice = {};  // of the practice area, while that is in use
  std::string from_here = {};                 // distance of the sample's middle
  bool ready = false;                         // it can be imported
  bool operator==(const IntakeFindings&) const = default;
};

struct Intake {
  bool opened = false;  // since the app started
  bool shown = false;   // after the last action
  IntakeQuestion question = {};
  std::optional<IntakeAnswer> answer = {};
  std::optional<TableLook> look = {};        // the last look at the table
  std::optional<TableReading> reading = {};  // as corrected by touch
  std::vector<std::string> decided = {};     // parts chosen by touch, no longer in doubt
  std::string choosing = {};                 // the part whose column is being chosen
  std::string offered = {};                  // the data set whose offer is shown
  std::optional<IntakeReport> report = {};
  std::size_t reported = 0;  // the import whose report was shown
  std::string trouble = {};  // why nothing was imported

  IntakeFindings found = {};  // while the sheet is open
  bool operator==(const Intake&) const = default;
};

}  // namespace mastwise
