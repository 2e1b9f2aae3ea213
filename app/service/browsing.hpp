#pragma once

#include "core/result.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace mastwise::sources {

// Something to touch in a folder.
struct Offer {
  std::string path = {};
  std::string name = {};    // without its folder
  std::uint64_t bytes = 0;  // of a table or an archive
  bool joined_set = false;  // an archive of several files: needs a mapping of joined tables
  bool operator==(const Offer&) const = default;
};

struct FolderShown {
  std::string path = {};
  std::string parent = {};          // empty: there is none
  std::vector<Offer> folders = {};  // to go into, by name; hidden ones are left out
  std::vector<Offer> tables = {};   // .csv, .tsv, .txt, .dat and .zip, by name
  std::string set_known_as = {};    // the ready mapping for all tables of this folder together
  bool operator==(const FolderShown&) const = default;
};

// The day on which a file was written, "2026-05-01"; empty where that is not known.
std::string day_written(const std::string& path);

// What a thumb can go to from a folder.
Result<FolderShown> show_folder(const std::string& path);

}  // namespace mastwise::sources
