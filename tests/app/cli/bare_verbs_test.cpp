#include "tests/support/child_program.hpp"
#include "tests/support/temporary_folder.hpp"
#include "tests/support/verb_arguments.hpp"

#include <sstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

// README: the exit status is 0, 1 for a refusal with one line that says why, or 2 for wrong usage.
// A verb without what it cannot do without is wrong usage; it is never a refusal.
using namespace mastwise;
using test::Arguments;

namespace {

// The names below "Subcommands:" of a help text.
std::vector<std::string> subcommands(const std::string& help) {
  std::vector<std::string> names;
  std::istringstream lines(help.substr(std::min(help.size(), help.find("Subcommands:"))));
  for (std::string line; std::getline(lines, line);) {
    if (line.size() > 2 && line.starts_with("  ") && line[2] != ' ') {
      names.push_back(line.substr(2, line.find(' ', 2) - 2));
    }
  }
  return names;
}

}  // namespace

TEST_CASE("a bare verb either works or is wrong usage, never a refusal") {
  const test::TemporaryFolder folder;
  std::size_t worked = 0, wrong = 0;
  const auto run = [&](const Arguments& arguments) {
    return test::run_program(arguments, folder.file("data"));
  };
  const auto check = [&](const Arguments& bare) {
    const auto ended = run(bare);
    INFO(bare.front() << (bare.size() > 1 ? " " + bare[1] : "") << ": " << ended.errors);
    CHECK((ended.status == 0 || ended.status == 2));
    CHECK(ended.errors.empty() == (ended.status == 0));
    ++(ended.status == 0 ? worked : wrong);
  };
  const auto verbs = subcommands(run({"--help"}).output);
  REQUIRE(verbs.size() >= 15);
  for (const std::string& verb : verbs) {
    check({verb});
    for (const std::string& part : subcommands(run({verb, "--help"}).output)) check({verb, part});
  }
  CHECK(worked >= 4);
  CHECK(wrong >= 15);
}

TEST_CASE("what a verb cannot do without is named") {
  const test::TemporaryFolder folder;
  struct Lacking {
    Arguments arguments;
    const char* named;
  };
  for (const Lacking& one :
       {Lacking{{"ground"}, "--at"}, Lacking{{"export", "logbook"}, "--csv"},
        Lacking{{"compare"}, "--network"}, Lacking{{"compare", "--network", "n"}, "--at"},
        Lacking{{"places"}, "--nearest"}, Lacking{{"card", "--plan"}, "--pdf"}}) {
    const auto ended = test::run_program(one.arguments, folder.file("data"));
    INFO(one.arguments.front() << ": " << ended.errors);
    CHECK(ended.status == 2);
    CHECK(ended.output.empty());
    CHECK(test::contains(ended.errors, one.named));
  }
}
