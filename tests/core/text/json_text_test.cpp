#include "core/text/json_text.hpp"

#include "core/import/joined_mapping.hpp"
#include "core/import/table_mapping.hpp"

#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

std::string nested(int levels) {
  return std::string(static_cast<std::size_t>(levels), '[') +
         std::string(static_cast<std::size_t>(levels), ']');
}

}  // namespace

TEST_CASE("2026-11-29: JSON that nests too deep is not read, whatever its texts hold") {
  CHECK_FALSE(nests_too_deep(nested(64)));
  CHECK(nests_too_deep(nested(65)));
  CHECK(nests_too_deep(R"({"a":)" + nested(64) + "}"));
  CHECK_FALSE(nests_too_deep("[" + nested(63) + "," + nested(63) + "]"));
  // Brackets within texts do not nest, and an escaped quote ends none.
  CHECK_FALSE(nests_too_deep("\"" + nested(1000) + "\""));
  CHECK_FALSE(nests_too_deep(R"("\")" + nested(1000) + "\""));
  CHECK(nests_too_deep(R"(["\\",)" + nested(64) + "]"));
  CHECK(read_json(nested(100'000)).is_discarded());
  CHECK(read_json("[").is_discarded());
  CHECK(read_json(R"({"a":[1]})").at("a").at(0) == 1);
}

TEST_CASE("2026-11-29: a mapping that nests 100,000 deep is refused") {
  const std::string deep = R"({"tables":)" + nested(100'000) + "}";
  CHECK_FALSE(is_joined_mapping(deep));
  const auto joined = parse_joined_mapping(deep);
  REQUIRE_FALSE(joined);
  CHECK(joined.error().what == "this nests too deep for a mapping");
  CHECK_FALSE(parse_table_mapping(deep));
}
