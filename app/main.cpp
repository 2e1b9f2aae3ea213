#include "app/shell/verbs.hpp"
#include "platform/start.hpp"

#include <iostream>

// 0: done. 1: refused, with the reason in one line on standard error. 2: wrong usage.
int main(int argc, char* argv[]) {
  argv = mastwise::platform::start_program(argc, argv);
  CLI::App program{"Which way to turn the TV antenna at tonight's stop"};
  program.set_version_flag("--version", MASTWISE_VERSION);
  program.allow_windows_style_options(false);  // "/path" is a path
  program.require_subcommand(0, 1);
  program.get_formatter()->column_width(34);
  mastwise::cli::Job chosen;
  mastwise::cli::add_window(program, chosen);
  mastwise::cli::add_verbs(program, chosen);
  mastwise::cli::add_shot(program, chosen);
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    constexpr int kWrongUsage = 2;
    return program.exit(error) == 0 ? 0 : kWrongUsage;
  }
  const auto done = chosen();
  if (done) return 0;
  std::cerr << "mastwise: " << done.error().message() << '\n';
  return 1;
}
