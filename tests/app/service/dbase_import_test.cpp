#include "app/service/known_tables.hpp"
#include "app/service/station_source.hpp"
#include "platform/dbase_table.hpp"
#include "tests/support/temporary_folder.hpp"

#include <fstream>
#include <memory>
#include <string>

#include <catch2/catch.hpp>
#include <ogrsf_frmts.h>

// Invented rows in the columns that the Canadian regulator's manual documents for TVSTATIO.DBF.
using namespace mastwise;

namespace {

struct CanadianRow {
  const char* call_sign;
  const char* banner;
  int latitude, longitude, channel, digital;
  double watts;
};

void write_table(const std::string& path, const std::vector<CanadianRow>& rows) {
  OGRRegisterAll();
  GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("ESRI Shapefile");
  REQUIRE(driver != nullptr);
  GDALDatasetUniquePtr file(driver->Create(path.c_str(), 0, 0, 0, GDT_Unknown, nullptr));
  REQUIRE(file);
  OGRLayer* layer = file->CreateLayer("TVSTATIO", nullptr, wkbNone, nullptr);
  REQUIRE(layer != nullptr);
  struct Column {
    const char* name;
    OGRFieldType type;
    int width, decimals;
  };
  for (const Column& column :
       {Column{"PROVINCE", OFTString, 2, 0}, Column{"CITY", OFTString, 20, 0},
        Column{"CALL_SIGN", OFTString, 12, 0}, Column{"LATITUDE", OFTInteger, 7, 0},
        Column{"LONGITUDE", OFTInteger, 8, 0}, Column{"BANNER", OFTString, 2, 0},
        Column{"ANT_MODE", OFTString, 1, 0}, Column{"EHAATT", OFTReal, 7, 1},
        Column{"ERPVPK", OFTReal, 10, 1}, Column{"ERPATA", OFTInteger, 1, 0},
        Column{"GROUND_LEV", OFTReal, 7, 1}, Column{"CHANNEL", OFTInteger, 4, 0}}) {
    OGRFieldDefn field(column.name, column.type);
    field.SetWidth(column.width);
    field.SetPrecision(column.decimals);
    REQUIRE(layer->CreateField(&field) == OGRERR_NONE);
  }
  for (const CanadianRow& row : rows) {
    const OGRFeatureUniquePtr feature(OGRFeature::CreateFeature(layer->GetLayerDefn()));
    feature->SetField("PROVINCE", "ON");
    feature->SetField("CITY", "PRACTICE, \"Lac\"");
    feature->SetField("CALL_SIGN", row.call_sign);
    feature->SetField("LATITUDE", row.latitude);
    feature->SetField("LONGITUDE", row.longitude);
    feature->SetField("BANNER", row.banner);
    feature->SetField("ANT_MODE", "D");
    feature->SetField("EHAATT", 299.5);
    feature->SetField("ERPVPK", row.watts);
    feature->SetField("ERPATA", row.digital);
    feature->SetField("GROUND_LEV", 82.0);
    feature->SetField("CHANNEL", row.channel);
    REQUIRE(layer->CreateFeature(feature.get()) == OGRERR_NONE);
  }
}

}  // namespace

TEST_CASE("a dBase table in Canada's documented columns is imported by its mapping") {
  const test::TemporaryFolder folder;
  const std::string path = folder.file("tvstatio.dbf");
  write_table(path, {{"QAAB-DT", "OP", 434133, 792315, 20, 1, 106'500.0},
                     {"QAAC-DT", "AU", 450000, 714405, 9, 1, 5'000.0},
                     {"QAAD", "OP", 434133, 792315, 5, 0, 100'000.0},
                     {"QAAE-DT", "AL", 434133, 792315, 30, 1, 100'000.0}});
  const auto head = sources::head_of(path);
  REQUIRE(head);
  INFO(*head);
  CHECK(head->starts_with("\"PROVINCE\",\"CITY\","));
  const auto way = sources::load_mapping("ca_tv_dbase");
  REQUIRE(way);
  auto catalog = Catalog::open(":memory:");
  REQUIRE(catalog);
  const auto report = sources::import_stations(path, *way, *catalog);
  REQUIRE(report);
  CHECK(*catalog->count() == 2);
  const auto found = catalog->with_call_sign("QAAB-DT");
  REQUIRE(found);
  REQUIRE(found->size() == 1);
  const Station& station = found->front();
  // 43 41 33 N, 79 23 15 W; NAD83 is WGS84 there to a meter.
  CHECK(station.position.latitude_deg() == Approx(43.0 + 41.0 / 60 + 33.0 / 3600).margin(1e-4));
  CHECK(station.position.longitude_deg() == Approx(-(79.0 + 23.0 / 60 + 15.0 / 3600)).margin(1e-4));
  CHECK(station.rf_channel.number == 20);
  CHECK(station.erp_kw == Approx(106.5));
  CHECK(station.city == "PRACTICE, \"Lac\"");
  CHECK(station.haat_m == Approx(299.5));
  CHECK(station.site_amsl_m == Approx(82.0));
}

TEST_CASE("a file that only looks like dBase is refused with its name") {
  const test::TemporaryFolder folder;
  for (const std::string& bytes : {std::string(), std::string("call_sign,rf_channel\n"),
                                   std::string("\x03\x7e\x01\x01\xff\xff\xff\x7f\xff\xff", 10)}) {
    const std::string path = folder.file("bad.dbf");
    std::ofstream(path, std::ios::binary) << bytes;
    const auto stream = platform::open_dbase(path);
    REQUIRE_FALSE(stream);
    CHECK(stream.error().where == path);
    CHECK_FALSE(stream.error().remedy.empty());
  }
  CHECK_FALSE(platform::open_dbase(folder.file("none.dbf")));
  CHECK_FALSE(platform::open_dbase("/vsicurl/http://127.0.0.1:9/a.dbf"));
}
