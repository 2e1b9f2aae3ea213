#include "core/reception/prospect.hpp"

namespace mastwise::reception {

std::string_view to_text(PathMode mode) {
  switch (mode) {
    case PathMode::none:
      return "not computed";
    case PathMode::point_to_point:
      return "point to point";
    case PathMode::partial:
      return "partial";
    case PathMode::area:
      return "area";
  }
  return {};
}

}  // namespace mastwise::reception
