#include "app/session/action_json.hpp"
#include "core/text/json_text.hpp"
#include "tests/fuzz/model/world.hpp"

#include <algorithm>

using namespace mastwise;

namespace {

// An action read, written and read again is written the same.
void check_written(const Action& action) {
  const auto json = to_json(action);
  const auto text = json.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
  const auto again = action_from_json(read_json(text));
  fuzz::require(again && again->name() == action.name());
  fuzz::require(to_json(*again).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace) ==
                text);
}

}  // namespace

// Any lines as a recording, played on a new model: each line is refused with a reason, or it is an
// action, and after all of them the model holds numbers and survives a restart.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Model model = fuzz::new_model();
  derive_all(model, fuzz::world());
  std::string_view rest = fuzz::text_of(data, size);
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    const auto action = action_from_json(read_json(rest.substr(0, end)));
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (!fuzz::read_or_told(action)) continue;
    check_written(*action);
    apply(model, *action, fuzz::world());
  }
  static_cast<void>(to_json(model));
  fuzz::check(model);
  return 0;
}
