#pragma once

#include "core/catalog/catalog.hpp"
#include "core/geo/position.hpp"
#include "core/import/guess_mapping.hpp"
#include "core/import/mapping_parts.hpp"
#include "core/import/table_mapping.hpp"
#include "core/map/projection.hpp"
#include "core/time.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

// Taking in tables of stations and programs by touch: what the worker is asked, what it answers,
// and what the fingers have chosen between the two.
namespace mastwise {

enum class IntakeStep { Catalog, Folder, Table, TakingIn, Report };

// How a table is read.
struct TableReading {
  enum class Kind {
    OwnFormat,  // the program's own station table
    Mapped,     // a foreign table, by `mapping`
    Joined,     // a set of tables, by the ready mapping called `ready`
    Programs,   // a table of programs
  };
  Kind kind = Kind::OwnFormat;
  Source source = {};  // what it is called in the catalog, and of what day it is
  TableMapping mapping = {};
  std::string ready = {};
  bool operator==(const TableReading&) const = default;
};

struct IntakeQuestion {
  IntakeStep step = IntakeStep::Catalog;
  std::size_t look = 0;  // another question each time that the person looks anew
  std::string folder = {};
  std::string path = {};                     // of the table
  std::optional<TableReading> reading = {};  // as corrected; nothing: say what it seems to be
  std::size_t taking = 0;                    // the number of the last taking in
  bool operator==(const IntakeQuestion&) const = default;
};

// Something to touch in the list of a folder.
struct IntakeEntry {
  enum class Kind { Folder, Table, Archive, Set } kind = Kind::Folder;
  std::string path = {};
  std::string name = {};
  std::uint64_t bytes = 0;
  bool operator==(const IntakeEntry&) const = default;
};

struct IntakeFolder {
  std::string path = {};
  std::string parent = {};  // empty: there is none
  std::vector<IntakeEntry> entries = {};
  bool operator==(const IntakeFolder&) const = default;
};

// A column of the table, with what stands in its first rows.
struct IntakeColumn {
  std::string name = {};
  std::string example = {};
  bool operator==(const IntakeColumn&) const = default;
};

// A station as the table was read, for the eye to check.
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
  bool operator==(const CheckMap&) const = default;
};

// What the head of a table shows.
struct TableLook {
  TableReading reading = {};
  std::string renews = {};    // the source that has most of the sample's call signs
  std::string known_by = {};  // why it is read so
  std::vector<Doubt> doubts = {};
  std::vector<IntakeColumn> columns = {};
  std::string file_date = {};  // on which the file was written, "2026-05-01"
  std::size_t rows = 0;        // of the head, and how many of them could not be read
  std::size_t rejected = 0;
  std::vector<RejectedRow> first_rejected = {};
  std::vector<CheckedStation> sample = {};
  std::vector<StationProgram> programs = {};  // of a table of programs
  std::optional<CheckMap> map = {};
  std::string trouble = {};  // why nothing can be read so
  bool operator==(const TableLook&) const = default;
};

// What a taking in did. Of rejected rows the first kRejected, and how many there were.
struct IntakeReport {
  static constexpr std::size_t kRejected = 12;
  bool of_programs = false;
  ImportReport stations = {};
  ProgramReport programs = {};
  std::size_t rejected = 0;
  bool first_stations = false;  // the catalog had none before
  bool operator==(const IntakeReport&) const = default;
};

struct IntakeAnswer {
  IntakeQuestion question = {};
  std::size_t generation = 0;  // how often the catalog has been changed by the worker
  std::vector<SourceSummary> stations = {}, programs = {};
  std::vector<IntakeEntry> places = {};  // where to begin to look
  std::optional<IntakeFolder> folder = {};
  std::optional<TableLook> look = {};
  std::string doing = {};           // while it takes in
  std::optional<double> part = {};  // of it that is done, 0 to 1; nothing: not known
  std::optional<IntakeReport> report = {};
  std::string trouble = {};  // why there is none of it, if something failed
  bool operator==(const IntakeAnswer&) const = default;
};

struct Intake {
  bool opened = false;  // since the program began
  IntakeQuestion question = {};
  std::optional<IntakeAnswer> answer = {};
  std::optional<TableLook> look = {};        // the last at the table
  std::optional<TableReading> reading = {};  // as the fingers have corrected it
  std::vector<std::string> decided = {};     // parts that a finger chose: in doubt no more
  std::string choosing = {};                 // the part whose column is being chosen
  std::optional<IntakeReport> report = {};
  std::size_t reported = 0;  // the taking in whose report was shown
  std::string trouble = {};  // why nothing was taken in
  bool operator==(const Intake&) const = default;
};

// A part of how the table is read, as the person sees it.
struct IntakeRow {
  std::string part = {};
  std::string label = {};
  std::string value = {};
  std::string example = {};  // what stands in the column
  std::string note = {};     // why it is in doubt
  std::string next = {};     // the reading that a touch takes; a column is chosen from all
  bool column = false;
  bool missing = false;  // must be chosen before anything can be read
  bool operator==(const IntakeRow&) const = default;
};

// A source of the catalog, as the person sees it.
struct IntakeSource {
  std::string name = {};
  std::string holds = {};
  std::string age = {};
  std::string caution = {};
  bool operator==(const IntakeSource&) const = default;
};

struct IntakeFindings {
  std::vector<IntakeRow> rows = {};
  std::vector<IntakeSource> stations = {}, programs = {};
  std::string from_here = {};  // how far off the middle of the sample is
  bool ready = false;          // it can be taken in
  bool operator==(const IntakeFindings&) const = default;
};

void open_intake(Intake& intake);
void leave_intake(Intake& intake);
void open_intake_folder(Intake& intake, const std::string& path);
void pick_table(Intake& intake, const std::string& path);
void correct_reading(Intake& intake, const std::string& part, const std::string& value);
void take_in(Intake& intake);
void stop_taking_in(Intake& intake);
void intake_found(Intake& intake, const IntakeAnswer& answer);

// `here`: where the rig stands, if that is no practice.
IntakeFindings intake_findings(const Intake& intake, UtcTime date,
                               const std::optional<Position>& here, bool miles);

}  // namespace mastwise
