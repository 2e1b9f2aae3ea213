#include "core/landcover/class_table.hpp"

#include "tests/support/folders.hpp"
#include "tests/support/reference.hpp"

#include <string>

#include <catch2/catch.hpp>

namespace mastwise::landcover {
namespace {

ClassTable built_in(const std::string& name) {
  const auto table =
      read_class_table(test::read_file(test::source_folder() + "/assets/landcover/" + name));
  REQUIRE(table);
  return *table;
}

std::vector<ClassTable> all_built_in() {
  return {built_in("copernicus_lc100.json"), built_in("esa_worldcover.json"),
          built_in("nlcd.json")};
}

RasterTraits with_codes(std::initializer_list<int> codes) {
  RasterTraits traits{.file_name = "cover.tif"};
  for (const int code : codes) traits.codes[static_cast<std::size_t>(code)] = true;
  return traits;
}

std::string table_text(const std::string& rest) {
  return R"({"name": "N", "notice": "(c) N", )" + rest + "}";
}

}  // namespace

TEST_CASE("the built-in class tables have the published codes") {
  // ESA WorldCover Product User Manual; the default links to P.1812's categories that the reference
  // data quotes: 10 and 50 to urban, trees and forest, 80 to water, the rest open.
  const ClassTable esa = built_in("esa_worldcover.json");
  CHECK(esa.rows.size() == 11);
  CHECK(esa.of(10) == CoverClass::trees);
  CHECK(esa.of(50) == CoverClass::urban);
  CHECK(esa.of(80) == CoverClass::water);
  for (const int code : {20, 30, 40, 60, 70, 90, 100}) {
    CHECK(esa.of(static_cast<std::uint8_t>(code)) == CoverClass::open);
  }
  // NLCD legend, the codes in the reference data.
  const ClassTable nlcd = built_in("nlcd.json");
  CHECK(nlcd.rows.size() == 20);
  for (const int code : {41, 42, 43, 90}) {
    CHECK(nlcd.of(static_cast<std::uint8_t>(code)) == CoverClass::trees);
  }
  CHECK(nlcd.of(11) == CoverClass::water);
  CHECK(nlcd.of(21) == CoverClass::open);
  CHECK(nlcd.of(22) == CoverClass::suburban);
  CHECK(nlcd.of(24) == CoverClass::urban);
  // CGLS-LC100 Product User Manual: 6 closed and 6 open forests, 9 others and the open sea.
  const ClassTable cgls = built_in("copernicus_lc100.json");
  CHECK(cgls.rows.size() == 22);
  for (const int code : {111, 112, 113, 114, 115, 116, 121, 122, 123, 124, 125, 126}) {
    CHECK(cgls.of(static_cast<std::uint8_t>(code)) == CoverClass::trees);
  }
  CHECK(cgls.of(200) == CoverClass::water);
  for (const ClassTable& table : all_built_in()) {
    CHECK(table.of(0) == CoverClass::unknown);
    CHECK(table.of(1) == CoverClass::unknown);
    CHECK_FALSE(table.lists(1));
    CHECK(table.lists(0));
  }
}

TEST_CASE("a raster is recognized by name, by colors, or by its codes") {
  const auto tables = all_built_in();
  const auto name_of = [&](const RasterTraits& traits, const char* chosen = "") {
    const auto found = recognize(tables, traits, chosen);
    return found ? tables[*found].name : found.error().message();
  };
  auto named = with_codes({80});
  named.file_name = "esa_worldcover_10m_2021_v200_N00E006_Map.tif";
  CHECK(name_of(named) == "ESA WorldCover");
  auto colored = with_codes({30, 80});
  colored.palette.resize(256);
  for (const auto& [code, row] : tables[1].rows) colored.palette[code] = *row.color;
  CHECK(name_of(colored) == "ESA WorldCover");
  CHECK(name_of(with_codes({11, 21, 42})) == "NLCD");
  CHECK(name_of(with_codes({20, 111, 126})) == "Copernicus LC100");
  CHECK(name_of(with_codes({10, 30, 95})) == "ESA WorldCover");
}

TEST_CASE("a raster that fits no table, or several, is not guessed") {
  const auto tables = all_built_in();
  const auto told = [&](const RasterTraits& traits, const char* chosen = "") {
    const auto found = recognize(tables, traits, chosen);
    REQUIRE_FALSE(found);
    CHECK(found.error().remedy.find("NLCD") != std::string::npos);
    return found.error().what;
  };
  // Copernicus and WorldCover share these.
  CHECK(told(with_codes({30, 40, 50, 80})).find("30, 40, 50, 80") != std::string::npos);
  CHECK(told(with_codes({1, 2, 3, 4, 5})).find("1, 2, 3, 4, 5") != std::string::npos);
  told(with_codes({11, 42}));
  // The name does not count against the codes.
  auto misnamed = with_codes({1, 2, 3});
  misnamed.file_name = "nlcd_2021.tif";
  told(misnamed);
  CHECK(told(with_codes({11, 42}), "ESA WorldCover").find("not those of") != std::string::npos);
  CHECK(told(with_codes({11, 42}), "Atlas").find("not a class table") != std::string::npos);
  CHECK(*recognize(tables, with_codes({11, 42}), "nlcd") == 2);
}

TEST_CASE("the commonest class wins, in a tie the one that shields more") {
  const auto of = [](std::array<std::uint32_t, kCoverClasses> votes) { return commonest(votes); };
  CHECK(of({0, 40, 60, 0, 0, 0, 0}) == CoverClass::open);
  CHECK(of({0, 0, 50, 0, 50, 0, 0}) == CoverClass::trees);
  CHECK(of({0, 0, 0, 0, 50, 50, 0}) == CoverClass::urban);
  CHECK(of({50, 30, 20, 0, 0, 0, 0}) == CoverClass::water);
  CHECK(of({51, 49, 0, 0, 0, 0, 0}) == CoverClass::unknown);
  CHECK(of({}) == CoverClass::unknown);
}

TEST_CASE("a faulty class table is refused with place and reason") {
  const auto refused = [](const std::string& text, const char* why) {
    const auto table = read_class_table(text);
    REQUIRE_FALSE(table);
    INFO(table.error().message());
    CHECK(table.error().message().find(why) != std::string::npos);
    CHECK(table.error().where.find("class table") != std::string::npos);
  };
  const std::string classes = R"("classes": {"10": {"name": "Trees", "class": "trees"}})";
  CHECK(read_class_table(table_text(classes)));
  refused("{", "not valid JSON");
  refused("[]", "not an object");
  refused("{}", "\"name\" is missing");
  refused(table_text(R"("classes": {})"), "no classes");
  refused(table_text(R"("classes": {"256": {"name": "T", "class": "trees"}})"), "256");
  refused(table_text(R"("classes": {"-1": {"name": "T", "class": "trees"}})"), "-1");
  refused(table_text(R"("classes": {"1": {"name": "T", "class": "forest"}})"), "dense urban");
  refused(table_text(R"("classes": {"1": {"name": "T", "class": "unknown"}})"), "unknown");
  refused(table_text(R"("classes": {"1": {"name": "T", "class": "trees", "color": "green"}})"),
          "#006400");
  refused(table_text(R"("no_data": [10], )" + classes), "twice");
  refused(table_text(R"("no_data": [300], )" + classes), "0 to 255");
  refused(table_text(R"("files": [""], )" + classes), "files");
  refused(table_text(R"("colors": 1, )" + classes), "not known");
  refused(R"({"name": "N", "notice": "two\nlines", )" + classes + "}", "one line");
}

}  // namespace mastwise::landcover
