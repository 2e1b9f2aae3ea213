#pragma once

#include "core/import/table_mapping.hpp"
#include "core/result.hpp"

#include <string_view>

namespace mastwise {

enum class Axis : std::uint8_t { latitude, longitude };

// The cells of one row that an AngleRule names; others are empty.
struct AngleCells {
  std::string_view whole = {};  // the degrees, or the angle in one cell
  std::string_view minutes = {};
  std::string_view seconds = {};
  std::string_view letter = {};
};

struct ReadAngle {
  double degrees = 0.0;  // north and east positive
  bool carried = false;  // 60 seconds were read as the next minute
};

// Reads a table's latitude or longitude. Minutes and seconds of 60 and more are refused, except for
// exactly 60 seconds if the rule carries them. The range of the degrees is not checked here.
Result<ReadAngle> read_angle(Axis axis, const AngleRule& rule, AngleCells cells,
                             bool decimal_comma);

}  // namespace mastwise
