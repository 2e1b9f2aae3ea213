#pragma once

#include "core/result.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace mastwise::sources {

// An entry of a folder.
struct Offer {
  std::string path = {};
  std::string name = {};    // without its folder
  std::uint64_t bytes = 0;  // of a table or an archive
  bool joined_set = false;  // an archive of several files: needs a mapping of joined tables
  bool operator==(const Offer&) const = default;
};

struct FolderShown {
  std::string path = {};
  std::string parent = {};  // empty if it has none
  // Subfolders by name, without hidden ones; and archives of several tables to choose from.
  std::vector<Offer> folders = {};
  std::vector<Offer> tables = {};   // .csv, .tsv, .txt, .dat and .zip, by name
  std::vector<Offer> rasters = {};  // is_raster(), by name
  std::vector<Offer> packs = {};    // is_pack(), by name
  std::vector<Offer> routes = {};   // is_route(), by name
  std::string set_known_as = {};    // the built-in mapping for all tables of this folder
  bool operator==(const FolderShown&) const = default;
};

// The date of a file by the tablet's clock, "2026-05-01"; empty if unknown.
std::string day_written(const std::string& path);

// Whether a file's name is that of a raster of heights or land cover: .tif, .tiff, .img, .dt0, .dt1
// or .dt2.
bool is_raster(const std::string& path);

// Whether a file's name is that of a pack: .mwpack.
bool is_pack(const std::string& path);

// Whether a file's name is that of routes and places: .gpx.
bool is_route(const std::string& path);

// The entries of a folder.
Result<FolderShown> show_folder(const std::string& path);

}  // namespace mastwise::sources
