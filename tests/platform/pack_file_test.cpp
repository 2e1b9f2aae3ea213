#include "platform/pack_file.hpp"

#include "platform/sha256.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <cstdlib>
#include <fstream>
#include <span>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;
using pack::PartKind;
using platform::PackFile;
using platform::PackInput;

namespace {

std::string sum_of(const std::string& text) {
  platform::Sha256 sum;
  sum.add(std::as_bytes(std::span(text)));
  return sum.take_hex();
}

const pack::Manifest kHead{
    .name = "Test", .made = "2026-11-29", .area = {41.0, -76.0, 46.0, -69.0}};

std::vector<PackInput> two_parts(const test::TemporaryFolder& folder) {
  std::ofstream(folder.file("tile"), std::ios::binary) << std::string(3'000'000, 'h');
  return {{.kind = PartKind::terrain,
           .name = "terrain/N44W072.hgt",
           .origin = {"heights", "2021", "free"},
           .file = folder.file("tile")},
          {.kind = PartKind::stations, .name = "stations/1.csv", .text = "call_sign\nQABC\n"}};
}

void change_byte(const std::string& path, std::size_t at) {
  std::fstream file(path, std::ios::in | std::ios::out | std::ios::binary);
  file.seekg(static_cast<std::streamoff>(at));
  const char old = static_cast<char>(file.get());
  file.seekp(static_cast<std::streamoff>(at));
  file.put(static_cast<char>(old ^ 0x55));
}

}  // namespace

// Source: FIPS 180-4's examples, as published by NIST (from memory).
TEST_CASE("SHA-256 gives the standard's example sums") {
  CHECK(sum_of("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(sum_of("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  CHECK(sum_of(std::string(1'000'000, 'a')) ==
        "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("a pack gives back what was packed, and the same parts make the same bytes") {
  test::TemporaryFolder folder;
  const auto made = platform::write_pack(folder.file("a.mwpack"), kHead, two_parts(folder));
  INFO((made ? "" : made.error().message()));
  REQUIRE(made);
  auto file = PackFile::open(folder.file("a.mwpack"));
  INFO((file ? "" : file.error().message()));
  REQUIRE(file);
  CHECK(file->manifest() == *made);
  REQUIRE(made->parts.size() == 2);
  CHECK(made->parts[0].bytes == 3'000'000);
  CHECK(made->parts[0].sha256 == sum_of(std::string(3'000'000, 'h')));
  CHECK(made->parts[0].sha256 == *platform::sha256_of(folder.file("tile")));
  CHECK(file->bytes(made->parts[0])->size() == 3'000'000);
  const auto text = file->bytes(made->parts[1]);
  REQUIRE(text);
  CHECK(std::string(reinterpret_cast<const char*>(text->data()), text->size()) ==
        "call_sign\nQABC\n");
  REQUIRE(platform::write_pack(folder.file("b.mwpack"), kHead, two_parts(folder)));
  CHECK(test::read_file(folder.file("a.mwpack")) == test::read_file(folder.file("b.mwpack")));
}

// Source: CPython's reader of zip archives, an independent one.
TEST_CASE("another program reads a pack as an ordinary zip archive", "[linux]") {
  test::TemporaryFolder folder;
  REQUIRE(platform::write_pack(folder.file("a.mwpack"), kHead, two_parts(folder)));
  const std::string command =
      "python3 -c \"import zipfile,json,hashlib,sys\n"
      "z=zipfile.ZipFile(sys.argv[1])\n"
      "assert z.namelist()[0]=='manifest.json'\n"
      "for p in json.loads(z.read('manifest.json'))['parts']:\n"
      "  b=z.read(p['file'])\n"
      "  assert len(b)==p['bytes']\n"
      "  assert hashlib.sha256(b).hexdigest()==p['sha256']\n"
      "\" '" +
      folder.file("a.mwpack") + "'";
  CHECK(std::system(command.c_str()) == 0);
}

TEST_CASE("a stopped pack leaves what was there") {
  test::TemporaryFolder folder;
  std::ofstream(folder.file("a.mwpack")) << "older";
  const auto stopped = platform::write_pack(folder.file("a.mwpack"), kHead, two_parts(folder),
                                            [](std::uint64_t, std::uint64_t) { return false; });
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().what == "stopped: no pack was written");
  CHECK(test::read_file(folder.file("a.mwpack")) == "older");
}

TEST_CASE("a damaged, cut or foreign file is no pack, and says so") {
  test::TemporaryFolder folder;
  const std::string path = folder.file("a.mwpack");
  REQUIRE(platform::write_pack(path, kHead, two_parts(folder)));
  const std::string whole = test::read_file(path);
  CHECK_FALSE(PackFile::open(folder.file("none")));
  std::ofstream(path, std::ios::binary) << whole.substr(0, whole.size() / 2);
  REQUIRE_FALSE(PackFile::open(path));
  CHECK(PackFile::open(path).error().damaged);
  // A wrong byte anywhere is found at the latest when the part is read.
  int found = 0;
  for (std::size_t at = 10; at < whole.size(); at += whole.size() / 60) {
    std::ofstream(path, std::ios::binary) << whole;
    change_byte(path, at);
    auto file = PackFile::open(path);
    bool bad = !file;
    if (file) {
      for (const auto& part : file->manifest().parts) {
        const auto bytes = file->bytes(part);
        bad |= !bytes;
        if (bytes)
          CHECK(sum_of({reinterpret_cast<const char*>(bytes->data()), bytes->size()}) ==
                part.sha256);
      }
    }
    found += bad ? 1 : 0;
  }
  CHECK(found > 30);
}
