#include "core/publishers/publishers.hpp"

#include "core/import/mapping_json.hpp"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <set>

#include <fmt/format.h>

namespace mastwise::publishers {
namespace {

using namespace mapping_json;
using pack::PartKind;

constexpr std::string_view kHttps = "https://";
constexpr std::string_view kLatitude = "{lat}", kLongitude = "{lon}";

PartKind kind_of(const std::string& text, const std::string& where) {
  for (const PartKind kind : {PartKind::stations, PartKind::terrain, PartKind::landcover}) {
    if (text == pack::to_text(kind)) return kind;
  }
  fail(where, fmt::format("the kind \"{}\" is not known", text),
       "choose one of: stations, terrain, landcover");
}

std::uint64_t number_at(const json& object, const char* key, std::uint64_t most,
                        const std::string& where) {
  const auto found = object.find(key);
  if (found == object.end()) return 0;
  if (!found->is_number_unsigned() || found->get<std::uint64_t>() > most) {
    fail(where, fmt::format("\"{}\" is not a whole number from 0 to {}", key, most));
  }
  return found->get<std::uint64_t>();
}

// The path with its leading slash; empty if there is none.
std::string_view path_in(std::string_view address) {
  const std::size_t host = address.find("://");
  const std::size_t path = address.find('/', host == std::string_view::npos ? 0 : host + 3);
  return path == std::string_view::npos ? std::string_view() : address.substr(path);
}

std::string file_name(std::string_view address) {
  return std::string(address.substr(address.rfind('/') + 1));
}

// The last part becomes a file's name on the disk.
bool is_plain_name(std::string_view name) {
  constexpr std::string_view kPlain =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_-.{}";
  return !name.empty() && name[0] != '.' &&
         name.find_first_not_of(kPlain) == std::string_view::npos;
}

void check_address(const DataSet& set, const std::string& where) {
  const std::string& address = set.address;
  const bool plain = std::all_of(address.begin(), address.end(),
                                 [](char letter) { return letter > 0x20 && letter < 0x7f; });
  const std::string_view path = path_in(address);
  const std::string_view host = std::string_view(address).substr(0, address.size() - path.size());
  if (!address.starts_with(kHttps) || !plain || host.size() <= kHttps.size() ||
      host.find_first_of("{}@") != std::string_view::npos) {
    fail(where, "the address does not begin with https:// and a host");
  }
  if (!is_plain_name(file_name(path))) {
    fail(where, "the address does not end in a file's name",
         "use letters, digits, dots, dashes and underscores");
  }
  const bool pattern = path.find(kLatitude) != std::string_view::npos &&
                       path.find(kLongitude) != std::string_view::npos;
  if (pattern != (set.square_deg > 0)) {
    fail(where, "squares and the address's {lat} and {lon} need each other",
         "give both square_deg and the pattern, or neither");
  }
}

DataSet set_of(const json& object, const std::string& place) {
  expect_object(object, place,
                {"id", "kind", "name", "publisher", "license", "notice", "date", "address",
                 "square_deg", "usual_bytes", "by_hand", "refuses_scripts", "mapping", "sha256"});
  DataSet set{.id = needed_text(object, "id", place)};
  const std::string where = place + ", " + set.id;
  set.kind = kind_of(needed_text(object, "kind", where), where);
  for (const auto& [member, key] :
       {std::pair{&DataSet::name, "name"}, std::pair{&DataSet::publisher, "publisher"},
        std::pair{&DataSet::license, "license"}, std::pair{&DataSet::notice, "notice"},
        std::pair{&DataSet::address, "address"}, std::pair{&DataSet::by_hand, "by_hand"}}) {
    set.*member = needed_text(object, key, where);
  }
  set.date = text_at(object, "date", where);
  set.mapping = text_at(object, "mapping", where);
  set.sha256 = text_at(object, "sha256", where);
  set.refuses_scripts = flag_at(object, "refuses_scripts", where);
  constexpr std::uint64_t kMostDegrees = 30, kMostBytes = std::uint64_t{1} << 40;
  set.square_deg = static_cast<int>(number_at(object, "square_deg", kMostDegrees, where));
  set.usual_bytes = number_at(object, "usual_bytes", kMostBytes, where);
  check_address(set, where);
  if ((set.kind == PartKind::stations) != !set.mapping.empty() ||
      (set.kind == PartKind::stations) != (set.square_deg == 0)) {
    fail(where, "stations need a mapping and no squares; other data needs squares and no mapping");
  }
  constexpr std::size_t kDigits = 64;
  if (!set.sha256.empty() &&
      (set.square_deg > 0 || set.sha256.size() != kDigits ||
       set.sha256.find_first_not_of("0123456789abcdef") != std::string::npos)) {
    fail(where, "the SHA-256 sum is not that of one file, 64 hexadecimal digits in lower case");
  }
  return set;
}

std::vector<DataSet> sets_of(const json& root) {
  expect_object(root, "top level", {"about", "sets"});
  const auto list = root.find("sets");
  if (list == root.end() || !list->is_array() || list->empty()) {
    fail("sets", "there are no data sets", "list them in brackets, [ ]");
  }
  std::vector<DataSet> sets;
  std::set<std::string> ids;
  for (const json& object : *list) {
    const std::string where = fmt::format("set {}", sets.size() + 1);
    sets.push_back(set_of(object, where));
    if (!ids.insert(sets.back().id).second) fail(where, "this id is there already");
  }
  return sets;
}

int square_side(int degrees, int step) {
  const int over = degrees % step;
  return degrees - (over < 0 ? over + step : over);
}

std::string replaced(std::string text, std::string_view what, std::string_view with) {
  for (std::size_t at = text.find(what); at != std::string::npos;
       at = text.find(what, at + with.size())) {
    text.replace(at, what.size(), with);
  }
  return text;
}

}  // namespace

Result<std::vector<DataSet>> read_publishers(std::string_view text) {
  auto sets = mapping_json::read<std::vector<DataSet>>(
      text, [](const json& root) { return sets_of(root); });
  if (sets) return sets;
  Error error = sets.error();
  error.where = replaced(error.where, "mapping", "publishers");
  return error;
}

Result<DataSet> choose_set(std::span<const DataSet> sets, PartKind kind, std::string_view id) {
  std::vector<std::string> ids;
  for (const DataSet& set : sets) {
    if (set.kind != kind) continue;
    if (id.empty() || set.id == id) return set;
    ids.push_back(set.id);
  }
  return Error{.what = fmt::format("no data set \"{}\" of the kind {}", id, pack::to_text(kind)),
               .where = "--set",
               .remedy = ids.empty() ? "" : fmt::format("choose one of: {}", fmt::join(ids, ", "))};
}

std::vector<RemoteFile> files_for(const DataSet& set, std::span<const terrain::TileCell> cells) {
  if (set.square_deg == 0) return {{.address = set.address, .name = file_name(set.address)}};
  std::map<terrain::TileCell, std::vector<terrain::TileCell>> squares;
  for (const terrain::TileCell cell : cells) {
    squares[{square_side(cell.south_deg, set.square_deg),
             square_side(cell.west_deg, set.square_deg)}]
        .push_back(cell);
  }
  std::vector<RemoteFile> files;
  for (auto& [corner, covered] : squares) {
    const std::string latitude =
        fmt::format("{}{:02}", corner.south_deg < 0 ? 'S' : 'N', std::abs(corner.south_deg));
    const std::string longitude =
        fmt::format("{}{:03}", corner.west_deg < 0 ? 'W' : 'E', std::abs(corner.west_deg));
    const std::string address =
        replaced(replaced(set.address, kLatitude, latitude), kLongitude, longitude);
    files.push_back({.address = address, .name = file_name(address), .cells = std::move(covered)});
  }
  return files;
}

std::string at_base(const std::string& address, std::string base) {
  if (base.empty()) return address;
  while (base.ends_with('/')) base.pop_back();
  return base + std::string(path_in(address));
}

}  // namespace mastwise::publishers
