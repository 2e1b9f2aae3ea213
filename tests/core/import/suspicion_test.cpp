#include "core/import/suspicion.hpp"

#include "core/import/guess_mapping.hpp"
#include "core/import/import_csv.hpp"
#include "core/import/import_table.hpp"

#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

// Boxes for countries: the mainland of the United States, and France; the rest is sea.
std::vector<std::string> boxes(const Position& at) {
  const double latitude = at.latitude_deg(), longitude = at.longitude_deg();
  if (latitude > 25.0 && latitude < 49.0 && longitude > -124.0 && longitude < -67.0) return {"US"};
  if (latitude > 42.0 && latitude < 51.0 && longitude > -4.0 && longitude < 8.0) return {"FR"};
  return {};
}

// PRACTICE: places of the western plains, in the columns of Mastwise's table.
std::string table_of(const std::vector<std::pair<std::string, std::string>>& positions,
                     const std::string& first = "QAA") {
  std::string text = "call_sign,raster,rf_channel,latitude_deg,longitude_deg\n";
  char letter = 'A';
  for (const auto& [latitude, longitude] : positions) {
    text += first + letter++ + ",ATSC,23," + latitude + "," + longitude + "\n";
  }
  return text;
}

std::optional<Suspicion> suspicion(const std::string& text) {
  return suspicion_of(text, own_mapping({"made", ""}), boxes);
}

}  // namespace

TEST_CASE("stations near towns raise no suspicion") {
  CHECK_FALSE(suspicion(table_of({{"44.1", "-100.3"}, {"43.9", "-101"}, {"45", "-99.5"}})));
  // One of four at sea is a row to correct, not a table read wrong.
  CHECK_FALSE(
      suspicion(table_of({{"44.1", "-100.3"}, {"43.9", "-101"}, {"45", "-99.5"}, {"44", "100"}})));
  CHECK_FALSE(suspicion(table_of({{"44.1", "100.3"}, {"43.9", "101"}})));  // too few to tell
}

TEST_CASE("a wrong sign is found, and the reading that corrects it") {
  const std::string text = table_of({{"44.1", "100.3"}, {"43.9", "101"}, {"45", "99.5"}});
  const auto found = suspicion(text);
  REQUIRE(found);
  CHECK(found->kind == Suspicion::Kind::no_land);
  CHECK(found->other == CoordinateReading::longitude_turned);
  CHECK(found->share == 0.0);
  CHECK(found->share_other == Approx(1.0));
  const auto table = read_station_table(text, reread(own_mapping({"made", ""}), *found->other));
  REQUIRE(table);
  CHECK(table->stations.at(0).position.longitude_deg() == Approx(-100.3));
}

TEST_CASE("swapped columns are found, also with west positive") {
  const auto swapped = suspicion(table_of({{"-80.3", "40.1"}, {"-81", "41.9"}, {"-79.5", "42"}}));
  REQUIRE(swapped);
  CHECK(swapped->other == CoordinateReading::swapped);
  const auto both = suspicion(table_of({{"80.3", "40.1"}, {"81", "41.9"}, {"79.5", "42"}}));
  REQUIRE(both);
  CHECK(both->other == CoordinateReading::swapped_longitude_turned);
  // No latitude is above 90 degrees: not a row can be read as it is.
  const auto unreadable = suspicion(table_of({{"100.3", "44"}, {"101", "43"}, {"99.5", "45"}}));
  REQUIRE(unreadable);
  CHECK(unreadable->kind == Suspicion::Kind::unreadable);
  CHECK(unreadable->other == CoordinateReading::swapped_longitude_turned);
}

TEST_CASE("stations in another country than their call signs are suspected") {
  const auto found = suspicion(table_of({{"45", "2"}, {"46", "3"}, {"47", "1"}}, "KAA"));
  REQUIRE(found);
  CHECK(found->kind == Suspicion::Kind::other_country);
  CHECK_FALSE(found->other);
  // Invented call signs belong to no country.
  CHECK_FALSE(suspicion(table_of({{"45", "2"}, {"46", "3"}, {"47", "1"}})));
}

TEST_CASE("a letter in the cells fixes the sign") {
  TableMapping mapping = own_mapping({"made", ""});
  mapping.longitude.letter_in_cell = true;
  CHECK(reread(mapping, CoordinateReading::longitude_turned) == mapping);
  CHECK_FALSE(reread(mapping, CoordinateReading::swapped) == mapping);
}

// Source: ITU Radio Regulations, appendix 42; 47 CFR 74.783 for translators' call signs.
TEST_CASE("call signs tell the country of North America's stations") {
  CHECK(country_of_call_sign("KAAB-TV") == "US");
  CHECK(country_of_call_sign("W23AB-D") == "US");
  CHECK(country_of_call_sign("CFAB-DT") == "CA");
  CHECK(country_of_call_sign("XHABC-TDT") == "MX");
  CHECK(country_of_call_sign("WIN").empty());  // three letters are common elsewhere
  CHECK(country_of_call_sign("QAAB").empty());
  CHECK(country_of_call_sign("CAAB").empty());  // CA to CE are Chile's
}
