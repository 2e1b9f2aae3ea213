#include "tests/support/child_program.hpp"
#include "tests/support/temporary_folder.hpp"

#include <fstream>

#include <catch2/catch.hpp>

using namespace mastwise;

// A system may have the driver and lack the library that the drawing asks for by name.
TEST_CASE("without an OpenGL library a picture ends with an error, not with a crash") {
  const test::TemporaryFolder folder;
  std::ofstream(folder.file("libGL.so.1")).close();
  test::ChildProgram program({"shot", "aim", folder.file("aim.png")}, folder.file("data"),
                             {{"LD_LIBRARY_PATH", folder.path()}});
  const auto ended = program.wait();
  INFO(ended.errors);
  CHECK(ended.status == 1);
  CHECK(ended.errors.find("install the package libgl1") != std::string::npos);
}
