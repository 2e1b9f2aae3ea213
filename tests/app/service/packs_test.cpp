#include "app/service/packs.hpp"

#include "tests/support/invented_catalog.hpp"
#include "tests/support/made_cover.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>

#include <catch2/catch.hpp>

using namespace mastwise;
using terrain::TileCell;
namespace fs = std::filesystem;

// Contents of tiles are compared as one truth: nobody can read them.
namespace {

const Position kStop = *Position::at_deg(42.5, -118.5);

void write_bytes(const fs::path& path, const std::vector<std::byte>& bytes) {
  fs::create_directories(path.parent_path());
  std::ofstream(path, std::ios::binary)
      .write(reinterpret_cast<const char*>(bytes.data()),
             static_cast<std::streamsize>(bytes.size()));
}

void write_tile(const fs::path& folder, TileCell cell, double height_m, int side = 1201) {
  write_bytes(folder / (terrain::cell_name(cell) + ".hgt"),
              test::made_tile_bytes(cell, side, [&](double, double) { return height_m; }));
}

// What a maker has: six tiles of heights, one of land cover, the invented stations.
struct Maker {
  test::TemporaryFolder folder;
  packs::Wish wish;

  Maker() {
    for (int south = 41; south <= 43; ++south) {
      write_tile(folder.path(), {south, -119}, 100.0 * south);
      write_tile(folder.path(), {south, -118}, 200.0 * south);
    }
    write_bytes(
        fs::path(folder.file("N42W119.cover")),
        test::made_cover_bytes({42, -119}, [](int, int) { return landcover::CoverClass::trees; }));
    test::fill_catalog(folder.file("catalog"));
    wish = {.name = "Lakes",
            .made = "2026-11-29",
            .ground = packs::around(kStop, 60'000.0),
            .folders = {folder.path()},
            .catalog = folder.file("catalog"),
            .origins = {{pack::PartKind::terrain, {"made heights", "2026", "free"}}}};
  }
  std::string make() {
    const auto made = packs::make(wish, folder.file("lakes.mwpack"));
    INFO((made ? "" : made.error().message()));
    REQUIRE(made);
    return folder.file("lakes.mwpack");
  }
};

packs::Home home_in(const test::TemporaryFolder& folder) {
  return {.terrain = folder.file("terrain"),
          .cover = folder.file("cover"),
          .catalog = folder.file("catalog")};
}

// Every file below a folder with its bytes, hidden ones left out.
std::map<std::string, std::string> contents(const fs::path& folder) {
  std::map<std::string, std::string> found;
  if (!fs::exists(folder)) return found;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    const std::string name = fs::relative(entry.path(), folder).string();
    if (entry.is_regular_file() && name.front() != '.') found[name] = test::read_file(entry.path());
  }
  return found;
}

}  // namespace

TEST_CASE("the ground around a place is in its cells and its box") {
  const auto ground = packs::around(kStop, 60'000.0);
  // 60 km are 0.54 degrees of latitude, and 0.73 of longitude at 42.5 N.
  CHECK(ground.box.north_deg == Approx(43.04).margin(0.01));
  CHECK(ground.box.west_deg == Approx(-119.24).margin(0.02));
  const auto cells = packs::cells_of(ground);
  const std::set<TileCell> all(cells.begin(), cells.end());
  CHECK(all.count({42, -119}) == 1);
  CHECK(all.count({43, -119}) == 1);
  CHECK(all.count({42, -120}) == 1);
  CHECK(all.count({43, -121}) == 0);
}

TEST_CASE("a box may cross 180 degrees, and a wrong one is refused") {
  const auto box = packs::box(-20.0, 179.5, -18.5, -178.5);
  REQUIRE(box);
  const auto cells = packs::cells_of(*box);
  CHECK(cells == std::vector<TileCell>{
                     {-20, -180}, {-20, -179}, {-20, 179}, {-19, -180}, {-19, -179}, {-19, 179}});
  CHECK_FALSE(packs::box(46.0, -76.0, 41.0, -69.0));
  CHECK_FALSE(packs::box(41.0, -200.0, 46.0, -69.0));
  CHECK_FALSE(packs::box(41.0, -70.0, 46.0, -70.0));
}

// Two of the six squares have no ground within 60 km: their nearest corners are 69 km away.
TEST_CASE("a pack brings tiles and stations to another tablet, and twice brings nothing new") {
  Maker maker;
  auto file = platform::PackFile::open(maker.make());
  REQUIRE(file);
  const pack::Manifest& manifest = file->manifest();
  CHECK(std::count_if(manifest.parts.begin(), manifest.parts.end(), [](const auto& part) {
          return part.kind == pack::PartKind::terrain && part.origin.source == "made heights";
        }) == 4);
  test::TemporaryFolder other;
  const packs::Home home = home_in(other);
  const auto taken = packs::take(*file, home);
  INFO((taken ? "" : taken.error().message()));
  REQUIRE(taken);
  CHECK(taken->tiles_new == 5);
  CHECK(contents(home.terrain).size() == 4);
  CHECK(
      (contents(home.terrain)["N42W119.hgt"] == test::read_file(maker.folder.file("N42W119.hgt"))));
  CHECK((contents(home.cover)["N42W119.cover"] ==
         test::read_file(maker.folder.file("N42W119.cover"))));
  auto catalog = Catalog::open(home.catalog);
  REQUIRE(catalog);
  REQUIRE(taken->stations.size() == 1);
  CHECK(*catalog->count() == taken->stations[0].stations_added);
  // Those within the 60 km, and no others.
  auto original = Catalog::open(maker.wish.catalog);
  REQUIRE(original);
  const auto inside = original->nearest(kStop, 60'000.0, 1000);
  REQUIRE(inside);
  CHECK(inside->size() == *catalog->count());
  CHECK(inside->size() < *original->count());
  CHECK(catalog->sources()->at(0).source.name == "INVENTED (Lakes)");

  const auto again = packs::take(*file, home);
  REQUIRE(again);
  CHECK(again->tiles_new == 0);
  CHECK(again->tiles_same == 5);
  CHECK(again->stations[0].stations_unchanged == inside->size());
}

TEST_CASE("a stopped pack changes nothing, and the next attempt goes on from there") {
  Maker maker;
  auto file = platform::PackFile::open(maker.make());
  REQUIRE(file);
  test::TemporaryFolder other;
  const packs::Home home = home_in(other);
  const std::uint64_t whole = packs::bytes_to_write(*file, home);
  int calls = 0;
  const auto stopped =
      packs::take(*file, home, [&](std::uint64_t, std::uint64_t) { return ++calls < 4; });
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().what == "stopped: nothing on board has changed");
  CHECK(contents(home.terrain).empty());
  CHECK_FALSE(fs::exists(home.catalog));
  // Three tiles wait.
  CHECK(whole - packs::bytes_to_write(*file, home) == 3 * 2 * 1201 * 1201);
  REQUIRE(packs::take(*file, home));
  CHECK(contents(home.terrain).size() == 4);
  for (const auto& entry : fs::directory_iterator(home.terrain)) {
    CHECK(entry.path().filename().string().front() != '.');
  }
}

TEST_CASE("a coarser tile does not replace a finer one, a newer one of its size does") {
  Maker maker;
  auto file = platform::PackFile::open(maker.make());
  REQUIRE(file);
  test::TemporaryFolder other;
  const packs::Home home = home_in(other);
  write_tile(home.terrain, {42, -119}, 7.0, 3601);
  write_tile(home.terrain, {43, -119}, 7.0);
  const std::string finer = test::read_file(home.terrain / "N42W119.hgt");
  const auto taken = packs::take(*file, home);
  REQUIRE(taken);
  CHECK(taken->tiles_kept_finer == 1);
  CHECK((test::read_file(home.terrain / "N42W119.hgt") == finer));
  CHECK((test::read_file(home.terrain / "N43W119.hgt") ==
         test::read_file(maker.folder.file("N43W119.hgt"))));
}

TEST_CASE("nothing to pack is an error, not an empty pack") {
  Maker maker;
  maker.wish.ground = packs::around(*Position::at_deg(-40.0, 20.0), 50'000.0);
  const auto made = packs::make(maker.wish, maker.folder.file("x.mwpack"));
  REQUIRE_FALSE(made);
  CHECK(made.error().what.find("nothing that is on board lies there") == 0);
  CHECK_FALSE(fs::exists(maker.folder.file("x.mwpack")));
}
