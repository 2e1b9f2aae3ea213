#include "tests/support/folders.hpp"

namespace mastwise::test {

std::string source_folder() {
  return MASTWISE_SOURCE_DIR;
}
std::string build_folder() {
  return MASTWISE_BUILD_DIR;
}

}  // namespace mastwise::test
