#include "tests/support/child_program.hpp"
#include "tests/support/file_server.hpp"
#include "tests/support/temporary_folder.hpp"
#include "tests/support/verb_arguments.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using test::contains;

TEST_CASE("fetch tells what, from whom and how much before it asks anybody") {
  const test::TemporaryFolder folder;
  test::FileServer server([](const test::HttpRequest&) { return test::HttpAnswer{.status = 404}; });
  const test::Arguments terrain{"fetch",         "terrain", "--bbox",
                                "44,-73,45,-71", "--base",  server.base()};
  const auto dry = test::run_program(test::with(terrain, {"--dry-run"}), folder.file("data"));
  INFO(dry.errors);
  CHECK(dry.status == 0);
  CHECK(contains(dry.output, "Copernicus DEM GLO-90, from: European Space Agency"));
  CHECK(contains(dry.output, "(c) DLR e.V. 2010-2014"));
  CHECK(contains(dry.output, "To fetch: 2 files, usually about 8.0 MB"));
  CHECK(contains(dry.output, server.base() + "/Copernicus_DSM_COG_30_N44_00_W073_00_DEM/"));
  CHECK(server.requests().empty());

  const auto sea = test::run_program(test::with(terrain, {"--yes"}), folder.file("data"));
  INFO(sea.errors);
  CHECK(sea.status == 0);
  CHECK(contains(sea.output, "No file there: Copernicus_DSM_COG_30_N44_00_W072_00_DEM.tif"));
  CHECK(server.requests().size() == 2);
}

TEST_CASE("fetch says how to get a dump by hand, and what is wrong with its options") {
  const test::TemporaryFolder folder;
  const auto run = [&](const test::Arguments& arguments) {
    return test::run_program(arguments, folder.file("data"));
  };
  const auto dump = run({"fetch", "stations", "--dry-run"});
  CHECK(dump.status == 0);
  CHECK(contains(dump.output,
                 "open the address in a browser and save the file, then run mastwise "
                 "import stations FILE --mapping us_lms"));
  const auto set = run({"fetch", "terrain", "--bbox", "44,-73,45,-71", "--set", "worldcover"});
  CHECK(set.status == 1);
  CHECK(contains(set.errors, "choose one of: glo_90, glo_30"));
  const auto nowhere = run({"fetch", "landcover"});
  CHECK(nowhere.status == 2);
  CHECK(contains(nowhere.errors, "--around PLACE"));
  const auto elsewhere =
      run({"fetch", "terrain", "--bbox", "44,-73,45,-71", "--yes", "--base", "http://192.0.2.1"});
  CHECK(elsewhere.status == 1);
  CHECK(contains(elsewhere.errors, "only https"));
}
