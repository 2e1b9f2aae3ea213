#include "app/shell/recording.hpp"

#include "app/session/action_json.hpp"
#include "core/text/json_text.hpp"
#include "platform/files.hpp"

#include <sstream>

#include <fmt/format.h>

namespace mastwise::shell {

Result<Recorder> Recorder::begin(const std::string& path) {
  std::ofstream file(path, std::ios::binary);
  if (file) return Recorder(std::move(file));
  return Error{.what = "cannot write the recording",
               .where = path,
               .remedy = "choose a file in a writable folder"};
}

// Text of systems and tables may not be UTF-8, but JSON is: such bytes are replaced.
void Recorder::record(const Action& action) {
  using nlohmann::json;
  file_ << to_json(action).dump(-1, ' ', false, json::error_handler_t::replace) << std::endl;
}

Result<std::vector<Action>> read_recording(const std::string& path) {
  const auto text = platform::read_file(path);
  if (!text) return text.error();
  std::vector<Action> actions;
  std::istringstream lines(*text);
  std::size_t number = 0;
  for (std::string line; std::getline(lines, line);) {
    ++number;
    auto action = action_from_json(read_json(line));
    if (!action) {
      Error error = action.error();
      error.where = fmt::format("{}, line {}", path, number);
      return error;
    }
    actions.push_back(*std::move(action));
  }
  return actions;
}

}  // namespace mastwise::shell
