#pragma once

#include "core/catalog/catalog.hpp"
#include "core/pack/manifest.hpp"
#include "core/result.hpp"
#include "platform/pack_file.hpp"

#include <cstddef>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

// Making a pack of what is on board, and taking one in.
namespace mastwise::packs {

// The ground of a pack: a box, or what lies within a radius of a place.
struct Ground {
  pack::Area box = {};
  struct Circle {
    Position middle;
    double radius_m;  // above 0, at most 1,000,000
  };
  std::optional<Circle> circle = {};
};
// The box around a circle.
Ground around(Position middle, double radius_m);
// The error says which side is wrong.
Result<Ground> box(double south_deg, double west_deg, double north_deg, double east_deg);

// The cells that the ground touches, in order.
std::vector<terrain::TileCell> cells_of(const Ground& ground);

struct Wish {
  std::string name = {};
  std::string made = {};  // the day
  Ground ground = {};
  std::vector<std::filesystem::path> folders = {};  // of tiles; the first that has a cell gives it
  std::string catalog = {};                         // empty: no stations
  std::map<pack::PartKind, pack::Origin> origins = {};  // of tiles; licenses of stations
};

// Errors: nothing lies in the ground, something cannot be read, a full disk.
Result<pack::Manifest> make(const Wish& wish, const std::filesystem::path& to,
                            const platform::PackProgress& progress = {});

struct Home {
  std::filesystem::path terrain, cover;  // folders
  std::string catalog;                   // a file
};

struct Taken {
  std::size_t tiles_new = 0;
  std::size_t tiles_same = 0;        // were there already
  std::size_t tiles_kept_finer = 0;  // there is one of a finer grid
  std::vector<ImportReport> stations = {};
};

// The bytes that taking it in still needs on the disk.
std::uint64_t bytes_to_write(const platform::PackFile& file, const Home& home);

// Everything goes in, or nothing: first it is unpacked and its sums are checked, then the tiles get
// their names and the stations their place. What a stopped or failed attempt has unpacked stays in
// a hidden folder, so that the next one goes on from there. A coarser tile never replaces a finer.
// Errors: damaged, too little free space (told before anything is written), stopped.
Result<Taken> take(platform::PackFile& file, const Home& home,
                   const platform::PackProgress& progress = {}, const ImportFocus& focus = {});

}  // namespace mastwise::packs
