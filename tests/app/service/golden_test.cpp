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
    Golden{"QCTA", 31.834, 21.580, -16.540, 7.194},
    Golden{"QBTA", 31.748, 21.250, -14.447, 9.890},
    Golden{"QNTA", 32.707, 21.144, -35.633, 0.337},
    Golden{"QLTA", 50.958, 51.025, -6.555, 26.528},
    Golden{"QWTA", 54.397, 53.640, -6.470, 31.099},
    Golden{"QHTA", 69.047, 63.928, 25.495, 99.674},
    Golden{"QBTB", 50.872, 51.350, 13.833, 91.237},
    Golden{"QBPB", 88.564, 88.544, 29.151, 98.762},
    Golden{"QNLB", 80.494, 77.911, 35.207, 99.874},
    Golden{"QHWB", 81.749, 81.779, 24.451, 99.346},
    Golden{"QHWA", 78.594, 85.152, 29.103, 98.964},
    Golden{"QWSA", 69.554, 60.818, 24.259, 98.778},
    Golden{"QBPA", 69.469, 59.950, 17.249, 90.522},
    Golden{"QNLA", 78.700, 85.560, 19.929, 92.754},
    Golden{"QLSA", 73.500, 64.556, 27.104, 99.365},
    Golden{"QCFA", 64.681, 53.392, 18.638, 94.999},
    Golden{"QCFC", 55.801, 50.009, 9.132, 78.925},
    Golden{"QHWC", 54.296, 48.154, -12.208, 14.240},
    Golden{"QCFB", 85.261, 85.329, 43.890, 100.000},
    Golden{"QLSB", 81.242, 80.968, 36.953, 99.938},
    Golden{"QBPC", 69.248, 72.592, 29.949, 99.842},
    Golden{"QLSC", 87.297, 84.838, 42.864, 100.000},
    Golden{"QNLC", 76.233, 74.518, 37.416, 99.998},
    Golden{"QWSB", 81.902, 78.961, 23.567, 96.059},
    Golden{"QLSD", 48.507, 36.960, 2.151, 57.530},
    Golden{"QBPD", 65.843, 59.311, 22.057, 98.392},
    Golden{"QNLD", 59.006, 53.400, 10.175, 81.178},
    Golden{"QWSC", 45.810, 28.447, -6.680, 30.209},
    Golden{"QCFD", 45.955, 50.774, 4.783, 67.004},
    Golden{"QBPE", 57.869, 53.393, -0.868, 47.468},
    Golden{"QHWD", 38.622, 13.885, -33.416, 2.276},
    Golden{"QLSE", 34.686, 11.043, -75.955, 0.001},
};

struct GoldenHeading {
  double true_deg, left_deg, right_deg;
  std::size_t brings;
};
constexpr std::array kPlan{GoldenHeading{295.963, 21.33, 12.44, 17},
                           GoldenHeading{10.213, 20.43, 2.94, 19}};

// Of the 1,681 cells around the stop.
constexpr double kMeanMargin_db = 28.8776;

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
  const auto visited = surveyor.country(true);
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
