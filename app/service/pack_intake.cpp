#include "app/service/pack_intake.hpp"

#include "app/service/intake_look.hpp"
#include "app/words/language.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise {
namespace {

PackLook pack_look(const pack::Manifest& manifest) {
  PackLook look{.name = manifest.name, .made = manifest.made};
  for (const pack::Part& part : manifest.parts) {
    auto line = std::find_if(look.lines.begin(), look.lines.end(), [&](const PackLine& one) {
      return one.kind == part.kind && one.origin == part.origin;
    });
    if (line == look.lines.end()) {
      line = look.lines.insert(line, PackLine{.kind = part.kind, .origin = part.origin});
    }
    ++line->parts;
    line->bytes += part.bytes;
  }
  return look;
}

std::optional<Position> middle_of(const pack::Area& area) {
  const double wide = std::remainder(area.east_deg - area.west_deg, 360.0);
  const double half = (wide < 0.0 ? wide + 360.0 : wide) / 2.0;
  const auto middle = Position::at_deg((area.south_deg + area.north_deg) / 2.0,
                                       std::remainder(area.west_deg + half, 360.0));
  return middle ? std::optional(*middle) : std::nullopt;
}

// The squares of ground in the pack, each once, around the middle of its area.
std::optional<CheckMap> ground_map(const pack::Manifest& manifest, const map::Borders* borders) {
  const auto middle = middle_of(manifest.area);
  const auto projection = middle ? map::Projection::around(*middle) : Error{};
  if (!projection) return std::nullopt;
  CheckMap map{.middle = *middle, .radius_m = 30e3};
  for (const pack::Part& part : manifest.parts) {
    const auto cell = pack::cell_of(part);
    if (!cell) continue;
    std::array<map::PlanePoint, 4> corners;
    bool whole = true;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const double north = i >= 2 ? 1.0 : 0.0, east = i == 1 || i == 2 ? 1.0 : 0.0;
      const auto corner =
          Position::at_deg(cell->south_deg + north, std::remainder(cell->west_deg + east, 360.0));
      const auto point = corner ? projection->to_plane(*corner) : std::nullopt;
      whole = whole && point;
      if (point) corners[i] = *point;
    }
    if (!whole || std::find(map.squares.begin(), map.squares.end(), corners) != map.squares.end()) {
      continue;
    }
    map.squares.push_back(corners);
    for (const map::PlanePoint& point : corners) {
      map.radius_m = std::max(map.radius_m, 1.1 * std::hypot(point.east_m, point.north_m));
    }
  }
  map.radius_m = std::min(map.radius_m, map::Projection::kFarthestM);
  add_lines(map, *projection, borders);
  return map;
}

}  // namespace

TableLook look_into_pack(const std::string& path, const packs::Home& home,
                         const map::Borders* borders) {
  TableLook look;
  look.reading.kind = TableReading::Kind::Pack;
  const auto file = platform::PackFile::open(path);
  if (!file) {
    look.trouble = file.error().message();
    return look;
  }
  look.reading.source = {.name = file->manifest().name, .date = file->manifest().made};
  look.known_by = words::say("A pack: stations and ground in one file");
  look.pack = pack_look(file->manifest());
  look.pack->to_write = packs::bytes_to_write(*file, home);
  look.map = ground_map(file->manifest(), borders);
  return look;
}

Result<PackReport> import_pack(const std::string& path, const packs::Home& home,
                               const std::function<bool(double part)>& progress,
                               const ImportFocus& focus) {
  auto file = platform::PackFile::open(path);
  if (!file) return file.error();
  const auto taken = packs::take(
      *file, home,
      [&](std::uint64_t done, std::uint64_t all) {
        return progress(all == 0 ? 1.0 : static_cast<double>(done) / static_cast<double>(all));
      },
      focus);
  if (!taken) return taken.error();
  PackReport report{.name = file->manifest().name,
                    .tiles_new = taken->tiles_new,
                    .tiles_same = taken->tiles_same,
                    .tiles_kept_finer = taken->tiles_kept_finer};
  for (const ImportReport& stations : taken->stations) {
    report.stations_added += stations.stations_added;
    report.stations_changed += stations.stations_changed;
    report.stations_unchanged += stations.stations_unchanged;
    report.stations_gone += stations.stations_gone;
    report.changes.insert(report.changes.end(), stations.changes.begin(), stations.changes.end());
    report.changes_not_listed += changes_not_listed(stations);
  }
  return report;
}

}  // namespace mastwise
