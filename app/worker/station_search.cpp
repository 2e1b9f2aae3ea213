#include "app/worker/station_search.hpp"

#include "app/worker/pool.hpp"
#include "core/broadcast/catalog.hpp"
#include "core/reception/survey.hpp"
#include "platform/tile_folder.hpp"

#include <algorithm>
#include <memory>

namespace mastwise {
namespace {

// Beyond it no antenna on a roof receives in any ordinary evening (common practice, no source).
constexpr double kReachM = 400'000.0;
constexpr std::size_t kMostStations = 400;
constexpr std::size_t kPathPoints = 240;
// So many paths between two looks at whether the stop has changed.
constexpr std::size_t kBatch = 64;

reception::Lengths lengths(const StationsQuestion& question) {
  return question.miles ? reception::Lengths::miles : reception::Lengths::kilometres;
}

// One country: its stations and its hills.
struct Country {
  Catalog catalog;
  platform::TileFolder tiles;
};

Result<std::unique_ptr<Country>> open_own(const SurveySources& sources) {
  auto catalog = Catalog::open(sources.catalog_path);
  if (!catalog) return catalog.error();
  return std::unique_ptr<Country>(
      new Country{*std::move(catalog), platform::TileFolder(sources.terrain_folder)});
}

Result<std::unique_ptr<Country>> open_practice(const SurveySources& sources) {
  auto catalog = Catalog::open(":memory:");
  if (!catalog) return catalog.error();
  const StationTable table{.source = sources.practice_stations.front().provenance.source,
                           .stations = sources.practice_stations};
  const auto filled = catalog->replace_source(table);
  if (!filled) return filled.error();
  return std::unique_ptr<Country>(
      new Country{*std::move(catalog), platform::TileFolder(sources.practice_terrain_folder)});
}

// Keeps what one question has in common with the next.
class Surveyor {
 public:
  explicit Surveyor(SurveySources sources) : sources_(std::move(sources)) {
    scratches_.resize(pool_.threads());
  }
  StationsAnswer answer(const StationsQuestion& question, const Worker::Work& work);

 private:
  using Prospects = std::vector<reception::Prospect>;

  Result<Country*> country(bool practice);
  Result<Done> survey(Country& country, const StationsQuestion& question, const Worker::Work& work);
  void measure(reception::Survey& survey, std::size_t first, std::size_t end);
  Result<Done> fill(StationsAnswer& answer, Country& country);
  Result<Done> fill_by_search(StationsAnswer& answer, Country& country);
  void add_target_path(StationsAnswer& answer, Country& country);
  static reception::Receiver receiver(const StationsQuestion& question);

  SurveySources sources_;
  Pool pool_;
  std::vector<reception::Scratch> scratches_;
  std::unique_ptr<Country> own_, practice_;
  // The last survey, and what it was made for: without search and target.
  std::optional<StationsQuestion> surveyed_;
  Prospects prospects_;
};

Result<Country*> Surveyor::country(bool practice) {
  std::unique_ptr<Country>& country = practice ? practice_ : own_;
  if (!country) {
    auto opened = practice ? open_practice(sources_) : open_own(sources_);
    if (!opened) return opened.error();
    country = *std::move(opened);
  }
  if (country->tiles.refresh()) surveyed_.reset();
  return country.get();
}

reception::Receiver Surveyor::receiver(const StationsQuestion& question) {
  return {.position = *question.from,
          .surroundings = question.surroundings,
          .gear = gear_of(question.gear)};
}

void Surveyor::measure(reception::Survey& survey, std::size_t first, std::size_t end) {
  const std::size_t threads = pool_.threads();
  const std::size_t share = (end - first + threads - 1) / threads;
  pool_.run([&](std::size_t thread) {
    const std::size_t begin = std::min(end, first + thread * share);
    survey.measure(begin, std::min(end, begin + share), scratches_[thread]);
  });
}

Result<Done> Surveyor::survey(Country& country, const StationsQuestion& question,
                              const Worker::Work& work) {
  StationsQuestion wanted = question;
  wanted.search.clear();
  wanted.target.reset();
  if (surveyed_ == wanted) return Done{};
  surveyed_.reset();
  const auto near = country.catalog.nearest(*question.from, kReachM, kMostStations);
  if (!near) return near.error();
  std::vector<Station> stations;
  for (const NearStation& station : *near) stations.push_back(station.station);

  reception::Survey survey(receiver(question), std::move(stations), country.tiles);
  for (std::size_t first = 0; first < survey.size(); first += kBatch) {
    if (work.superseded()) return Done{};
    const std::size_t end = std::min(survey.size(), first + kBatch);
    measure(survey, first, end);
    if (end == survey.size() || !question.search.empty()) continue;
    survey.weigh();
    prospects_ = survey.prospects(lengths(question));
    StationsAnswer so_far{.question = question, .measured = end, .all = survey.size()};
    if (const auto filled = fill(so_far, country); !filled) return filled;
    work.publish(std::move(so_far));
  }
  survey.weigh();
  prospects_ = survey.prospects(lengths(question));
  surveyed_ = wanted;
  return Done{};
}

StationRow row_of(const reception::Prospect& prospect) {
  return {.station = prospect.station, .outlook = prospect.outlook, .reasons = prospect.reasons};
}

Result<Done> Surveyor::fill(StationsAnswer& answer, Country& country) {
  if (!answer.question.search.empty()) return fill_by_search(answer, country);
  for (const reception::Prospect& prospect : prospects_) answer.rows.push_back(row_of(prospect));
  return Done{};
}

// What was searched for, in the catalog's order; stations out of reach have no outlook.
Result<Done> Surveyor::fill_by_search(StationsAnswer& answer, Country& country) {
  std::vector<Station> found;
  if (answer.question.from) {
    const auto near =
        country.catalog.search(answer.question.search, *answer.question.from, kMostStations);
    if (!near) return near.error();
    for (const NearStation& station : *near) found.push_back(station.station);
  } else {
    auto all = country.catalog.search(answer.question.search, kMostStations);
    if (!all) return all.error();
    found = *std::move(all);
  }
  for (Station& station : found) {
    const auto prospect = std::find_if(
        prospects_.begin(), prospects_.end(),
        [&](const reception::Prospect& p) { return key_of(p.station) == key_of(station); });
    if (prospect == prospects_.end()) {
      answer.rows.push_back({.station = std::move(station)});
    } else {
      answer.rows.push_back(row_of(*prospect));
    }
  }
  return Done{};
}

void Surveyor::add_target_path(StationsAnswer& answer, Country& country) {
  if (!answer.question.target) return;
  for (const reception::Prospect& prospect : prospects_) {
    if (key_of(prospect.station) != *answer.question.target) continue;
    answer.target_path =
        reception::path_picture(receiver(answer.question), prospect, country.tiles, kPathPoints,
                                scratches_.front(), lengths(answer.question));
  }
}

StationsAnswer Surveyor::answer(const StationsQuestion& question, const Worker::Work& work) {
  StationsAnswer answer{.question = question};
  const auto tell = [&](const Error& error) {
    answer.trouble = error.message();
    return answer;
  };
  const auto here = country(question.practice);
  if (!here) return tell(here.error());
  if (question.from) {
    const auto surveyed = survey(**here, question, work);
    if (!surveyed) return tell(surveyed.error());
    answer.measured = answer.all = prospects_.size();
  } else {
    prospects_.clear();
    surveyed_.reset();
  }
  const auto filled = fill(answer, **here);
  if (!filled) return tell(filled.error());
  if (question.from) add_target_path(answer, **here);
  return answer;
}

}  // namespace

Worker::Answerer station_answerer(SurveySources sources) {
  auto surveyor = std::make_shared<Surveyor>(std::move(sources));
  return [surveyor](const StationsQuestion& question, const Worker::Work& work) {
    return surveyor->answer(question, work);
  };
}

}  // namespace mastwise
