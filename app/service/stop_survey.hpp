#pragma once

#include "app/service/country.hpp"
#include "app/service/pool.hpp"
#include "app/shared/survey.hpp"
#include "core/catalog/catalog.hpp"
#include "core/reception/chance_curve.hpp"
#include "core/reception/survey.hpp"
#include "core/result.hpp"
#include "platform/frames.hpp"
#include "platform/tile_folder.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace mastwise {

// No roof antenna receives beyond it on an ordinary evening (common practice, no source).
inline constexpr double kReachM = 400'000.0;
inline constexpr std::size_t kMostStations = 400;

// The stop of a question, which has a position.
reception::Receiver receiver_of(const StationsQuestion& question);

// Adds ticked networks to a station, as long as the question lives.
std::function<void(Station&)> completer(const StationsQuestion& question);

// Surveys a stop on all cores. The first thread that asks opens the catalogs and tiles and owns
// them.
class StopSurveyor {
 public:
  explicit StopSurveyor(SurveySources sources, unsigned threads = platform::computing_threads());

  Countries& countries() { return countries_; }

  // Called between two parts of the work.
  struct Between {
    // Facts of a station besides the catalog.
    std::function<void(Station&)> complete = [](Station&) {};
    std::function<bool()> stop = [] { return false; };
    // Called with part of the stations measured.
    std::function<Result<Done>(reception::Survey&, std::size_t measured)> look =
        [](reception::Survey&, std::size_t) { return Result<Done>(Done{}); };
  };
  // The surveyed stations in reach; empty if stopped. Within Countries::of_whole_land().
  Result<std::optional<reception::Survey>> survey(Country& country,
                                                  const reception::Receiver& receiver,
                                                  const Between& between);

  // The chance of every station of a survey against the heading.
  std::vector<std::optional<reception::ChanceCurve>> curves(const reception::Survey& survey);

  // For other paths, while no survey is running.
  reception::Scratch& scratch() { return scratches_.front(); }

 private:
  void measure(reception::Survey& survey, std::size_t first, std::size_t end);

  Countries countries_;
  Pool pool_;
  std::vector<reception::Scratch> scratches_;
};

}  // namespace mastwise
