#include "app/cli/profile_table.hpp"

#include "platform/files.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <sstream>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

std::vector<std::string> cells_of(std::string line) {
  while (!line.empty() && (line.back() == '\r' || line.back() == ' ')) line.pop_back();
  std::vector<std::string> cells;
  std::istringstream text(line);
  for (std::string cell; std::getline(text, cell, ',');) cells.push_back(cell);
  return cells;
}

std::optional<double> number(const std::string& text) {
  double value = 0.0;
  const char* end = text.data() + text.size();
  const auto [stopped, trouble] = std::from_chars(text.data(), end, value);
  const bool whole = trouble == std::errc{} && stopped == end && std::isfinite(value);
  return whole ? std::optional(value) : std::nullopt;
}

// Fills one table line by line.
class Reader {
 public:
  Reader(std::string path, const std::vector<std::string>& header) : path_(std::move(path)) {
    for (std::size_t i = 0; i < header.size(); ++i) place(header[i], i);
  }

  Result<Done> begin() const {
    if (distance_ && height_) return Done{};
    return Error{.what = "the profile needs the columns d_km and h_m",
                 .where = path_ + ", line 1",
                 .remedy = "name them in the first line"};
  }
  Result<Done> take(const std::vector<std::string>& cells, std::size_t line);
  ProfileTable finish() &&;

 private:
  using Column = std::optional<std::size_t>;
  void place(const std::string& name, std::size_t index) {
    if (name == "d_km") distance_ = index;
    if (name == "h_m") height_ = index;
    if (name == "lat") latitude_ = index;
    if (name == "clutter_m") clutter_ = index;
    if (name == "zone") zone_ = index;
  }
  Error bad(const char* column, std::size_t line, const char* remedy) const {
    return Error{.what = fmt::format("{} is missing or out of range", column),
                 .where = fmt::format("{}, line {}", path_, line),
                 .remedy = remedy};
  }
  static std::optional<double> cell(const std::vector<std::string>& cells, Column column) {
    return column && *column < cells.size() ? number(cells[*column]) : std::nullopt;
  }

  std::string path_;
  Column distance_, height_, latitude_, clutter_, zone_;
  ProfileTable table_;
  std::vector<double> latitudes_deg_;
};

Result<Done> Reader::take(const std::vector<std::string>& cells, std::size_t line) {
  const auto distance = cell(cells, distance_), height = cell(cells, height_);
  if (!distance) return bad("d_km", line, "give the distance from the transmitter in km");
  if (!height) return bad("h_m", line, "give the ground's height in m; a profile has no gaps");
  table_.distances_km.push_back(*distance);
  table_.heights_m.push_back(*height);
  if (latitude_) {
    const auto latitude = cell(cells, latitude_);
    if (!latitude) return bad("lat", line, "give degrees, or leave the column out");
    latitudes_deg_.push_back(*latitude);
  }
  if (clutter_) {
    const auto clutter = cell(cells, clutter_);
    if (!clutter) return bad("clutter_m", line, "give meters, 0 for none");
    table_.clutter_m.push_back(*clutter);
  }
  if (zone_) {
    const auto zone = cell(cells, zone_);
    if (!zone || (*zone != 1.0 && *zone != 3.0 && *zone != 4.0)) {
      return bad("zone", line, "use 1 for sea, 3 for coastal land, 4 for inland");
    }
    table_.zones.push_back(static_cast<p1812::Zone>(static_cast<int>(*zone)));
  }
  return Done{};
}

ProfileTable Reader::finish() && {
  if (!latitudes_deg_.empty()) {
    table_.middle_latitude_deg = (latitudes_deg_.front() + latitudes_deg_.back()) / 2.0;
  }
  return std::move(table_);
}

}  // namespace

std::optional<double> ProfileTable::spacing_m() const {
  if (distances_km.size() < 2) return std::nullopt;
  const double even_km =
      (distances_km.back() - distances_km.front()) / static_cast<double>(distances_km.size() - 1);
  constexpr double kLastDigitKm = 2e-6;
  for (std::size_t i = 0; i < distances_km.size(); ++i) {
    const double expected_km = distances_km.front() + static_cast<double>(i) * even_km;
    if (std::fabs(distances_km[i] - expected_km) > kLastDigitKm) return std::nullopt;
  }
  return even_km * 1000.0;
}

Result<ProfileTable> read_profile_table(const std::string& path) {
  const auto text = platform::read_file(path);
  if (!text) return text.error();
  std::istringstream lines(*text);
  std::string line;
  std::getline(lines, line);
  Reader reader(path, cells_of(line));
  if (const auto begun = reader.begin(); !begun) return begun.error();
  for (std::size_t number = 2; std::getline(lines, line); ++number) {
    const auto cells = cells_of(line);
    if (cells.empty()) continue;
    if (const auto taken = reader.take(cells, number); !taken) return taken.error();
  }
  return std::move(reader).finish();
}

}  // namespace mastwise::cli
