#include "platform/atomic_save.hpp"
#include "platform/download_version.hpp"
#include "platform/files.hpp"

#include <charconv>
#include <span>
#include <sstream>
#include <system_error>

#include <fmt/format.h>

namespace mastwise::platform {
namespace {

std::filesystem::path note_of(const std::filesystem::path& part) {
  return part.string() + ".of";
}

}  // namespace

std::string validator(const FileVersion& version) {
  const bool weak = version.tag.starts_with("W/");
  return version.tag.empty() || weak ? version.modified : version.tag;
}

Result<Done> note_version(const std::filesystem::path& part, const FileVersion& version) {
  const std::string text = fmt::format("{}\n{}\n{}\n{}\n", version.address, version.bytes,
                                       version.tag, version.modified);
  return save_atomically(note_of(part), std::as_bytes(std::span(text)));
}

FileVersion noted_version(const std::filesystem::path& part, const std::string& address) {
  if (!exists(note_of(part).string())) return {};
  const auto text = read_file(note_of(part).string());
  if (!text) return {};
  std::istringstream lines(*text);
  FileVersion version;
  std::string bytes;
  const bool whole = std::getline(lines, version.address) && std::getline(lines, bytes) &&
                     std::getline(lines, version.tag) && std::getline(lines, version.modified);
  const char* const end = bytes.data() + bytes.size();
  const auto [rest, fault] = std::from_chars(bytes.data(), end, version.bytes);
  const bool readable = whole && fault == std::errc() && rest == end;
  return readable && version.address == address ? version : FileVersion();
}

void forget_version(const std::filesystem::path& part) {
  std::error_code ignored;
  std::filesystem::remove(note_of(part), ignored);
}

void forget_part(const std::filesystem::path& part) {
  std::error_code ignored;
  std::filesystem::remove(part, ignored);
  forget_version(part);
}

}  // namespace mastwise::platform
