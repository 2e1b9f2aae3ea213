#include "app/service/area_work.hpp"
#include "app/service/map_maker.hpp"
#include "app/service/stop_survey.hpp"
#include "app/words/language.hpp"
#include "core/reception/area_scan.hpp"
#include "core/reception/best_spots.hpp"

#include <cmath>
#include <utility>

namespace mastwise {
namespace {

class AreaScanner {
 public:
  explicit AreaScanner(SurveySources sources) : countries_(std::move(sources)) {}
  AreaSheet answer(const AreaQuestion& question, const AreaWorker::Work& work);

 private:
  Result<Done> fill(AreaSheet& sheet, const AreaWorker::Work& work);
  Result<Done> scan_all(AreaSheet& sheet, const reception::AreaGrid& grid,
                        const reception::Land& land, const AreaWorker::Work& work);

  Countries countries_;
  Pool pool_;
  AreaWork work_{pool_};
  std::vector<reception::ChanceMap> maps_;  // of the finished stations
};

std::vector<std::int8_t> percents(const reception::ChanceMap& chances) {
  std::vector<std::int8_t> percent;
  percent.reserve(chances.size());
  for (const auto& chance : chances) {
    percent.push_back(chance ? static_cast<std::int8_t>(std::lround(*chance))
                             : AreaSheet::kUnknown);
  }
  return percent;
}

// Runs the scans in turn and publishes the weakest station's chance after each part. A station that
// cannot be scanned is left out, unless it is the only one.
Result<Done> AreaScanner::scan_all(AreaSheet& sheet, const reception::AreaGrid& grid,
                                   const reception::Land& land, const AreaWorker::Work& work) {
  const auto& stations = sheet.question.stations;
  for (std::size_t i = 0; i < stations.size(); ++i) {
    auto scan = reception::AreaScan::of(grid, receiver_of(sheet.question.here), stations[i], land);
    if (!scan) {
      if (stations.size() == 1) return scan.error();
      sheet.left_out.push_back(stations[i].call_sign);
      continue;
    }
    const auto show = [&](double done) {
      if (work.superseded()) return false;
      sheet.done = (static_cast<double>(i) + done) / static_cast<double>(stations.size());
      if (maps_.empty()) sheet.percent = percents(reception::chances(*scan));
      work.publish(sheet);
      return true;
    };
    if (!work_.complete(*scan, show)) return Done{};
    maps_.push_back(reception::chances(*scan));
    sheet.percent = percents(reception::weakest(maps_));
  }
  if (maps_.empty()) {
    return Error{.what = words::say("none of the pinned stations can be scanned"),
                 .remedy = words::say("pin others, or complete their facts")};
  }
  sheet.done = 1.0;
  return Done{};
}

Result<Done> AreaScanner::fill(AreaSheet& sheet, const AreaWorker::Work& work) {
  const AreaQuestion& question = sheet.question;
  if (question.stations.empty()) {
    return Error{.what = words::say("no station chosen"),
                 .remedy = words::say("aim at a station, or pin the ones you want")};
  }
  const auto visited = countries_.visit(question.here.practice);
  if (!visited) return visited.error();
  const auto grid = reception::AreaGrid::around(*question.here.from, question.radius_m,
                                                area_side(question.radius_m));
  if (!grid) return grid.error();
  sheet.side = grid->side();
  maps_.clear();
  if (const auto scanned = scan_all(sheet, *grid, visited->country->land(), work); !scanned) {
    return scanned;
  }
  if (sheet.done < 1.0) return Done{};
  const reception::ChanceMap chances = reception::weakest(maps_);
  sheet.here_percent = reception::chance_at_stop(*grid, chances);
  if (!sheet.here_percent) return Done{};
  for (const auto& spot : reception::best_spots(*grid, chances, *sheet.here_percent)) {
    sheet.spots.push_back({.distance_m = spot.distance_m,
                           .bearing = spot.bearing,
                           .chance_percent = spot.chance_percent,
                           .gain_percent = spot.gain_percent});
  }
  return Done{};
}

AreaSheet AreaScanner::answer(const AreaQuestion& question, const AreaWorker::Work& work) {
  return countries_.of_whole_land(question.here.practice, [&] {
    AreaSheet sheet{.question = question};
    if (const auto filled = fill(sheet, work); !filled) sheet.trouble = filled.error().message();
    return sheet;
  });
}

}  // namespace

AreaWorker::Answerer area_answerer(SurveySources sources) {
  // Its threads start with the first question.
  return [sources = std::move(sources), scanner = std::shared_ptr<AreaScanner>()](
             const AreaQuestion& question, const AreaWorker::Work& work) mutable {
    if (!scanner) scanner = std::make_shared<AreaScanner>(sources);
    return scanner->answer(question, work);
  };
}

}  // namespace mastwise
