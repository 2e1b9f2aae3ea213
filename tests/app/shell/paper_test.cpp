#include "tests/support/pdf.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/stage.hpp"

#include <filesystem>
#include <fstream>

#include <catch2/catch.hpp>

// The paper card by touch.
using namespace mastwise;
using test::Stage;

TEST_CASE("a touch on Paper card saves the card and shows its path") {
  const test::TemporaryFolder folder;
  Stage stage(test::kTablet, folder.path());
  stage.tap("place Aim");
  stage.tap("plan");
  stage.tap("plan for all");
  stage.tap("paper card");
  const std::string file = stage.model().plan.paper_file;
  REQUIRE_FALSE(file.empty());
  CHECK(std::filesystem::path(file).parent_path() == folder / "cards");
  const std::string name = std::filesystem::path(file).filename().string();
  CHECK(name.find("card-2026-07-02T") == 0);  // the stage's clock
  CHECK(name.find(stage.model().stop.target->call_sign) != std::string::npos);
  CHECK(stage.shows_within(name));
  CHECK(test::read_file(file).substr(0, 5) == "%PDF-");
  CHECK(stage.model().trouble.empty());

  stage.tap("close sheet");
  CHECK(stage.model().plan.paper_file.empty());

  const auto read = test::read_pdf(file);
  if (!read) return;
  CHECK(read->pages == 1);
  CHECK(read->width_pt == Approx(612.0));  // Letter with miles
  CHECK(read->text.find("PRACTICE") != std::string::npos);
  CHECK(read->text.find("TURN PLAN") != std::string::npos);
  const auto& steps = stage.model().stations->plan->steps;
  REQUIRE_FALSE(steps.empty());
  CHECK(read->text.find(steps.front().brings.front().title) != std::string::npos);
}

TEST_CASE("a failed save of the card shows an error, and a later save works") {
  const test::TemporaryFolder folder;
  // A file is in the way of the card folder.
  std::ofstream(folder / "cards") << "in the way";
  Stage stage(test::kTablet, folder.path());
  stage.tap("place Aim");
  stage.tap("plan");
  stage.tap("paper card");
  CHECK(stage.model().plan.paper_file.empty());
  CHECK_FALSE(stage.model().plan.paper_wanted);
  CHECK(stage.model().trouble.find("cards") != std::string::npos);
  CHECK(stage.shows_within("annot"));

  std::filesystem::remove(folder / "cards");
  stage.tap("paper card");
  CHECK_FALSE(stage.model().plan.paper_file.empty());
  CHECK(stage.model().trouble.empty());
}

TEST_CASE("without a target the paper card is disabled") {
  Stage stage;
  stage.set(act::SetStop{
      Stop{.source = PositionSource::ByHand, .by_hand = *Position::at_deg(42.5, -118.5)}});
  stage.set(act::OpenSheet{Sheet::Plan});
  REQUIRE(stage.targets().find("paper card") != nullptr);
  CHECK_FALSE(stage.targets().find("paper card")->enabled);
  stage.set(act::SavePaper{});  // from a recording
  CHECK(stage.model().trouble.find("choose one under Stations") != std::string::npos);
}
