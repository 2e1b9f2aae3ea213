#pragma once

#include "app/session/action.hpp"
#include "core/result.hpp"

#include <fstream>
#include <string>

namespace mastwise::shell {

// Writes a session's actions into a file, one JSON object a line.
class Recorder {
 public:
  static Result<Recorder> begin(const std::string& path);
  void record(const Action& action);

 private:
  explicit Recorder(std::ofstream file) : file_(std::move(file)) {}
  std::ofstream file_;
};

// The actions of a recording, in order. The error names the line.
Result<std::vector<Action>> read_recording(const std::string& path);

}  // namespace mastwise::shell
