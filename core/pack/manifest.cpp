#include "core/pack/manifest.hpp"

#include "core/text/json_text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace mastwise::pack {
namespace {

using nlohmann::json;

constexpr std::string_view kFormat = "mastwise pack";
constexpr std::uint64_t kVersion = 1;
constexpr std::uint64_t kLargestPart = std::uint64_t{64} << 20;

struct Kind {
  std::string_view name, folder, end;
};
constexpr std::array kKinds{Kind{"terrain", "terrain/", ".hgt"},
                            Kind{"landcover", "landcover/", ".cover"},
                            Kind{"stations", "stations/", ".csv"}};
const Kind& facts(PartKind kind) {
  return kKinds[static_cast<std::size_t>(kind)];
}

Error fault(std::string where, std::string what) {
  return {.what = std::move(what),
          .where = "the pack's manifest, " + std::move(where),
          .remedy = "make or copy the pack again"};
}

// The name without its folder and its end; empty if it has others.
std::string_view stem(const Part& part) {
  const Kind& kind = facts(part.kind);
  const std::string_view file = part.file;
  if (!file.starts_with(kind.folder) || !file.ends_with(kind.end)) return {};
  if (file.size() <= kind.folder.size() + kind.end.size()) return {};
  return file.substr(kind.folder.size(), file.size() - kind.folder.size() - kind.end.size());
}

bool is_number(std::string_view text) {
  return !text.empty() && text.size() < 6 &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

bool rightly_named(const Part& part) {
  if (part.kind == PartKind::stations) return is_number(stem(part));
  const auto cell = cell_of(part);
  return cell && part.file == tile_file(part.kind, *cell);
}

bool is_sum(std::string_view text) {
  return text.size() == 64 && text.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

std::string text_in(const json& object, const char* key) {
  const auto found = object.find(key);
  return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

Result<Part> read_part(const json& object, std::size_t number) {
  const std::string where = fmt::format("part {}", number);
  if (!object.is_object()) return fault(where, "it is not an object");
  Part part{.file = text_in(object, "file"),
            .sha256 = text_in(object, "sha256"),
            .origin = {.source = text_in(object, "source"),
                       .date = text_in(object, "date"),
                       .license = text_in(object, "license")}};
  const std::string name = text_in(object, "kind");
  const auto kind =
      std::find_if(kKinds.begin(), kKinds.end(), [&](const Kind& one) { return one.name == name; });
  if (kind == kKinds.end()) return fault(where, fmt::format("the kind \"{}\" is not known", name));
  part.kind = static_cast<PartKind>(kind - kKinds.begin());
  if (!rightly_named(part)) {
    return fault(where, fmt::format("\"{}\" is no name for {}", part.file, name));
  }
  const auto bytes = object.find("bytes");
  if (bytes == object.end() || !bytes->is_number_unsigned() ||
      bytes->get<std::uint64_t>() > kLargestPart) {
    return fault(where, "its size is missing or too large");
  }
  part.bytes = bytes->get<std::uint64_t>();
  if (!is_sum(part.sha256)) return fault(where, "its SHA-256 is missing or malformed");
  return part;
}

Result<Area> read_area(const json& manifest) {
  const auto object = manifest.find("area");
  Area area;
  const auto side = [&](const char* key, double& member, double most) {
    if (object == manifest.end() || !object->is_object()) return false;
    const auto found = object->find(key);
    if (found == object->end() || !found->is_number()) return false;
    member = found->get<double>();
    return std::isfinite(member) && std::fabs(member) <= most;
  };
  const bool whole =
      side("south_deg", area.south_deg, 90.0) && side("north_deg", area.north_deg, 90.0) &&
      side("west_deg", area.west_deg, 180.0) && side("east_deg", area.east_deg, 180.0);
  if (!whole || area.south_deg > area.north_deg) {
    return fault("area", "a side is missing or not on the globe");
  }
  return area;
}

}  // namespace

std::string_view to_text(PartKind kind) {
  return facts(kind).name;
}

std::string tile_file(PartKind kind, terrain::TileCell cell) {
  return fmt::format("{}{}{}", facts(kind).folder, terrain::cell_name(cell), facts(kind).end);
}

std::string station_file(std::size_t number) {
  return fmt::format("{}{}{}", facts(PartKind::stations).folder, number,
                     facts(PartKind::stations).end);
}

std::optional<terrain::TileCell> cell_of(const Part& part) {
  return part.kind == PartKind::stations ? std::nullopt : terrain::cell_named(stem(part));
}

std::uint64_t total_bytes(const Manifest& manifest) {
  std::uint64_t bytes = 0;
  for (const Part& part : manifest.parts) bytes += part.bytes;
  return bytes;
}

std::string write_manifest(const Manifest& manifest) {
  json parts = json::array();
  for (const Part& part : manifest.parts) {
    parts.push_back({{"kind", to_text(part.kind)},
                     {"file", part.file},
                     {"bytes", part.bytes},
                     {"sha256", part.sha256},
                     {"source", part.origin.source},
                     {"date", part.origin.date},
                     {"license", part.origin.license}});
  }
  const json written{{"format", kFormat},
                     {"version", kVersion},
                     {"name", manifest.name},
                     {"made", manifest.made},
                     {"area",
                      {{"south_deg", manifest.area.south_deg},
                       {"west_deg", manifest.area.west_deg},
                       {"north_deg", manifest.area.north_deg},
                       {"east_deg", manifest.area.east_deg}}},
                     {"parts", std::move(parts)}};
  return written.dump(1, ' ', false, json::error_handler_t::replace) + "\n";
}

Result<Manifest> read_manifest(std::string_view text) {
  const json root = read_json(text);
  if (!root.is_object() || text_in(root, "format") != kFormat) {
    return fault("start", "this is not a pack of Mastwise");
  }
  const auto version = root.find("version");
  if (version == root.end() || !version->is_number_unsigned()) {
    return fault("version", "the version is missing");
  }
  if (version->get<std::uint64_t>() > kVersion) {
    Error error = fault("version", "a newer Mastwise made this pack");
    error.remedy = "update Mastwise";
    return error;
  }
  const auto area = read_area(root);
  if (!area) return area.error();
  Manifest manifest{.name = text_in(root, "name"), .made = text_in(root, "made"), .area = *area};
  const auto parts = root.find("parts");
  if (parts == root.end() || !parts->is_array()) return fault("parts", "the list is missing");
  std::set<std::string> files;
  for (const json& object : *parts) {
    auto part = read_part(object, manifest.parts.size() + 1);
    if (!part) return part.error();
    if (!files.insert(part->file).second) {
      return fault(part->file, "it is listed twice");
    }
    manifest.parts.push_back(std::move(part).value());
  }
  return manifest;
}

}  // namespace mastwise::pack
