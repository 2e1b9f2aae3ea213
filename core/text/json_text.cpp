#include "core/text/json_text.hpp"

#include <cstddef>

namespace mastwise {

bool nests_too_deep(std::string_view json) {
  constexpr std::size_t kDeepest = 64;  // steps of Undo, the deepest, have a dozen levels
  std::size_t depth = 0;
  bool quoted = false;
  for (std::size_t at = 0; at < json.size(); ++at) {
    const char c = json[at];
    if (c == '"') quoted = !quoted;
    if (quoted && c == '\\') ++at;
    if (quoted) continue;
    if ((c == '[' || c == '{') && ++depth > kDeepest) return true;
    if ((c == ']' || c == '}') && depth > 0) --depth;
  }
  return false;
}

nlohmann::json read_json(std::string_view text) {
  if (nests_too_deep(text)) return nlohmann::json(nlohmann::json::value_t::discarded);
  return nlohmann::json::parse(text.begin(), text.end(), nullptr, false);
}

}  // namespace mastwise
