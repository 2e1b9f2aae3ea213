#pragma once

#include "core/pack/manifest.hpp"
#include "core/result.hpp"
#include "core/terrain/tile.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

// Where open data comes from. Only the table in assets/publishers knows addresses.
namespace mastwise::publishers {

struct DataSet {
  std::string id = {};  // "glo_90"
  pack::PartKind kind = pack::PartKind::stations;
  std::string name = {}, publisher = {};
  std::string license = {};
  std::string notice = {};        // to show with the data
  std::string date = {};          // of the data; empty: of the day it is fetched
  std::string address = {};       // of one file, or a pattern of a square's file; https
  int square_deg = 0;             // degrees on a side of a square; 0: one file for all
  std::uint64_t usual_bytes = 0;  // of one file; 0: not known
  std::string by_hand = {};       // how to get a file in a browser
  bool refuses_scripts = false;   // the publisher often refuses programs
  std::string mapping = {};       // of stations: the ready mapping that reads them
  std::string sha256 = {};        // of one file that never changes; may be empty
  bool operator==(const DataSet&) const = default;
};

// Reads a table of publishers, JSON: {"about": text, "sets": [{...}]}, where a set has the members
// of DataSet; id, kind ("stations", "terrain" or "landcover"), name, publisher, license, notice,
// address and by_hand must be there. In an address of squares "{lat}" stands for the south side as
// "N44" and "{lon}" for the west side as "W072". Errors: not JSON, an unknown or missing key, an
// id that is there twice, an address that is not https or whose host is a pattern, squares without
// their pattern or stations without a mapping.
Result<std::vector<DataSet>> read_publishers(std::string_view text);

// The first set of that kind or, if `id` is not empty, the one with that id. The error lists the
// ids of the kind.
Result<DataSet> choose_set(std::span<const DataSet> sets, pack::PartKind kind, std::string_view id);

// A file of a set.
struct RemoteFile {
  std::string address = {};
  std::string name = {};                      // the address's last part
  std::vector<terrain::TileCell> cells = {};  // the wanted ones that it covers
  bool operator==(const RemoteFile&) const = default;
};

// The files that cover the cells, each once, in the order of their squares; the one file of a set
// without squares.
std::vector<RemoteFile> files_for(const DataSet& set, std::span<const terrain::TileCell> cells);

// The address with scheme and host replaced by `base`, such as "http://127.0.0.1:8000"; unchanged
// if `base` is empty.
std::string at_base(const std::string& address, std::string base);

}  // namespace mastwise::publishers
