#include "core/catalog/catalog.hpp"
#include "core/import/import_csv.hpp"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

const std::string kHeader = "call_sign,raster,rf_channel,latitude_deg,longitude_deg,erp_kw\n";

class Renewed {
 public:
  ImportReport import(const std::string& rows, const ImportFocus& focus = {}) {
    const auto table = read_station_csv(kHeader + rows, {"stations", ""});
    REQUIRE(table);
    auto report = catalog_->replace_source(*table, {}, focus);
    REQUIRE(report);
    return *report;
  }

 private:
  Result<Catalog> catalog_ = Catalog::open(":memory:");
};

const StationChange* change_of(const ImportReport& report, const std::string& call_sign) {
  for (const StationChange& change : report.changes) {
    if (change.call_sign == call_sign) return &change;
  }
  return nullptr;
}

using Kind = StationChange::Kind;

}  // namespace

TEST_CASE("a new table is told station by station: new, gone, channel, power, site") {
  Renewed catalog;
  const auto first = catalog.import(
      "QAAB,ATSC,23,44,-100,100\nQAAC,ATSC,9,45,-100,10\nQAAD,ATSC,10,46,-100,10\n"
      "QAAE,ATSC,11,0,0,10\n");
  CHECK_FALSE(first.renews);
  CHECK(first.stations_added == 4);
  CHECK(first.changes.empty());
  CHECK(changes_not_listed(first) == 0);
  // A degree of the meridian at the equator is 110.574 km [WGS84: a (1 - e^2) pi / 180], so 0.001
  // degrees are 110.57 m. Half the power is 3.01 dB.
  const auto report = catalog.import(
      "QAAB,ATSC,31,44,-100,100\nQAAC,ATSC,9,45,-100,5\nQAAE,ATSC,11,0.001,0,10\n"
      "QAAF,ATSC,12,1,1,\n");
  CHECK(report.renews);
  CHECK(report.stations_added == 1);
  CHECK(report.stations_gone == 1);
  CHECK(report.stations_changed == 3);
  CHECK(report.stations_changed_notably == 3);
  CHECK(report.stations_on_other_channel == 1);
  CHECK(report.stations_of_other_power == 1);
  CHECK(report.stations_moved == 1);
  CHECK(report.stations_renamed == 0);
  REQUIRE(report.changes.size() == 5);
  CHECK(changes_not_listed(report) == 0);
  const auto* channel = change_of(report, "QAAB");
  REQUIRE(channel != nullptr);
  CHECK(channel->kind == Kind::changed);
  CHECK(channel->rf_channel == RfChannel{31});
  CHECK(channel->rf_channel_before == RfChannel{23});
  CHECK_FALSE(channel->erp_kw_before);
  const auto* power = change_of(report, "QAAC");
  REQUIRE(power != nullptr);
  CHECK(power->erp_kw == 5.0);
  CHECK(power->erp_kw_before == 10.0);
  CHECK(power->moved_m == 0.0);
  const auto* site = change_of(report, "QAAE");
  REQUIRE(site != nullptr);
  CHECK(site->moved_m == Approx(110.57).margin(0.01));
  CHECK(change_of(report, "QAAD")->kind == Kind::gone);
  CHECK(change_of(report, "QAAF")->kind == Kind::added);
}

TEST_CASE("a figure that was rounded otherwise is no change of power or site") {
  Renewed catalog;
  catalog.import("QAAB,ATSC,23,0,0,100\n");
  // 0.0008 degrees of the meridian are 88.5 m; 95 kW is 0.22 dB less than 100.
  const auto report = catalog.import("QAAB,ATSC,23,0.0008,0,95\n");
  CHECK(report.stations_changed == 1);
  CHECK(report.stations_changed_notably == 0);
  CHECK(report.changes.empty());
  CHECK(changes_not_listed(report) == 0);
}

TEST_CASE("the changes nearest to the stop come first, and the rest is counted") {
  Renewed catalog;
  std::string rows;
  for (int i = 0; i < 70; ++i) {
    rows += "QA" + std::to_string(i) + ",ATSC,9," + std::to_string(10 + i % 60) + ",-100,1\n";
  }
  catalog.import("QZZZ,ATSC,9,0,0,1\n");
  const auto report = catalog.import(rows, {.near = *Position::at_deg(29.9, -100.0), .most = 3});
  CHECK(report.stations_added == 70);
  REQUIRE(report.changes.size() == 3);
  CHECK(changes_not_listed(report) == 68);
  // 0.1 degrees of the meridian at 30 degrees north are 11.09 km [WGS84].
  CHECK(report.changes[0].call_sign == "QA20");
  CHECK(report.changes[0].distance_m == Approx(11'085.0).margin(5.0));
  CHECK(report.changes[1].call_sign == "QA19");
  CHECK(report.changes[2].call_sign == "QA21");
}

TEST_CASE("two stations of one call sign are each matched once when their channels change") {
  Renewed catalog;
  catalog.import("QAAB,ATSC,23,44,-100,1\nQAAB,ATSC,24,45,-100,1\nQAAC,ATSC,9,1,1,1\n");
  const auto report = catalog.import("QAAB,ATSC,33,44,-100,1\nQAAC,ATSC,9,1,1,1\n");
  CHECK(report.stations_on_other_channel == 1);
  CHECK(report.stations_gone == 1);
  CHECK(report.stations_added == 0);
  CHECK(report.stations_unchanged == 1);
  CHECK(report.changes.size() == 2);
}
