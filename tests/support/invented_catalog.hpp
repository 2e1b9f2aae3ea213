#pragma once

#include "app/service/startup.hpp"
#include "core/catalog/catalog.hpp"

#include <string>

#include <catch2/catch.hpp>

namespace mastwise::test {

// Writes the practice area's stations into a catalog, as if they were imported.
inline void fill_catalog(const std::string& path) {
  auto practice = service::load_practice();
  REQUIRE(practice);
  StationTable table{.source = {.name = "INVENTED", .date = "2026-06-01"},
                     .stations = std::move(practice->stations)};
  for (Station& station : table.stations) station.provenance.source = table.source;
  auto catalog = Catalog::open(path);
  REQUIRE(catalog);
  REQUIRE(catalog->replace_source(table));
}

}  // namespace mastwise::test
