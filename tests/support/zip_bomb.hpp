#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <string>

namespace mastwise::test {

// Little-endian, as in zip archives.
inline std::string bytes_of(std::uint32_t value, int count) {
  std::string bytes;
  for (int i = 0; i < count; ++i) bytes += static_cast<char>(value >> 8 * i & 0xFF);
  return bytes;
}

// Deflated zeros, 159 times smaller than they are. A block of fixed codes [RFC 1951, 3.2.6] has a
// zero, then `kRepeats` times "258 bytes from one byte back", and its end; with so many repeats it
// ends at a whole byte, so any number of blocks follow one another.
inline constexpr std::uint32_t kRepeats = 6 + 8 * 10'000, kBlockBytes = 1 + 258 * kRepeats;
inline std::string deflated_block() {
  std::string bytes;
  unsigned held = 0;
  const auto put = [&](const char* bits) {
    for (; *bits != '\0'; ++bits) {
      if (held % 8 == 0) bytes += '\0';
      if (*bits == '1') bytes.back() = static_cast<char>(bytes.back() | 1 << held % 8);
      ++held;
    }
  };
  put("010");       // not the last block, fixed codes
  put("00110000");  // literal 0
  for (std::uint32_t i = 0; i < kRepeats; ++i) put("1100010100000");
  put("0000000");
  return bytes;
}

// An archive with one entry, whose deflated bytes are `part` so many times, and which states its
// size and checksum.
inline void write_deflated(const std::filesystem::path& path, const std::string& entry,
                           const std::string& part, std::uint32_t times, std::uint32_t stated_bytes,
                           std::uint32_t checksum) {
  constexpr std::uint32_t kDeflated = 8, kDay = 0x21;
  const auto packed = static_cast<std::uint32_t>(part.size()) * times;
  const auto name_size = static_cast<std::uint32_t>(entry.size());
  // What the local header and the directory share [PKWARE APPNOTE.TXT, 4.3.7 and 4.3.12].
  const std::string common = bytes_of(20, 2) + bytes_of(0, 2) + bytes_of(kDeflated, 2) +
                             bytes_of(0, 2) + bytes_of(kDay, 2) + bytes_of(checksum, 4) +
                             bytes_of(packed, 4) + bytes_of(stated_bytes, 4) +
                             bytes_of(name_size, 2) + bytes_of(0, 2);
  const std::string local = "PK\x03\x04" + common + entry;
  const std::string directory =
      "PK\x01\x02" + bytes_of(20, 2) + common + std::string(14, '\0') + entry;
  std::ofstream file(path, std::ios::binary);
  file << local;
  for (std::uint32_t i = 0; i < times; ++i) file << part;
  file << directory << "PK\x05\x06" << bytes_of(0, 4) << bytes_of(1, 2) << bytes_of(1, 2)
       << bytes_of(static_cast<std::uint32_t>(directory.size()), 4)
       << bytes_of(static_cast<std::uint32_t>(local.size()) + packed, 4) << bytes_of(0, 2);
}

// An entry of `blocks` blocks, about 20.6 MB of zeros each.
inline void write_zip_bomb(const std::filesystem::path& path, const std::string& entry,
                           std::uint32_t blocks, std::uint32_t stated_bytes) {
  write_deflated(path, entry, deflated_block(), blocks, stated_bytes, 0);
}

}  // namespace mastwise::test
