#include "core/places/gazetteer.hpp"
#include "core/places/place_table.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace mastwise::places {
namespace {

constexpr std::string_view kMagic = "MWPLACE1";
constexpr std::size_t kCells = static_cast<std::size_t>(PlaceTable::kRows) * PlaceTable::kColumns;
constexpr std::size_t kHeaderBytes = 8 + 6 * 4;
constexpr std::size_t kBytesOfPlace = 2 + 2 + 4 + 2 + 1;

Error damaged(std::string what) {
  return {.what = "the places are damaged: " + std::move(what), .remedy = "install Mastwise again"};
}

// Reads numbers and texts from the front of bytes that are known to be long enough.
class Taker {
 public:
  explicit Taker(std::span<const std::byte> bytes) : bytes_(bytes) {}

  std::string_view text(std::size_t size) {
    const auto taken = bytes_.first(size);
    bytes_ = bytes_.subspan(size);
    return {reinterpret_cast<const char*>(taken.data()), size};
  }
  template <class Number>
  Number number() {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < sizeof(Number); ++i) {
      value |= std::to_integer<std::uint32_t>(bytes_[i]) << 8 * i;
    }
    bytes_ = bytes_.subspan(sizeof(Number));
    return static_cast<Number>(value);
  }
  template <class Number>
  std::vector<Number> column(std::size_t count) {
    std::vector<Number> numbers(count);
    for (Number& value : numbers) value = number<Number>();
    return numbers;
  }

 private:
  std::span<const std::byte> bytes_;
};

struct Header {
  std::size_t places, areas_bytes, countries_bytes, regions_bytes, folding_bytes, names_bytes;
};

Result<Header> read_header(std::span<const std::byte> bytes) {
  if (bytes.size() < kHeaderBytes) return damaged("the file ends within its header");
  Taker taker(bytes);
  if (taker.text(kMagic.size()) != kMagic) return damaged("not a places file");
  const auto size = [&] { return static_cast<std::size_t>(taker.number<std::uint32_t>()); };
  Header header{};
  for (std::size_t* field : {&header.places, &header.areas_bytes, &header.countries_bytes,
                             &header.regions_bytes, &header.folding_bytes, &header.names_bytes}) {
    *field = size();
  }
  const std::size_t wanted = kHeaderBytes + 2 * kCells + kBytesOfPlace * header.places +
                             header.areas_bytes + header.countries_bytes + header.regions_bytes +
                             header.folding_bytes + header.names_bytes;
  if (wanted != bytes.size()) {
    return damaged(fmt::format("{} bytes instead of {}", bytes.size(), wanted));
  }
  return header;
}

// The columns of a tab-separated line; std::nullopt unless there are `kCount`.
template <std::size_t kCount>
std::optional<std::array<std::string, kCount>> columns_of(std::string_view line) {
  std::array<std::string, kCount> columns;
  for (std::size_t i = 0; i < kCount; ++i) {
    const std::size_t tab = std::min(line.find('\t'), line.size());
    if ((tab == line.size()) != (i + 1 == kCount)) return std::nullopt;
    columns[i] = line.substr(0, tab);
    line.remove_prefix(std::min(tab + 1, line.size()));
  }
  return columns;
}

template <std::size_t kCount, class Use>
bool each_row(std::string_view text, Use use) {
  bool sound = true;
  const bool whole = each_line(text, [&](std::string_view line) {
    const auto columns = columns_of<kCount>(line);
    if (columns) use(*columns);
    sound = sound && columns.has_value();
  });
  return whole && sound;
}

bool read_areas(std::string_view text, PlaceTable& table) {
  return each_row<2>(text, [&](const auto& columns) {
    table.area_of.push_back({columns[0], columns[1]});
  });
}

bool read_area_names(std::string_view countries, std::string_view regions, PlaceTable& table) {
  const auto named = [&](const std::string& country, const std::string& admin,
                         const std::string& code, const std::string& name) {
    return AreaName{.country = country,
                    .admin = admin,
                    .code = code,
                    .name = name,
                    .folded_code = table.folding.fold(code),
                    .folded_name = table.folding.fold(name)};
  };
  return each_row<2>(countries,
                     [&](const auto& columns) {
                       table.countries.push_back(named(columns[0], "", columns[0], columns[1]));
                     }) &&
         each_row<4>(regions, [&](const auto& columns) {
           table.regions.push_back(named(columns[0], columns[1], columns[2], columns[3]));
         });
}

bool read_names(std::string_view text, PlaceTable& table) {
  table.names.reserve(text.size());
  table.folded_names.reserve(text.size());
  table.name_starts.reserve(table.size() + 1);
  table.folded_starts.reserve(table.size() + 1);
  const bool whole = each_line(text, [&](std::string_view name) {
    table.name_starts.push_back(static_cast<std::uint32_t>(table.names.size()));
    table.folded_starts.push_back(static_cast<std::uint32_t>(table.folded_names.size()));
    table.names += name;
    table.folded_names += table.folding.fold(name);
  });
  table.name_starts.push_back(static_cast<std::uint32_t>(table.names.size()));
  table.folded_starts.push_back(static_cast<std::uint32_t>(table.folded_names.size()));
  table.folded_names.shrink_to_fit();
  return whole && table.name_starts.size() == table.size() + 1;
}

// Whether every value is in range.
bool sound(const PlaceTable& table) {
  const auto step_is_right = [](std::uint16_t step) { return step < 10'000; };
  return table.cell_starts.back() == table.size() &&
         std::all_of(table.north_steps.begin(), table.north_steps.end(), step_is_right) &&
         std::all_of(table.east_steps.begin(), table.east_steps.end(), step_is_right) &&
         std::all_of(table.areas.begin(), table.areas.end(),
                     [&](std::uint16_t area) { return area < table.area_of.size(); }) &&
         std::all_of(table.kinds.begin(), table.kinds.end(),
                     [](Kind kind) { return kind <= Kind::GivenUp; });
}

}  // namespace

Result<Gazetteer> Gazetteer::load(std::span<const std::byte> bytes) {
  const auto header = read_header(bytes);
  if (!header) return header.error();
  Taker taker(bytes.subspan(kHeaderBytes));
  auto table = std::make_shared<PlaceTable>();
  table->cell_starts.reserve(kCells + 1);
  table->cell_starts.push_back(0);
  for (const std::uint16_t count : taker.column<std::uint16_t>(kCells)) {
    table->cell_starts.push_back(table->cell_starts.back() + count);
  }
  table->north_steps = taker.column<std::uint16_t>(header->places);
  table->east_steps = taker.column<std::uint16_t>(header->places);
  table->populations = taker.column<std::uint32_t>(header->places);
  table->areas = taker.column<std::uint16_t>(header->places);
  table->kinds = taker.column<Kind>(header->places);
  const std::string_view areas = taker.text(header->areas_bytes);
  const std::string_view countries = taker.text(header->countries_bytes);
  const std::string_view regions = taker.text(header->regions_bytes);
  auto folding = Folding::from_table(taker.text(header->folding_bytes));
  if (!folding) return damaged("cannot read a line of the letters");
  table->folding = std::move(*folding);
  if (!read_areas(areas, *table) || !read_area_names(countries, regions, *table)) {
    return damaged("cannot read a line of the countries");
  }
  if (!read_names(taker.text(header->names_bytes), *table)) {
    return damaged("the numbers of names and places differ");
  }
  if (!sound(*table)) return damaged("a value is out of range");
  return Gazetteer(std::move(table));
}

}  // namespace mastwise::places
