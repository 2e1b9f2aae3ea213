#include "core/geo/os_grid.hpp"

#include <cmath>
#include <optional>
#include <string>

#include <proj.h>

namespace mastwise {
namespace {

constexpr double kLetterSquare_m = 100'000.0;

Error no_reference(std::string_view text) {
  return {.what = "\"" + std::string(text) + "\" is not a British grid reference",
          .remedy = "give two letters and an even number of figures, such as SU 387 148"};
}

// The place of a letter in a square of five by five, without I, from the northwest.
std::optional<int> letter_place(char letter) {
  const char upper =
      letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 'a' + 'A') : letter;
  if (upper < 'A' || upper > 'Z' || upper == 'I') return std::nullopt;
  return upper > 'I' ? upper - 'A' - 1 : upper - 'A';
}

}  // namespace

Result<OsSquare> parse_os_grid(std::string_view text) {
  std::string packed;
  for (const char c : text) {
    if (c != ' ' && c != '\t') packed += c;
  }
  constexpr std::size_t kMost = 12;
  if (packed.size() < 2 || packed.size() > kMost || packed.size() % 2 != 0) {
    return no_reference(text);
  }
  const auto first = letter_place(packed[0]), second = letter_place(packed[1]);
  if (!first || !second) return no_reference(text);
  // The first letter is a square of 500 km; S has the false origin at its southwest corner.
  const int east = (*first % 5 - 2) * 5 + *second % 5;
  const int north = (3 - *first / 5) * 5 + 4 - *second / 5;
  constexpr int kEastward = 7, kNorthward = 13;  // squares of the grid, as published
  if (east < 0 || east >= kEastward || north < 0 || north >= kNorthward) return no_reference(text);
  OsSquare square{.easting_m = east * kLetterSquare_m,
                  .northing_m = north * kLetterSquare_m,
                  .size_m = kLetterSquare_m};
  const std::size_t figures = (packed.size() - 2) / 2;
  double east_part = 0.0, north_part = 0.0;
  for (std::size_t i = 0; i < figures; ++i) {
    const char e = packed[2 + i], n = packed[2 + figures + i];
    if (e < '0' || e > '9' || n < '0' || n > '9') return no_reference(text);
    east_part = 10.0 * east_part + (e - '0');
    north_part = 10.0 * north_part + (n - '0');
    square.size_m /= 10.0;
  }
  square.easting_m += east_part * square.size_m;
  square.northing_m += north_part * square.size_m;
  return square;
}

void OsGrid::ContextCloser::operator()(PJ_CONTEXT* context) const {
  proj_context_destroy(context);
}

void OsGrid::ShiftCloser::operator()(PJ* shift) const {
  proj_destroy(shift);
}

Result<OsGrid> OsGrid::open() {
  OsGrid grid;
  PJ_CONTEXT* context = proj_context_create();
  grid.context_.reset(context);
  proj_log_level(context, PJ_LOG_NONE);
  proj_context_set_enable_network(context, 0);
  grid.shift_.reset(proj_create_crs_to_crs(context, "EPSG:27700", "EPSG:4326", nullptr));
  if (!grid.shift_) {
    return Error{.what = "no known conversion from the British National Grid to WGS84",
                 .remedy = "install PROJ's data files (proj.db)"};
  }
  return grid;
}

Result<Position> OsGrid::position(const OsSquare& square) const {
  const double half_m = square.size_m / 2.0;
  // EPSG's axis order: easting, northing; then latitude, longitude.
  const PJ_COORD there =
      proj_trans(shift_.get(), PJ_FWD,
                 proj_coord(square.easting_m + half_m, square.northing_m + half_m, 0.0, HUGE_VAL));
  if (!std::isfinite(there.v[0]) || !std::isfinite(there.v[1])) {
    return Error{.what = "no known conversion of this grid reference to WGS84"};
  }
  return Position::at_deg(there.v[0], there.v[1]);
}

}  // namespace mastwise
