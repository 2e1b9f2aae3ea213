#include "core/import/mapping_parts.hpp"

#include "core/import/import_table.hpp"

#include <algorithm>
#include <set>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

// PRACTICE: invented.
const std::string kTable =
    "Call,Alt,Chan,Lat,Lat2,Hemi,Lon,Power,HAAT,DA\n"
    "QAAB,QXXB,23,44.5,45.5,S,100.25,10,0,DA\n"
    "QAAC,QXXC,9,44.6,45.6,S,101.5,5,120,maybe\n";
const std::vector<std::string> kColumns{"Call", "Alt", "Chan",  "Lat",  "Lat2",
                                        "Hemi", "Lon", "Power", "HAAT", "DA"};

GuessedMapping guessed() {
  auto guess = guess_mapping(kTable, {"a table", ""});
  if (!guess) FAIL(guess.error().message());
  return std::move(guess).value();
}

const MappingPart* find(const std::vector<MappingPart>& parts, const std::string& name) {
  const auto found = std::find_if(parts.begin(), parts.end(),
                                  [&](const MappingPart& part) { return part.name == name; });
  return found == parts.end() ? nullptr : &*found;
}

std::string value(const TableMapping& mapping, const std::string& part) {
  const auto parts = mapping_parts(mapping);
  const MappingPart* found = find(parts, part);
  return found == nullptr ? "no part" : found->value;
}

StationTable read(const TableMapping& mapping) {
  auto table = read_station_table(kTable, mapping);
  if (!table) FAIL(table.error().message());
  return std::move(table).value();
}

}  // namespace

TEST_CASE("every part has its value among its readings, and every doubt its part") {
  const GuessedMapping guess = guessed();
  const auto parts = mapping_parts(guess.mapping);
  std::set<std::string> names;
  for (const MappingPart& part : parts) {
    INFO(part.name);
    CHECK(names.insert(part.name).second);
    const auto& readings = part.readings;
    if (!readings.empty()) {
      CHECK(std::find(readings.begin(), readings.end(), part.value) != readings.end());
    }
  }
  REQUIRE_FALSE(guess.doubts.empty());
  for (const Doubt& doubt : guess.doubts) {
    INFO(part_of(doubt));
    CHECK(find(parts, part_of(doubt)) != nullptr);
  }
}

TEST_CASE("each reading of each part can be chosen and saved, and the table still reads") {
  const TableMapping begun = guessed().mapping;
  for (const MappingPart& part : mapping_parts(begun)) {
    for (const std::string& reading : part.readings) {
      INFO(part.name << " " << reading);
      TableMapping mapping = begun;
      correct(mapping, part.name, reading, kColumns);
      CHECK(value(mapping, part.name) == reading);
      // On 2026-11-30 the fuzzer found a grid reference for one axis alone, which cannot be saved.
      CHECK(parse_table_mapping(to_json(mapping)));
      CHECK(read_station_table(kTable, mapping));
    }
  }
}

TEST_CASE("another column, sign, unit or datum moves and changes the stations accordingly") {
  TableMapping mapping = guessed().mapping;
  CHECK(read(mapping).stations.front().position.longitude_deg() == Approx(100.25));
  correct(mapping, "longitude.sign", "west", kColumns);
  CHECK(read(mapping).stations.front().position.longitude_deg() == Approx(-100.25));
  correct(mapping, "latitude", "Lat2", kColumns);
  CHECK(read(mapping).stations.front().position.latitude_deg() == Approx(45.5));
  correct(mapping, "call_sign", "Alt", kColumns);
  CHECK(read(mapping).stations.front().call_sign == "QXXB");
  correct(mapping, "erp_kw.unit", "W", kColumns);
  CHECK(*read(mapping).stations.front().erp_kw == Approx(0.01));
  correct(mapping, "erp_kw", "", kColumns);
  CHECK_FALSE(read(mapping).stations.front().erp_kw);
  CHECK(value(mapping, "erp_kw.unit") == "no part");
  correct(mapping, "haat_m", "HAAT", kColumns);
  correct(mapping, "haat_m.zero", "as it is", kColumns);
  CHECK(read(mapping).stations.front().haat_m == 0.0);
  correct(mapping, "haat_m.zero", "not known", kColumns);
  CHECK_FALSE(read(mapping).stations.front().haat_m);
  correct(mapping, "heights.unit", "ft", kColumns);
  CHECK(*read(mapping).stations.back().haat_m == Approx(120.0 * 0.3048));
  // An unforeseen word costs the field, not the row.
  correct(mapping, "directional", "DA", kColumns);
  CHECK(read(mapping).stations.front().directional == true);
  CHECK_FALSE(read(mapping).stations.back().directional);
}

TEST_CASE("a hemisphere letter in a separate column is found after the angle") {
  TableMapping mapping = guessed().mapping;
  correct(mapping, "latitude", "Lat2", kColumns);
  correct(mapping, "latitude.sign", "by a letter in a column", kColumns);
  CHECK(value(mapping, "latitude.letter") == "Hemi");
  CHECK(read(mapping).stations.front().position.latitude_deg() == Approx(-45.5));
  correct(mapping, "latitude.sign", "north", kColumns);
  CHECK(value(mapping, "latitude.letter") == "no part");
  CHECK(read(mapping).stations.front().position.latitude_deg() == Approx(45.5));
}

TEST_CASE("an unknown part or column, or dropping a required one, changes nothing") {
  const TableMapping begun = guessed().mapping;
  TableMapping mapping = begun;
  for (const auto& [part, other] :
       std::vector<std::pair<std::string, std::string>>{{"call_sign", ""},
                                                        {"rf_channel", ""},
                                                        {"latitude", ""},
                                                        {"latitude", "Nowhere"},
                                                        {"call_sign", "Nowhere"},
                                                        {"longitude.sign", "up"},
                                                        {"longitude.notation", "roman"},
                                                        {"datum", "flat"},
                                                        {"raster", "none"},
                                                        {"erp_kw.unit", "horses"},
                                                        {"haat_m.zero", "perhaps"},
                                                        {"color", "Call"},
                                                        {"call_sign.color", "Call"}}) {
    INFO(part << " " << other);
    correct(mapping, part, other, kColumns);
    CHECK(mapping == begun);
  }
}
