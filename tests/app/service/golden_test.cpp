#include "app/service/area_work.hpp"
#include "app/service/startup.hpp"
#include "app/service/stop_survey.hpp"
#include "core/plan/turn_plan.hpp"

#include <array>
#include <cmath>
#include <string_view>
#include <vector>

#include <catch2/catch.hpp>

// Numbers of the practice area as first computed by GCC 12 at -O3. They say nothing about the
// truth, which other tests check against published data. They show a result that moves without
// intent, and one that depends on threads, compiler or optimization: the sanitizers' build runs
// them too, as clang compiles it at -O1.
namespace mastwise {

namespace {

struct Golden {
  std::string_view call_sign;
  double p1812_dbuvm, itm_dbuvm, margin_db, chance_percent;
};
// In the order of the survey.
constexpr std::array kSurvey{
    Golden{"QCTA", 27.209, 17.386, -19.878, 3.100}, Golden{"QBTA", 27.608, 17.534, -17.975, 4.640},
    Golden{"QNTA", 28.184, 17.047, -34.743, 0.068}, Golden{"QLTA", 42.717, 46.862, -11.083, 12.080},
    Golden{"QWTA", 45.026, 48.928, -1.952, 39.417}, Golden{"QHTA", 54.276, 59.597, 16.041, 95.635},
    Golden{"QBTB", 43.788, 50.115, 9.674, 82.404},  Golden{"QBPB", 73.063, 83.963, 28.636, 97.367},
    Golden{"QNLB", 69.297, 77.143, 33.010, 99.514}, Golden{"QHWB", 65.366, 76.275, 13.620, 88.334},
    Golden{"QHWA", 70.523, 80.146, 31.122, 99.239}, Golden{"QWSA", 61.858, 55.823, 18.045, 95.628},
    Golden{"QBPA", 67.422, 59.639, 20.999, 94.415}, Golden{"QNLA", 70.520, 80.357, 23.726, 92.811},
    Golden{"QLSA", 65.141, 58.960, 20.126, 97.043}, Golden{"QCFA", 62.749, 52.579, 17.265, 94.702},
    Golden{"QCFC", 50.046, 45.384, 6.773, 70.303},  Golden{"QHWC", 48.540, 43.518, -11.140, 9.024},
    Golden{"QCFB", 70.489, 80.180, 33.956, 99.853}, Golden{"QLSB", 71.270, 82.017, 37.083, 99.823},
    Golden{"QBPC", 63.099, 72.385, 26.780, 99.411}, Golden{"QLSC", 72.132, 80.005, 32.926, 99.964},
    Golden{"QNLC", 69.915, 75.498, 34.903, 99.983}, Golden{"QWSB", 66.639, 74.191, 22.477, 94.503},
    Golden{"QLSD", 43.558, 33.136, -2.235, 42.475}, Golden{"QBPD", 63.728, 59.098, 21.018, 98.169},
    Golden{"QNLD", 60.697, 56.529, 17.162, 91.056}, Golden{"QWSC", 45.057, 28.095, -5.424, 31.007},
    Golden{"QCFD", 47.214, 52.447, 7.749, 73.615},  Golden{"QBPE", 59.318, 56.227, 10.346, 73.539},
    Golden{"QHWD", 41.555, 17.229, -20.396, 7.399}, Golden{"QLSE", 37.247, 14.010, -63.114, 0.030},
};

struct GoldenHeading {
  double true_deg, left_deg, right_deg;
  std::size_t brings;
};
constexpr std::array kPlan{GoldenHeading{12.855, 33.38, 10.46, 19},
                           GoldenHeading{106.705, 16.12, 0.20, 16}};

// Of the 1,681 cells around the stop.
constexpr double kMeanMargin_db = 26.3868;

// All that a survey of the practice area computes.
struct Numbers {
  std::vector<Station> stations = {};
  std::vector<reception::Outlook> outlooks = {};
  std::vector<std::vector<double>> curves = {};  // by station; empty if unknown
  TurnPlan plan = {};
  std::vector<reception::AreaCell> cells = {};
};

Numbers computed(const service::Practice& practice, unsigned threads) {
  StopSurveyor surveyor({.practice_stations = practice.stations,
                         .practice_terrain_folder = service::practice_folder()},
                        threads);
  const auto visited = surveyor.countries().visit(true);
  REQUIRE(visited);
  // A TV that decodes all of the practice area's stations, so that each has a chance.
  const reception::Receiver receiver{
      .position = practice.position,
      .gear = gear_of(
          {.decoders = gear::DecoderSet{gear::Decoder::atsc1, gear::Decoder::atsc3_encrypted}})};
  auto survey = surveyor.survey(*visited->country, receiver, {});
  REQUIRE(survey);
  REQUIRE(*survey);
  Numbers numbers;
  const auto curves = surveyor.curves(**survey);
  TurnPlanRequest request;
  for (std::size_t i = 0; i < (*survey)->size(); ++i) {
    numbers.stations.push_back((*survey)->station(i));
    numbers.outlooks.push_back(*(*survey)->outlook(i));
    auto& curve = numbers.curves.emplace_back();
    if (!curves[i]) continue;
    curve.assign(curves[i]->percent().begin(), curves[i]->percent().end());
    if (curves[i]->best_percent() >= kUsualFloor_percent) request.wishes.push_back({{i}});
  }
  numbers.plan = turn_plan(curves, request);
  const auto grid = reception::AreaGrid::around(practice.position, 5e3, 41);
  REQUIRE(grid);
  auto scan = reception::AreaScan::of(*grid, receiver, practice.target, visited->country->tiles);
  REQUIRE(scan);
  Pool pool(threads);
  AreaWork(pool).complete(*scan, [](double) { return true; });
  numbers.cells = {scan->cells().begin(), scan->cells().end()};
  return numbers;
}

}  // namespace

TEST_CASE("golden numbers: survey, curves and scan are the same bits on 1 to 8 threads") {
  const auto practice = service::load_practice();
  REQUIRE(practice);
  const Numbers one = computed(*practice, 1);
  REQUIRE(one.outlooks.size() >= 10);
  for (const unsigned threads : {2u, 3u, 5u, 8u}) {
    INFO(threads << " threads");
    const Numbers many = computed(*practice, threads);
    CHECK(many.outlooks == one.outlooks);
    CHECK(many.curves == one.curves);
    CHECK(many.cells == one.cells);
  }
}

TEST_CASE("golden numbers: the practice area's survey does not drift") {
  const auto practice = service::load_practice();
  REQUIRE(practice);
  const Numbers numbers = computed(*practice, 2);
  constexpr double kSame_db = 0.01;
  constexpr double kSame_percent = 0.05;
  REQUIRE(numbers.outlooks.size() == kSurvey.size());
  for (std::size_t i = 0; i < kSurvey.size(); ++i) {
    const reception::Outlook& outlook = numbers.outlooks[i];
    INFO(kSurvey[i].call_sign);
    REQUIRE(numbers.stations[i].call_sign == kSurvey[i].call_sign);
    CHECK(std::abs(*outlook.field_p1812_dbuvm - kSurvey[i].p1812_dbuvm) < kSame_db);
    CHECK(std::abs(*outlook.field_itm_dbuvm - kSurvey[i].itm_dbuvm) < kSame_db);
    CHECK(std::abs(*outlook.margin_db - kSurvey[i].margin_db) < kSame_db);
    CHECK(std::abs(*outlook.chance_percent - kSurvey[i].chance_percent) < kSame_percent);
  }
  REQUIRE(numbers.plan.headings.size() == kPlan.size());
  for (std::size_t i = 0; i < kPlan.size(); ++i) {
    const PlannedHeading& heading = numbers.plan.headings[i];
    CHECK(std::abs(heading.bearing.degrees() - kPlan[i].true_deg) < 0.01);
    CHECK(std::abs(heading.slack.left_deg - kPlan[i].left_deg) < 0.02);
    CHECK(std::abs(heading.slack.right_deg - kPlan[i].right_deg) < 0.02);
    CHECK(heading.brings.size() == kPlan[i].brings);
  }
  double sum_db = 0.0;
  for (const reception::AreaCell& cell : numbers.cells) {
    REQUIRE(cell.known());
    sum_db += static_cast<double>(cell.margin_db);
  }
  CHECK(std::abs(sum_db / static_cast<double>(numbers.cells.size()) - kMeanMargin_db) < kSame_db);
}

}  // namespace mastwise
