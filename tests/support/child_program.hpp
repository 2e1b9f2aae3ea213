#pragma once

#include <string>
#include <utility>
#include <vector>

#include <sys/types.h>

namespace mastwise::test {

// Mastwise as a child process, with our environment except for its data folder.
class ChildProgram {
 public:
  // Starts build/mastwise, or what MASTWISE_PROGRAM names, with these arguments. `environment`:
  // more variables to set.
  ChildProgram(const std::vector<std::string>& arguments, const std::string& data_folder,
               const std::vector<std::pair<std::string, std::string>>& environment = {});
  ~ChildProgram();
  ChildProgram(const ChildProgram&) = delete;
  ChildProgram& operator=(const ChildProgram&) = delete;

  pid_t id() const { return id_; }

  struct Ended {
    int status;  // exit status; 128 plus the signal's number if one killed it
    std::string output, errors;
  };
  // Reads its output until it ends.
  Ended wait();

 private:
  pid_t id_ = -1;
  int output_ = -1, errors_ = -1;
};

// Runs it to its end.
ChildProgram::Ended run_program(const std::vector<std::string>& arguments,
                                const std::string& data_folder);

}  // namespace mastwise::test
