#include "tests/support/child_program.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <chrono>
#include <filesystem>
#include <fstream>
#include <string>
#include <thread>

#include <catch2/catch.hpp>
#include <signal.h>

// The program itself, with its window in memory.
using namespace mastwise;

namespace {

constexpr std::pair<const char*, const char*> kOffscreen{"SDL_VIDEODRIVER", "offscreen"};

}  // namespace

TEST_CASE("the window opens, runs and closes when it is asked to") {
  const test::TemporaryFolder folder;
  const std::string record = folder.file("record");
  test::ChildProgram program({"--record", record, "--size", "800x480"}, folder.file("data"),
                             {kOffscreen});
  // A tick comes with every step after the first picture.
  const auto ticks = [&] {
    return std::filesystem::exists(record) &&
           test::read_file(record).find("\"Tick\"") != std::string::npos;
  };
  for (int i = 0; i < 1200 && !ticks(); ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds(50));
  }
  CHECK(ticks());
  kill(program.id(), SIGTERM);
  const auto ended = program.wait();
  INFO(ended.errors);
  CHECK(ended.status == 0);
  CHECK(ended.errors.empty());
}

TEST_CASE("a failure behind the window ends the program with the reason") {
  const test::TemporaryFolder folder;
  std::ofstream(folder.file("data")) << "a file where the folder should be";
  const auto ended = test::ChildProgram({}, folder.file("data"), {kOffscreen}).wait();
  INFO(ended.errors);
  CHECK(ended.status == 1);
  CHECK(ended.errors.find(folder.file("data")) != std::string::npos);
}

TEST_CASE("without a screen the program ends with the reason") {
  const test::TemporaryFolder folder;
  const auto ended =
      test::ChildProgram({}, folder.file("data"), {{"SDL_VIDEODRIVER", "none of these"}}).wait();
  CHECK(ended.status == 1);
  CHECK(ended.errors.find("no screen to draw on") != std::string::npos);
}
