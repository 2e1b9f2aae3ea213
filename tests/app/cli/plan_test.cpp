#include "tests/support/child_program.hpp"
#include "tests/support/temporary_folder.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

// The verb `plan` in the practice area, as a child process.
namespace mastwise {

namespace {

using nlohmann::json;
using Arguments = std::vector<std::string>;

json printed_plan(Arguments arguments) {
  const test::TemporaryFolder data;
  arguments.push_back("--json");
  const auto ended = test::run_program(arguments, data.file("data"));
  INFO(ended.errors << ended.output);
  REQUIRE(ended.status == 0);
  const json read = json::parse(ended.output, nullptr, false);
  REQUIRE_FALSE(read.is_discarded());
  return read;
}

std::string plan_refusal(const Arguments& arguments) {
  const test::TemporaryFolder data;
  const auto ended = test::run_program(arguments, data.file("data"));
  CHECK(ended.status == 1);
  CHECK(ended.output.empty());
  return ended.errors;
}

bool brings(const json& heading, const std::string& call_sign) {
  const json& list = heading.at("brings");
  return std::any_of(list.begin(), list.end(),
                     [&](const json& each) { return each.at("call_sign") == call_sign; });
}

}  // namespace

TEST_CASE("plan: every station in reach has a heading, and its magnetic bearing is the card's") {
  const json plan = printed_plan({"plan", "--date", "2026-07-02"});
  REQUIRE_FALSE(plan.at("headings").empty());
  CHECK(plan.at("fewest_proved") == true);
  const json card =
      printed_plan({"card", "--at", "42.5,-118.5", "--to", "43,-118", "--date", "2026-07-02"});
  for (const json& heading : plan.at("headings")) {
    CHECK(std::fmod(heading.at("bearing_true_deg").get<double>() -
                        card.at("declination_deg").get<double>() + 360.0,
                    360.0) == Approx(heading.at("bearing_magnetic_deg").get<double>()));
    REQUIRE_FALSE(heading.at("brings").empty());
    for (const json& each : heading.at("brings")) CHECK(each.at("chance") >= 70.0 - 1e-6);
    for (const json& each : heading.at("loses")) CHECK(each.at("chance") < 70.0);
    CHECK(heading.at("slack_left_deg") >= 0.0);
    CHECK(heading.at("slack_right_deg") >= 0.0);
  }
  for (const json& each : plan.at("out_of_plan")) CHECK(each.at("best_chance") < 70.0);
  // Some heading brings in every station that the survey calls steady.
  for (const json& row : printed_plan({"survey"})) {
    if (!row.at("chance").is_number() || row.at("chance").get<double>() < 90.0) continue;
    const auto& headings = plan.at("headings");
    INFO(row.at("call_sign"));
    CHECK(std::any_of(headings.begin(), headings.end(), [&](const json& heading) {
      return brings(heading, row.at("call_sign").get<std::string>());
    }));
  }
}

TEST_CASE("plan: wanted stations, pinned stations and networks") {
  const json one = printed_plan({"plan", "--want", "QBPA"});
  REQUIRE(one.at("headings").size() == 1);
  CHECK(brings(one.at("headings")[0], "QBPA"));
  const json two = printed_plan({"plan", "--want", "qbpa,QNLA", "--pin", "QLSB"});
  bool pinned = false;
  for (const json& heading : two.at("headings")) pinned = pinned || brings(heading, "QLSB");
  for (const json& each : two.at("out_of_plan")) {
    pinned = pinned || (each.at("call_sign") == "QLSB" && each.at("pinned") == true);
  }
  CHECK(pinned);
  // Any one station of the network is enough.
  CHECK(printed_plan({"plan", "--network", "northlight"}).at("headings").size() == 1);
  CHECK(plan_refusal({"plan", "--want", "QNONE"}).find("QNONE") != std::string::npos);
  CHECK(plan_refusal({"plan", "--network", "Nowhere"}).find("Nowhere") != std::string::npos);
}

TEST_CASE("plan: gear, heading error and floor change it") {
  const json all_round =
      printed_plan({"plan", "--gear", "Omnidirectional roof disc with amplifier", "--floor", "40"});
  REQUIRE(all_round.at("headings").size() == 1);
  CHECK(all_round.at("headings")[0].at("slack_left_deg") == 180.0);
  const auto width = [](const json& plan) {
    const json& heading = plan.at("headings").at(0);
    return heading.at("slack_left_deg").get<double>() + heading.at("slack_right_deg").get<double>();
  };
  const Arguments yagi{"plan", "--want", "QBPA", "--gear", "Long Yagi on a pole with amplifier"};
  const auto with = [&](const std::string& option, const std::string& value) {
    Arguments arguments = yagi;
    arguments.insert(arguments.end(), {option, value});
    return printed_plan(arguments);
  };
  CHECK(width(with("--floor", "40")) > width(with("--floor", "90")));
  CHECK(width(with("--heading-error", "1")) != width(with("--heading-error", "15")));
}

TEST_CASE("plan: as text") {
  const test::TemporaryFolder data;
  const auto ended = test::run_program({"plan", "--want", "QBPA"}, data.file("data"));
  CHECK(ended.status == 0);
  CHECK(ended.output.find("PRACTICE AREA") == 0);
  CHECK(ended.output.find(" magnetic: good from ") != std::string::npos);
  CHECK(ended.output.find("QBPA 6.1") != std::string::npos);
}

TEST_CASE("survey and plan count an obstacle on one side, and refuse an impossible one") {
  const json free = printed_plan({"survey"});
  // Trees to the northeast, where most stations of the practice area are.
  const json marked =
      printed_plan({"survey", "--obstacle", "NE:trees:15m:15m", "--obstacle", "W:open"});
  REQUIRE(free.size() == marked.size());
  std::size_t lower = 0, named = 0;
  for (const json& row : marked) {
    const auto same = std::find_if(free.begin(), free.end(), [&](const json& one) {
      return one.at("call_sign") == row.at("call_sign");
    });
    REQUIRE(same != free.end());
    if (row.at("field_itm_dbuvm").is_null()) continue;
    const double off_deg = std::remainder(row.at("bearing_true_deg").get<double>() - 45.0, 360.0);
    const double loss_db =
        same->at("field_itm_dbuvm").get<double>() - row.at("field_itm_dbuvm").get<double>();
    if (std::fabs(off_deg) > 60.0) CHECK(loss_db == Approx(0.0).margin(1e-9));
    if (std::fabs(off_deg) < 20.0) CHECK(loss_db > 0.5);
    CHECK(loss_db >= -1e-9);
    lower += loss_db > 0.5 ? 1 : 0;
    for (const json& reason : row.at("reasons")) named += reason.at("kind") == "on_its_side";
  }
  CHECK(lower > 0);
  CHECK(named > 0);
  const auto best = [](const json& plan) {
    double best = 0.0;
    for (const json& heading : plan.at("headings")) {
      for (const json& each : heading.at("brings")) best += each.at("chance").get<double>();
    }
    return best;
  };
  CHECK(best(printed_plan({"plan", "--obstacle", "NE:hill:50m:100m"})) <
        best(printed_plan({"plan"})));
  for (const char* verb : {"survey", "plan"}) {
    const std::string said = plan_refusal({verb, "--obstacle", "NE:swamp"});
    INFO(verb);
    CHECK(said.find("trees") != std::string::npos);
  }
}

TEST_CASE("survey counts the noise of an appliance in its band, and refuses an impossible one") {
  const auto margins = [](const Arguments& arguments) {
    std::map<std::pair<std::string, int>, double> margins;
    for (const json& row : printed_plan(arguments)) {
      if (row.at("margin_db").is_null()) continue;
      const auto channel = row.at("rf_channel").get<int>();
      margins[{row.at("call_sign").get<std::string>(), channel}] = row.at("margin_db");
    }
    return margins;
  };
  const auto quiet = margins({"survey"});
  const auto noisy = margins({"survey", "--appliance", "UHF", "9.5"});
  REQUIRE(quiet.size() == noisy.size());
  std::size_t lower = 0;
  for (const auto& [station, margin_db] : quiet) {
    INFO(station.first);
    constexpr int kFirstUhf = 14;
    const double lost_db = margin_db - noisy.at(station);
    if (station.second < kFirstUhf) CHECK(lost_db == Approx(0.0).margin(1e-9));
    CHECK(lost_db < 9.5 + 1e-6);
    lower += lost_db > 1.0 ? 1 : 0;
  }
  CHECK(lower > 5);
  CHECK(plan_refusal({"survey", "--appliance", "SHF", "3"}).find("high VHF") != std::string::npos);
  CHECK(plan_refusal({"plan", "--appliance", "UHF", "-3"}).find("0 to 60 dB") != std::string::npos);
}

}  // namespace mastwise
