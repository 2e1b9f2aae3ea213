#include "platform/tile_folder.hpp"
#include "tests/support/file_server.hpp"
#include "tests/support/publisher_files.hpp"
#include "tests/support/tablet.hpp"

#include <atomic>
#include <thread>

#include <catch2/catch.hpp>

// Fetching by touch from a server on this machine that has the publishers' layout.
using namespace mastwise;
using namespace mastwise::test;

namespace {

// One square has heights; the others are all at sea, as far as the server knows.
class HeightServer {
 public:
  std::string base() const { return server_.base(); }
  std::size_t requests() const { return server_.requests().size(); }
  std::size_t sent() const { return server_.sent(); }
  static constexpr std::size_t kCutAfter = 2000;
  std::atomic<int> status = 0;       // instead of files; 0: the files
  std::atomic<bool> cut = false;     // every answer after a few bytes
  std::atomic<bool> stalls = false;  // there, with the line open

 private:
  const std::string path_ = glo_90_path("N44", "W101");
  const std::string bytes_ = glo_90_bytes({44, -101});
  FileServer server_{[this](const HttpRequest& request) {
    if (status != 0) return HttpAnswer{.status = status, .body = "<html>"};
    if (request.path != path_) return HttpAnswer{.status = 404, .body = "<Error>"};
    HttpAnswer answer = file_answer(request, bytes_, "\"one\"");
    if (cut || stalls) answer.cut_after = kCutAfter;
    answer.stalls = stalls;
    return answer;
  }};
};

void open_data(Stage& stage) {
  if (stage.model().stop.practice) stage.set(act::SwitchPractice{});
  stand_at(stage, 44.5, -100.5);
  stage.set(act::OpenSheet{Sheet::Import});
}

const FetchOffer* offer_of(const Stage& stage, const std::string& id) {
  for (const FetchOffer& offer : stage.model().data.answer->offers) {
    if (offer.id == id) return &offer;
  }
  return nullptr;
}

}  // namespace

TEST_CASE("missing squares are named, and one touch after reading the offer fetches them") {
  const Tablet tablet;
  HeightServer server;
  Stage stage(kTablet, tablet.folder(), false, server.base());
  open_data(stage);
  REQUIRE(stage.model().data.found.squares);
  const std::size_t missing = stage.model().data.found.squares->missing;
  CHECK(missing == stage.model().data.found.squares->all);
  // Squares that lie within reach as a whole come first, the stop's own among them.
  CHECK(stage.model().data.found.squares->missing_cells.front() == "N44W100");
  CHECK(stage.shows_within("Missing: N44W100"));
  CHECK(stage.shows_within("N44W101"));
  CHECK(stage.shows_within("100 % of the ground within 90 mi"));

  stage.tap("get data");
  const FetchOffer* offer = offer_of(stage, "glo_90");
  REQUIRE(offer != nullptr);
  CHECK(offer->files == missing);
  CHECK(offer->usual_bytes == missing * 4'000'000);
  stage.tap("offer glo_90");
  // Source, license and size come before the act, and nobody was asked for them.
  CHECK(stage.shows_within("European Space Agency"));
  CHECK(stage.shows_within("free with notice"));
  CHECK(stage.shows_within("usually about"));
  CHECK(stage.shows_within("against its plan"));
  CHECK(stage.shows_within("127.0.0.1"));
  CHECK(server.requests() == 0);

  stage.tap("fetch now");
  REQUIRE(stage.model().data.report);
  REQUIRE(stage.model().data.report->fetched);
  const FetchReport& report = *stage.model().data.report->fetched;
  CHECK(report.files == 1);
  CHECK(report.cells == std::vector<std::string>{"N44W101"});
  CHECK(report.without_file == missing - 1);
  CHECK(server.requests() == missing);
  CHECK(stage.shows_within("N44W101"));
  CHECK(stage.shows_within("COPERNICUS"));
  CHECK(platform::TileFolder(tablet.path() / "terrain").tile({44, -101}));
  stage.tap("close sheet");
  stage.set(act::OpenSheet{Sheet::Import});
  CHECK(stage.model().data.found.squares->missing == missing - 1);

  // What the publisher does not have is not asked for again.
  stage.tap("get data");
  REQUIRE(offer_of(stage, "glo_90") != nullptr);
  CHECK(offer_of(stage, "glo_90")->files == 0);
  CHECK(offer_of(stage, "glo_90")->cells_empty == missing - 1);
  stage.tap("offer glo_90");
  CHECK_FALSE(stage.targets().find("fetch now")->enabled);
}

TEST_CASE("in a browser an offer says how to get the data, and nothing is fetched") {
  const Tablet tablet;
  Stage stage(kTablet, tablet.folder());
  open_data(stage);
  stage.set(act::InBrowser{});
  stage.tap("get data");
  CHECK(stage.shows_within("cannot download in a browser"));
  for (const auto& [id, advice] :
       {std::pair("glo_90", "make a pack there"), std::pair("us_lms", "in another tab")}) {
    stage.tap(std::string("offer ") + id);
    INFO(id);
    CHECK(stage.shows_within(advice));
    CHECK_FALSE(stage.shows_within("against its plan"));
    CHECK(stage.targets().find("fetch now") == nullptr);
    stage.tap("offer back");
  }
}

TEST_CASE("a fetch that fails says why, keeps what came and continues there") {
  const Tablet tablet;
  HeightServer server;
  Stage stage(kTablet, tablet.folder(), false, server.base());
  open_data(stage);
  stage.tap("get data");
  stage.tap("offer glo_90");
  server.status = 403;
  stage.tap("fetch now");
  CHECK_FALSE(stage.model().data.report);
  CHECK(stage.model().data.question.step == IntakeStep::Offers);
  CHECK(stage.shows_within("refuses this app"));
  CHECK(stage.shows_within("browser"));

  server.status = 0;
  server.cut = true;
  stage.tap("fetch now");
  CHECK_FALSE(stage.model().data.trouble.empty());
  const auto part = std::filesystem::directory_iterator(tablet.path() / "downloads");
  CHECK(std::any_of(begin(part), end(part), [](const auto& file) {
    return file.path().extension() == ".part" && file.file_size() > 0;
  }));
  server.cut = false;
  stage.tap("fetch now");
  REQUIRE(stage.model().data.report);
  CHECK(stage.model().data.report->fetched->files == 1);
}

TEST_CASE("Stop ends a fetch whose server has fallen silent, and the next one works") {
  const Tablet tablet;
  HeightServer server;
  server.stalls = true;
  Stage stage(kTablet, tablet.folder(), false, server.base());
  open_data(stage);
  stage.tap("get data");
  stage.tap("offer glo_90");
  // Not a tap, which waits until the worker is idle.
  stage.finger(SDL_FINGERDOWN, stage.middle_of("fetch now"));
  stage.round();
  stage.finger(SDL_FINGERUP, stage.middle_of("fetch now"));
  stage.round();
  REQUIRE(stage.model().data.question.step == IntakeStep::Fetching);
  while (server.sent() < HeightServer::kCutAfter) std::this_thread::sleep_for(milliseconds(5));
  stage.round();
  stage.tap("stop taking in");
  CHECK(stage.model().data.question.step == IntakeStep::Offers);
  CHECK_FALSE(stage.model().data.report);
  CHECK(stage.model().data.trouble.empty());

  server.stalls = false;
  stage.tap("fetch now");
  REQUIRE(stage.model().data.report);
  CHECK(stage.model().data.report->fetched->files == 1);
}

TEST_CASE("in practice and without a position only the stations are offered") {
  const Tablet tablet;
  Stage stage(kTablet, tablet.folder());
  REQUIRE(stage.model().stop.practice);
  stage.set(act::OpenSheet{Sheet::Import});
  stage.tap("get data");
  CHECK(offer_of(stage, "us_lms") != nullptr);
  CHECK(offer_of(stage, "glo_90") == nullptr);
  CHECK(stage.shows_within("End practice"));
  stage.tap("offer us_lms");
  CHECK(stage.shows_within("often refuses apps"));
  CHECK(stage.shows_within("public domain"));
  stage.tap("offer back");
  stage.tap("offers back");
  CHECK(stage.model().data.question.step == IntakeStep::Catalog);
}
