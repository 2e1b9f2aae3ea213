#pragma once

#include "app/service/packs.hpp"
#include "core/publishers/publishers.hpp"
#include "core/result.hpp"

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

// Getting data from its publishers. Nothing here connects but run(), which somebody asked for.
namespace mastwise::fetch {

// The table of the assets.
Result<std::vector<publishers::DataSet>> load_publishers();

struct Wish {
  publishers::DataSet set = {};
  std::vector<terrain::TileCell> cells = {};  // ignored by a set of one file
  packs::Home home = {};
  std::filesystem::path downloads = {};  // a folder for what is under way
  std::string base = {};                 // instead of the publisher's server; empty: that one
  bool keep = false;                     // the downloaded files after their import
  ImportFocus focus = {};                // whose changes the report lists
};

struct Plan {
  std::vector<publishers::RemoteFile> files = {};
  std::size_t cells_on_board = 0;  // wanted, but left out
  std::size_t cells_empty = 0;     // left out too: an earlier fetch found that they have no data
  std::uint64_t usual_bytes = 0;   // of all files; 0: not known
};
// What run() would fetch. A cell is on board if its tile knows at least half of its ground, or came
// from an earlier fetch of the same set, such as a coast: an import of the square beside it leaves
// a tile with little more than the common edge. kOutcomes in the folder for downloads has a line
// "SET CELL tile" or "SET CELL none" for each cell fetched; without the file all are asked for
// again.
inline constexpr const char* kOutcomes = "outcomes";
Plan plan(const Wish& wish);

struct Progress {
  std::size_t file = 0, files = 0;  // the one under way, from 0
  std::string name = {};
  bool importing = false;  // else it is coming over the line
  std::uint64_t done_bytes = 0, all_bytes = 0;
  double bytes_per_s = 0.0;
};
// Returns false to stop.
using Watch = std::function<bool(const Progress&)>;

struct Fetched {
  std::size_t files = 0;                      // fetched and imported
  std::uint64_t fetched_bytes = 0;            // over the line
  std::vector<std::string> no_file = {};      // squares that the publisher has no file for
  std::vector<terrain::TileCell> tiles = {};  // created or completed
  std::vector<ImportReport> stations = {};
  std::vector<std::filesystem::path> kept = {};  // with Wish::keep
  // What came of a file is continued the next time; a whole one whose import was stopped is among
  // the kept and comes anew.
  bool stopped = false;
};

// Fetches and imports one file after another, so what was imported before an error or a stop stays
// on board. Errors: those of platform::download() and of the imports. If the publisher refuses, the
// remedy says how to get the file in a browser.
Result<Fetched> run(const Wish& wish, const Plan& plan, const Watch& watch = {});

}  // namespace mastwise::fetch
