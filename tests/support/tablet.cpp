#include "tests/support/tablet.hpp"

#include "core/catalog/catalog.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>

#include <catch2/catch.hpp>

namespace mastwise::test {

std::string Tablet::table(const std::string& name, const std::string& text) const {
  std::filesystem::create_directories(data_ / "stick");
  std::ofstream(data_ / "stick" / name, std::ios::binary) << text;
  return (data_ / "stick" / name).string();
}

std::vector<Station> Tablet::with_call_sign(const std::string& call_sign) const {
  auto catalog = Catalog::open((data_ / "catalog").string());
  REQUIRE(catalog);
  auto found = catalog->with_call_sign(call_sign);
  REQUIRE(found);
  return *std::move(found);
}

void reach(Stage& stage, const std::string& name) {
  for (int drags = 0; drags < 40; ++drags) {
    const touch::Target* found = stage.targets().find(name);
    if (found != nullptr && found->visible_px().height() > 0.6f * found->rect_px.height()) return;
    const touch::Point from{200.0f, 500.0f};
    stage.drag(from, from - touch::Point{0.0f, 120.0f}, milliseconds(200));
    stage.settle();
  }
  FAIL("\"" << name << "\" is not in the list");
}

void pick(Stage& stage, const Tablet& tablet, const std::string& name) {
  if (stage.model().sheet != Sheet::None) stage.tap("close sheet");
  stage.set(act::Show{Place::Stations});
  stage.tap("data");
  stage.tap("import data");
  stage.tap("look in " + tablet.folder());
  stage.tap("folder stick");
  stage.tap("table " + name);
}

const IntakeReport& report_of(const Stage& stage) {
  REQUIRE(stage.model().data.question.step == IntakeStep::Report);
  REQUIRE(stage.model().data.report);
  return *stage.model().data.report;
}

std::string reading_of(const Stage& stage, const std::string& part) {
  for (const IntakeRow& row : stage.model().data.found.rows) {
    if (row.part == part) return row.value;
  }
  return "no such part";
}

void stand_at(Stage& stage, double latitude_deg, double longitude_deg) {
  stage.set(act::SetStop{Stop{.source = PositionSource::ByHand,
                              .by_hand = *Position::at_deg(latitude_deg, longitude_deg)}});
}

std::vector<std::string> listed(const Stage& stage) {
  std::vector<std::string> call_signs;
  REQUIRE(stage.model().stations);
  for (const StationRow& row : stage.model().stations->rows) {
    call_signs.push_back(row.station.call_sign);
  }
  std::sort(call_signs.begin(), call_signs.end());
  return call_signs;
}

}  // namespace mastwise::test
