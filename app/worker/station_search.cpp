#include "app/worker/station_search.hpp"

#include "core/broadcast/catalog.hpp"
#include "core/propagation/radio_horizon.hpp"

#include <algorithm>
#include <limits>
#include <memory>

namespace mastwise {
namespace {

// Beyond it no antenna on a roof receives in any ordinary evening (common practice, no source).
constexpr double kReachM = 400'000.0;
constexpr std::size_t kMostRows = 400;
constexpr double kRoofAntennaM = 4.0;

struct Catalogs {
  std::string path;
  std::vector<Station> practice_stations;
  std::optional<Catalog> own, practice;

  Result<Catalog*> use(bool practice_area);
};

Result<Catalog*> Catalogs::use(bool practice_area) {
  std::optional<Catalog>& catalog = practice_area ? practice : own;
  if (catalog) return &*catalog;
  auto opened = Catalog::open(practice_area ? ":memory:" : path);
  if (!opened) return opened.error();
  if (practice_area) {
    const StationTable table{.source = practice_stations.front().provenance.source,
                             .stations = practice_stations};
    const auto filled = opened->replace_source(table);
    if (!filled) return filled.error();
  }
  catalog = *std::move(opened);
  return &*catalog;
}

StationRow seen_from(const NearStation& near) {
  StationRow row{.station = near.station, .bearing = near.bearing, .distance_m = near.distance_m};
  if (near.station.haat_m) row.horizon_m = radio_horizon_m(*near.station.haat_m, kRoofAntennaM);
  return row;
}

// Distance as a part of the radio horizon; what is not known comes last.
double remoteness(const StationRow& row) {
  if (!row.distance_m || !row.horizon_m) return std::numeric_limits<double>::infinity();
  return *row.distance_m / *row.horizon_m;
}

Result<std::vector<StationRow>> rows(Catalog& catalog, const StationsQuestion& question) {
  std::vector<StationRow> result;
  if (!question.from) {
    const auto found = catalog.search(question.search, kMostRows);
    if (!found) return found.error();
    for (const Station& station : *found) result.push_back({.station = station});
    return result;
  }
  const bool searching = !question.search.empty();
  const auto found = searching ? catalog.search(question.search, *question.from, kMostRows)
                               : catalog.nearest(*question.from, kReachM, kMostRows);
  if (!found) return found.error();
  for (const NearStation& near : *found) result.push_back(seen_from(near));
  if (!searching) {
    std::stable_sort(result.begin(), result.end(), [](const StationRow& a, const StationRow& b) {
      return remoteness(a) < remoteness(b);
    });
  }
  return result;
}

StationsAnswer answer(Catalogs& catalogs, const StationsQuestion& question) {
  StationsAnswer answer{.question = question};
  const auto catalog = catalogs.use(question.practice);
  if (!catalog) {
    answer.trouble = catalog.error().message();
    return answer;
  }
  auto found = rows(**catalog, question);
  if (found) {
    answer.rows = *std::move(found);
  } else {
    answer.trouble = found.error().message();
  }
  return answer;
}

}  // namespace

Worker::Answerer station_answerer(std::string catalog_path, std::vector<Station> practice) {
  auto catalogs = std::make_shared<Catalogs>(
      Catalogs{std::move(catalog_path), std::move(practice), std::nullopt, std::nullopt});
  return [catalogs](const StationsQuestion& question) { return answer(*catalogs, question); };
}

}  // namespace mastwise
