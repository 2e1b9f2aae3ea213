#pragma once

#include "core/places/folding.hpp"
#include "core/places/gazetteer.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::places {

enum class Kind : std::uint8_t { Ordinary, PartOfTown, GivenUp };

// A country, or a first-order division of one, with its names.
struct AreaName {
  std::string country;  // ISO 3166 alpha-2
  std::string admin;    // empty for the whole country
  std::string code;     // as shown: "OR"
  std::string name;     // as shown: "Oregon"
  std::string folded_code;
  std::string folded_name;
};

// A point in the frame that turns with the earth, in meters from its center. The straight distance
// between two points sorts places; displayed distances are measured along the ellipsoid.
struct EarthPoint {
  double x_m, y_m, z_m;
};
EarthPoint earth_point(double latitude_deg, double longitude_deg);
double straight_way_m(const EarthPoint& a, const EarthPoint& b);

// The data of a gazetteer, place by place in cell order.
struct PlaceTable {
  static constexpr int kRows = 180, kColumns = 360;
  static constexpr std::uint32_t kUnknownPopulation = 0xFFFFFFFF;

  // The first place of each square degree, row by row from 90 S 180 W, then the end of the last.
  std::vector<std::uint32_t> cell_starts;
  std::vector<std::uint16_t> north_steps, east_steps;  // within the cell
  std::vector<std::uint32_t> populations;
  std::vector<std::uint16_t> areas;
  std::vector<Kind> kinds;
  std::string names;
  std::vector<std::uint32_t> name_starts;  // then the end of the last
  std::string folded_names;
  std::vector<std::uint32_t> folded_starts;

  struct Area {
    std::string country, admin;
  };
  std::vector<Area> area_of;
  std::vector<AreaName> countries, regions;
  Folding folding;

  std::size_t size() const { return populations.size(); }
  std::string_view name(std::size_t i) const {
    return std::string_view(names).substr(name_starts[i], name_starts[i + 1] - name_starts[i]);
  }
  std::string_view folded_name(std::size_t i) const {
    return std::string_view(folded_names)
        .substr(folded_starts[i], folded_starts[i + 1] - folded_starts[i]);
  }
  std::size_t cell_of(std::size_t i) const;
  double latitude_deg(std::size_t i, std::size_t cell) const;
  double longitude_deg(std::size_t i, std::size_t cell) const;
  EarthPoint point(std::size_t i, std::size_t cell) const {
    return earth_point(latitude_deg(i, cell), longitude_deg(i, cell));
  }
};

}  // namespace mastwise::places
