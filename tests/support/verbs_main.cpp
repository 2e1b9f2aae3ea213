#include "app/cli/verbs.hpp"
#include "platform/start.hpp"

// The verbs that draw nothing, without the window's library: it links, so they need none.
int main(int argc, char* argv[]) {
  argv = mastwise::platform::start_program(argc, argv);
  CLI::App program;
  mastwise::cli::Job chosen;
  mastwise::cli::add_verbs(program, chosen);
  CLI11_PARSE(program, argc, argv);
  return chosen && chosen() ? 0 : 1;
}
