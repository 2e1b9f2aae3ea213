#pragma once

#include <string_view>

#include <nlohmann/json.hpp>

namespace mastwise {

// Whether a JSON text nests deeper than anything that Mastwise writes. Copying and writing such a
// value recurses and would overflow the stack.
bool nests_too_deep(std::string_view json);

// The value of a text that may be damaged or hostile; discarded (see nlohmann's is_discarded()) if
// it is not JSON or nests too deep.
nlohmann::json read_json(std::string_view text);

}  // namespace mastwise
