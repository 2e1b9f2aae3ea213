#pragma once

#include <string>
#include <utility>
#include <vector>

#include <sys/types.h>

namespace mastwise::test {

// The program as a child process, its environment ours but for the folder of its data.
class ChildProgram {
 public:
  // Starts build/mastwise with these arguments. `environment`: what else is set there.
  ChildProgram(const std::vector<std::string>& arguments, const std::string& data_folder,
               const std::vector<std::pair<std::string, std::string>>& environment = {});
  ~ChildProgram();
  ChildProgram(const ChildProgram&) = delete;
  ChildProgram& operator=(const ChildProgram&) = delete;

  pid_t id() const { return id_; }

  struct Ended {
    int status;  // of its exit; 128 and the signal's number where one killed it
    std::string output, errors;
  };
  // Reads what it writes until it ends.
  Ended wait();

 private:
  pid_t id_ = -1;
  int output_ = -1, errors_ = -1;
};

// Runs it to its end.
ChildProgram::Ended run_program(const std::vector<std::string>& arguments,
                                const std::string& data_folder);

}  // namespace mastwise::test
