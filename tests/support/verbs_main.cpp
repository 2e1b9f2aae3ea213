#include "app/cli/verbs.hpp"

// The verbs that draw nothing, without the window's library: it links, so they need none.
int main(int argc, char* argv[]) {
  CLI::App program;
  mastwise::cli::Job chosen;
  mastwise::cli::add_card(program, chosen);
  mastwise::cli::add_compare(program, chosen);
  mastwise::cli::add_export(program, chosen);
  mastwise::cli::add_import(program, chosen);
  mastwise::cli::add_loss(program, chosen);
  mastwise::cli::add_plan(program, chosen);
  mastwise::cli::add_peak(program, chosen);
  mastwise::cli::add_places(program, chosen);
  mastwise::cli::add_replay(program, chosen);
  mastwise::cli::add_scan(program, chosen);
  mastwise::cli::add_survey(program, chosen);
  mastwise::cli::add_sun(program, chosen);
  CLI11_PARSE(program, argc, argv);
  return chosen && chosen() ? 0 : 1;
}
