#include "platform/table_folder.hpp"

#include "tests/support/temporary_folder.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>
#include <zip.h>

using namespace mastwise;
using platform::TableFolder;

namespace {

namespace fs = std::filesystem;

void write_zip(const fs::path& path,
               const std::vector<std::pair<std::string, std::string>>& entries) {
  int code = 0;
  zip_t* const archive = zip_open(path.string().c_str(), ZIP_CREATE | ZIP_TRUNCATE, &code);
  REQUIRE(archive != nullptr);
  for (const auto& [name, text] : entries) {
    zip_source_t* const source = zip_source_buffer(archive, text.data(), text.size(), 0);
    REQUIRE(zip_file_add(archive, name.c_str(), source, ZIP_FL_ENC_UTF_8) >= 0);
  }
  REQUIRE(zip_close(archive) == 0);
}

std::string text_of(TableFolder& folder, const std::string& name) {
  const auto stream = folder.open(name);
  if (!stream) FAIL(stream.error().message());
  std::string text;
  std::string piece(1000, '\0');
  while (true) {
    const auto got = (*stream)->read({piece.data(), piece.size()});
    REQUIRE(got);
    if (*got == 0) break;
    text.append(piece, 0, *got);
  }
  CHECK((*stream)->size() == text.size());
  return text;
}

}  // namespace

TEST_CASE("tables are read from a folder, plain or zipped, and from one archive") {
  const test::TemporaryFolder folder;
  const std::string large(100'000, 'x');
  std::ofstream(folder / "Facility.dat") << "plain";
  write_zip(folder / "place.zip", {{"place.dat", large}});
  auto tables = TableFolder::at(folder.path());
  REQUIRE(tables);
  CHECK(tables->names() == std::vector<std::string>{"Facility.dat", "place.zip"});
  CHECK(text_of(*tables, "facility.dat") == "plain");
  CHECK(text_of(*tables, "place.dat") == large);
  const auto none = tables->open("antenna.dat");
  REQUIRE_FALSE(none);
  CHECK(none.error().what == "missing file: neither antenna.dat nor antenna.zip exists");
  CHECK(none.error().remedy == "the files are: Facility.dat, place.zip");

  write_zip(folder / "all.zip", {{"dump/place.dat", large}, {"dump/facility.dat", "zipped"}});
  auto archive = TableFolder::at(folder / "all.zip");
  REQUIRE(archive);
  CHECK(text_of(*archive, "FACILITY.DAT") == "zipped");
  CHECK(text_of(*archive, "place.dat") == large);
  CHECK_FALSE(archive->open("antenna.dat"));
}

TEST_CASE("an archive within an archive is read, and leaves nothing behind") {
  const test::TemporaryFolder folder;
  const std::string large(300'000, 'y');
  write_zip(folder / "place.zip", {{"place.dat", large}});
  std::ifstream packed(folder / "place.zip", std::ios::binary);
  const std::string bytes{std::istreambuf_iterator<char>(packed), {}};
  write_zip(folder / "all.zip", {{"place.zip", bytes}, {"other.zip", "no archive"}});
  auto archive = TableFolder::at(folder / "all.zip");
  REQUIRE(archive);
  CHECK(archive->has("place.dat"));
  CHECK_FALSE(archive->has("antenna.dat"));
  CHECK(text_of(*archive, "place.dat") == large);
  const auto damaged = archive->open("other.dat");
  REQUIRE_FALSE(damaged);
  CHECK(damaged.error().where.find("other.zip") != std::string::npos);
  CHECK(std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator()) == 2);
}

TEST_CASE("a damaged archive and a missing folder are errors") {
  const test::TemporaryFolder folder;
  std::ofstream(folder / "bad.zip") << "no archive";
  CHECK_FALSE(TableFolder::at(folder / "bad.zip"));
  CHECK_FALSE(TableFolder::at(folder / "nowhere"));

  std::string varied;
  for (int i = 0; i < 50'000; ++i) varied += std::to_string(i * 7919);
  write_zip(folder / "whole.zip", {{"place.dat", varied}});
  std::fstream file(folder / "whole.zip", std::ios::in | std::ios::out | std::ios::binary);
  file.seekp(5000);
  file << "damage";
  file.close();
  auto archive = TableFolder::at(folder / "whole.zip");
  REQUIRE(archive);
  const auto stream = archive->open("place.dat");
  REQUIRE(stream);
  std::string piece(1 << 20, '\0');
  bool failed = false;
  while (true) {
    const auto got = (*stream)->read({piece.data(), piece.size()});
    failed = !got;
    if (!got || *got == 0) break;
  }
  CHECK(failed);
}
