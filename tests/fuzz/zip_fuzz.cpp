#include "platform/table_folder.hpp"
#include "platform/zipped_file.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <array>

using namespace mastwise;

// Any bytes as a zip archive of tables: every file in it is read to its stated size or is an error,
// and the whole costs bounded time and memory.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const fuzz::Scratch scratch;
  const std::string path = scratch.write("tables.zip", fuzz::text_of(data, size));
  auto tables = platform::TableFolder::at(path);
  if (!fuzz::read_or_told(tables)) return 0;
  std::uint64_t left = 64 << 20;  // of all files, so that a made input takes no minutes
  for (const std::string& name : tables->names()) {
    const auto stream = tables->open(name);
    if (!fuzz::read_or_told(stream)) continue;
    std::array<char, 1 << 16> piece;
    std::uint64_t given = 0;
    while (left > 0) {
      const auto got = (*stream)->read(piece);
      if (!fuzz::read_or_told(got)) break;
      given += *got;
      left -= std::min<std::uint64_t>(left, *got);
      fuzz::require(given <= (*stream)->size());
      if (*got > 0) continue;
      fuzz::require(given == (*stream)->size());
      break;
    }
  }
  const auto one = platform::unpack_one(
      path, [](std::string_view) { return true; },
      [](std::uintmax_t bytes) { return bytes < 4096; });
  if (fuzz::read_or_told(one)) fuzz::require(one->size() < 4096 && tables->names().size() == 1);
  return 0;
}
