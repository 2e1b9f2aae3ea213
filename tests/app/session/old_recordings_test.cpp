#include "app/session/action_json.hpp"
#include "app/shared/json.hpp"
#include "tests/support/action_examples.hpp"

#include <algorithm>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

// The example of a kind of action, as JSON.
template <class Wanted>
nlohmann::json example() {
  const auto all = test::every_action();
  const auto found = std::find_if(all.begin(), all.end(),
                                  [](const Action& action) { return action.is<Wanted>(); });
  REQUIRE(found != all.end());
  return to_json(*found);
}

template <class Wanted>
Wanted read(const nlohmann::json& json) {
  const auto action = action_from_json(json);
  INFO((action ? std::string() : action.error().message()));
  REQUIRE(action);
  return *action->get_if<Wanted>();
}

}  // namespace

// As written up to 352f41b: reasons, cautions and remarks were finished sentences, a reason's kind
// a number, and the question knew whether miles were in use.
TEST_CASE("a recording with finished sentences still opens, without them") {
  nlohmann::json json = example<act::StationsFound>();
  const auto now = read<act::StationsFound>(json);
  nlohmann::json& answer = json.at("answer");
  answer["question"]["miles"] = true;
  answer["question"]["learned"][0] = {
      {"bias_db", -6.2},
      {"sigma_db", 2.0},
      {"reason", {{"kind", 14}, {"decibel", 6.2}, {"text", "low VHF came in 6 dB worse"}}}};
  answer["rows"][0]["reasons"] = {{{"kind", 0}, {"decibel", 18.0}, {"text", "a ridge"}},
                                  {{"kind", 16}, {"decibel", 0.0}, {"text", "no terrain"}}};
  answer["target_path"]["obstacles"][0]["text"] = "ridge 11.3 km out";
  nlohmann::json& step = answer["plan"]["steps"][0];
  step.erase("remarks");
  step["remark"] = "Aimed beside QABC";
  answer["plan"]["out"] = {"QXYZ 3.1, 12 % at best"};

  const auto old = read<act::StationsFound>(json);
  CHECK(old.answer.rows.at(0).reasons.empty());
  CHECK(old.answer.rows.at(0).station == now.answer.rows.at(0).station);
  CHECK(old.answer.question.learned[0].bias_db == -6.2);
  CHECK(old.answer.question.learned[0].stops == 0);
  CHECK(old.answer.target_path == now.answer.target_path);
  CHECK(old.answer.plan->steps.at(0).remarks.empty());
  CHECK(old.answer.plan->steps.at(0).brings == now.answer.plan->steps.at(0).brings);
  CHECK(old.answer.plan->out ==
        std::vector<NotInPlan>{{.name = "QXYZ 3.1, 12 % at best", .best_percent = {}}});
}

TEST_CASE("an old rig heading opens without its sentence of caution") {
  nlohmann::json json = example<act::SetStop>();
  const auto now = read<act::SetStop>(json);
  REQUIRE(now.stop.nose->caution);
  json["stop"]["nose"]["caution"] = "the trailer must stand in line behind its tow vehicle";
  const auto old = read<act::SetStop>(json);
  CHECK_FALSE(old.stop.nose->caution);
  CHECK(old.stop.nose->heading == now.stop.nose->heading);
}

TEST_CASE("a reason of an unknown kind is an error, not another reason") {
  nlohmann::json json = example<act::StationsFound>();
  json["answer"]["rows"][0]["reasons"] = {{{"kind", "flying_saucer"}, {"decibel", 1.0}}};
  CHECK_FALSE(action_from_json(json));
}

TEST_CASE("enums of facts are stored by name") {
  const nlohmann::json json = example<act::StationsFound>();
  const auto& reasons = json.at("answer").at("rows").at(0).at("reasons");
  REQUIRE(reasons.size() == reception::kReasonKinds);
  for (const auto& reason : reasons) CHECK(reason.at("kind").is_string());
  CHECK(reasons.at(2).at("around") == "town");
  CHECK(reasons.at(14).at("band").is_string());
  CHECK(reasons.at(17).at("warning") == "extreme_quantile");
  CHECK(reasons.at(18).at("what") == "standard");
  CHECK(reasons.at(18).at("assumed").is_string());
}

TEST_CASE("an import recorded before rasters could be imported still opens") {
  nlohmann::json json = example<act::IntakeFound>();
  const auto now = read<act::IntakeFound>(json);
  nlohmann::json& answer = json.at("answer");
  answer.erase("ground");
  answer.at("report").erase("ground");
  answer.at("look").erase("class_tables");
  answer.at("look").at("reading").erase("classes");
  answer.at("question").at("reading").erase("classes");
  const auto old = read<act::IntakeFound>(json);
  CHECK(old.answer.ground == GroundHeld{});
  CHECK_FALSE(old.answer.report->ground);
  CHECK(old.answer.report->stations == now.answer.report->stations);
  CHECK(old.answer.look->class_tables.empty());
  CHECK(old.answer.look->map == now.answer.look->map);
  CHECK(old.answer.look->columns == now.answer.look->columns);
  CHECK(old.answer.question.path == now.answer.question.path);
}
