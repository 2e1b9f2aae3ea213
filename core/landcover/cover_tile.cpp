#include "core/landcover/cover_tile.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include <fmt/format.h>

namespace mastwise::landcover {
namespace {

constexpr std::string_view kFormat = "mastwise land cover 1";
constexpr std::size_t kLanes = 8;

using SumTables = std::array<std::array<std::uint32_t, 256>, kLanes>;

// Entry [k][b]: the sum after byte b and k zero bytes, so that eight bytes are added at once.
constexpr SumTables sum_tables() {
  constexpr std::uint32_t kPolynomial = 0xEDB88320;  // of IEEE 802.3, reflected
  SumTables tables{};
  for (std::uint32_t byte = 0; byte < 256; ++byte) {
    std::uint32_t sum = byte;
    for (int bit = 0; bit < 8; ++bit) sum = (sum >> 1) ^ ((sum & 1) != 0 ? kPolynomial : 0);
    tables[0][byte] = sum;
  }
  for (std::size_t lane = 1; lane < kLanes; ++lane) {
    for (std::size_t byte = 0; byte < 256; ++byte) {
      const std::uint32_t sum = tables[lane - 1][byte];
      tables[lane][byte] = (sum >> 8) ^ tables[0][sum & 0xff];
    }
  }
  return tables;
}
constexpr SumTables kSumTables = sum_tables();

std::uint32_t number(std::byte byte) {
  return std::to_integer<std::uint32_t>(byte);
}

bool plain_text(std::string_view text) {
  return std::none_of(text.begin(), text.end(), [](char letter) {
    return static_cast<unsigned char>(letter) < 0x20 || letter == 0x7f;
  });
}

// The lines of the head; std::nullopt if it is not text that ends in a line and zero bytes.
std::optional<std::vector<std::string>> head_lines(std::span<const std::byte> head) {
  std::string text;
  for (const std::byte byte : head) text.push_back(static_cast<char>(byte));
  const std::size_t end = std::min(text.find('\0'), text.size());
  if (text.find_first_not_of('\0', end) != std::string::npos) return std::nullopt;
  text.resize(end);
  std::vector<std::string> lines;
  for (std::size_t start = 0; start < text.size();) {
    const std::size_t line_end = text.find('\n', start);
    if (line_end == std::string::npos) return std::nullopt;
    lines.push_back(text.substr(start, line_end - start));
    if (lines.back().empty() || !plain_text(lines.back())) return std::nullopt;
    start = line_end + 1;
  }
  return lines;
}

Error tile_error(terrain::TileCell cell, std::string what) {
  return {.what = std::move(what),
          .where = terrain::cell_name(cell),
          .remedy = "delete the tile and import its land cover again",
          .damaged = true};
}

}  // namespace

std::uint32_t cover_sum(std::span<const std::byte> bytes) {
  std::uint32_t sum = 0xFFFFFFFF;
  std::size_t at = 0;
  for (; at + kLanes <= bytes.size(); at += kLanes) {
    const std::byte* const next = bytes.data() + at;
    const std::uint32_t low = sum ^ (number(next[0]) | number(next[1]) << 8 |
                                     number(next[2]) << 16 | number(next[3]) << 24);
    sum = kSumTables[7][low & 0xff] ^ kSumTables[6][(low >> 8) & 0xff] ^
          kSumTables[5][(low >> 16) & 0xff] ^ kSumTables[4][low >> 24] ^
          kSumTables[3][number(next[4])] ^ kSumTables[2][number(next[5])] ^
          kSumTables[1][number(next[6])] ^ kSumTables[0][number(next[7])];
  }
  for (; at < bytes.size(); ++at) {
    sum = (sum >> 8) ^ kSumTables[0][(sum ^ number(bytes[at])) & 0xff];
  }
  return ~sum;
}

std::vector<std::string> notices_in_head(std::span<const std::byte> head) {
  auto lines = head_lines(head);
  if (!lines || lines->size() < 2 || lines->front() != kFormat) return {};
  lines->erase(lines->begin(), lines->begin() + 2);
  return *std::move(lines);
}

Error CoverTile::size_error(std::string where, std::uintmax_t bytes) {
  return {.what = fmt::format("land cover tile of {} bytes; a tile has {}", bytes, kFileBytes),
          .where = std::move(where),
          .remedy = "delete the tile and import its land cover again",
          .damaged = true};
}

Result<CoverTile> CoverTile::over(terrain::TileCell cell, std::span<const std::byte> bytes) {
  if (bytes.size() != kFileBytes) return size_error(terrain::cell_name(cell), bytes.size());
  auto lines = head_lines(bytes.first(kHeadBytes));
  if (!lines || lines->empty() || lines->front() != kFormat) {
    return tile_error(cell, "not a land cover tile, or one of a newer version of Mastwise");
  }
  const auto kept_sum = bytes.last(kSumBytes);
  const std::uint32_t told = number(kept_sum[0]) << 24 | number(kept_sum[1]) << 16 |
                             number(kept_sum[2]) << 8 | number(kept_sum[3]);
  if (cover_sum(bytes.first(kFileBytes - kSumBytes)) != told) {
    return tile_error(cell, "land cover tile is damaged: its checksum is wrong");
  }
  if (lines->size() < 2 || (*lines)[1] != terrain::cell_name(cell)) {
    return tile_error(cell, "land cover tile of another cell");
  }
  lines->erase(lines->begin(), lines->begin() + 2);
  return CoverTile(cell, *std::move(lines), bytes.data() + kHeadBytes);
}

Result<std::vector<std::byte>> cover_file(terrain::TileCell cell,
                                          std::span<const CoverClass> classes,
                                          const std::vector<std::string>& notices) {
  std::string head = fmt::format("{}\n{}\n", kFormat, terrain::cell_name(cell));
  for (const std::string& notice : notices) {
    if (notice.empty() || !plain_text(notice)) {
      return tile_error(cell, "the notice of a source is not a line of text");
    }
    head += notice + '\n';
  }
  if (head.size() > CoverTile::kHeadBytes) {
    return Error{.what = "the land cover tile has too many sources for their notices to fit",
                 .where = terrain::cell_name(cell),
                 .remedy = "delete the tile and import fewer sources"};
  }
  head.resize(CoverTile::kHeadBytes, '\0');
  std::vector<std::byte> bytes;
  bytes.reserve(CoverTile::kFileBytes);
  for (const char letter : head) bytes.push_back(static_cast<std::byte>(letter));
  for (const CoverClass cover : classes) bytes.push_back(static_cast<std::byte>(cover));
  const std::uint32_t sum = cover_sum(bytes);
  for (const int shift : {24, 16, 8, 0}) bytes.push_back(static_cast<std::byte>(sum >> shift));
  return bytes;
}

}  // namespace mastwise::landcover
