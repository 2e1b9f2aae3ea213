#include "app/shell/recording.hpp"

#include "app/model/action_json.hpp"
#include "tests/support/action_examples.hpp"
#include "tests/support/receiver_log.hpp"
#include "tests/support/stage.hpp"

#include <fstream>
#include <set>

#include <catch2/catch.hpp>

using namespace mastwise;
using test::Stage;

namespace {

template <class T>
const T& as(const Action& action) {
  return *action.get_if<T>();
}

}  // namespace

TEST_CASE("every action reads back from its JSON") {
  std::set<std::string> names;
  for (const Action& action : test::every_action()) {
    const nlohmann::json json = nlohmann::json::parse(to_json(action).dump());
    INFO(json.dump());
    const auto read = action_from_json(json);
    REQUIRE(read);
    CHECK(read->name() == action.name());
    CHECK(to_json(*read) == json);
    names.insert(json.at("do").get<std::string>());
  }
  CHECK(names.size() == AllActions::kSize);
}

TEST_CASE("what actions carry reads back the same, to the last bit") {
  for (const Action& action : test::every_action()) {
    const auto read = action_from_json(nlohmann::json::parse(to_json(action).dump()));
    REQUIRE(read);
    if (action.is<act::SetStop>()) {
      CHECK(as<act::SetStop>(*read).stop == as<act::SetStop>(action).stop);
    } else if (action.is<act::StationsFound>()) {
      CHECK(as<act::StationsFound>(*read).answer == as<act::StationsFound>(action).answer);
    } else if (action.is<act::PlacesFound>()) {
      CHECK(as<act::PlacesFound>(*read).answer == as<act::PlacesFound>(action).answer);
    } else if (action.is<act::LogbookFilesDone>()) {
      CHECK(as<act::LogbookFilesDone>(*read).answer == as<act::LogbookFilesDone>(action).answer);
    } else if (action.is<act::TakePlace>()) {
      CHECK(as<act::TakePlace>(*read).place == as<act::TakePlace>(action).place);
    } else if (action.is<act::IntakeFound>()) {
      CHECK(as<act::IntakeFound>(*read).answer == as<act::IntakeFound>(action).answer);
    } else if (action.is<act::ReceiverBytes>()) {
      CHECK(as<act::ReceiverBytes>(*read).bytes == as<act::ReceiverBytes>(action).bytes);
    } else if (action.is<act::MapDrawn>()) {
      CHECK(as<act::MapDrawn>(*read).sheet == as<act::MapDrawn>(action).sheet);
    } else if (action.is<act::RouteSurveyed>()) {
      CHECK(as<act::RouteSurveyed>(*read).sheet == as<act::RouteSurveyed>(action).sheet);
    } else if (action.is<act::AreaScanned>()) {
      CHECK(as<act::AreaScanned>(*read).sheet == as<act::AreaScanned>(action).sheet);
    } else if (action.is<act::Tick>()) {
      CHECK(as<act::Tick>(*read).utc == as<act::Tick>(action).utc);
    }
  }
}

TEST_CASE("what is no action is an error that says which") {
  for (const char* text : {"7", "[]", "{}", R"({"do":"Fly"})", R"({"do":"Show"})", R"({"do":7})",
                           R"({"do":"Show","place":"Aim"})", R"({"do":"SetStop","stop":{}})",
                           R"({"do":"StationsFound","answer":{"question":1}})"}) {
    INFO(text);
    CHECK_FALSE(action_from_json(nlohmann::json::parse(text)));
  }
}

TEST_CASE("a recorded session replays onto the same model") {
  test::TemporaryFolder folder;
  const std::string file = folder.file("session.jsonl");
  Stage stage;
  const Model begun = stage.model();
  {
    auto recorder = shell::Recorder::begin(file);
    REQUIRE(recorder);
    stage.session().record_to([&](const Action& action) { recorder->record(action); });
    const Position parked = *Position::at_deg(42.5, -118.5);
    stage.tap("use receiver");
    for (int second = 0; second < 6; ++second) {
      stage.receive(test::epoch(36'000 + second, parked));
      stage.receive("$GP\xFF noise \x01");
      stage.wait(milliseconds(1000));
    }
    stage.tap("type nose");
    stage.tap_keys("118");
    stage.tap("key Use it");
    stage.tap("place Stations");
    stage.tap("search");
    stage.tap_keys("Q");
    stage.tap("key Done");
    stage.tap(stage.targets().all().back().name);
    stage.receive(test::sentence("HEHDT,123.4,T"));
    stage.tap("turn dial");
    stage.tap("raise");
    stage.confirm();
    stage.session().record_to({});
  }
  const auto actions = shell::read_recording(file);
  REQUIRE(actions);
  CHECK(actions->size() > 100);

  const auto magnetic = shell::load_magnetic_model();
  const auto practice = shell::load_practice();
  const World world{*magnetic, shell::practice_stop(*practice)};
  Model replayed = begun;
  for (const Action& action : *actions) apply(replayed, action, world);
  CHECK(replayed.safety.antenna == safety::Antenna::Raised);
  CHECK(replayed.receiver == stage.model().receiver);
  CHECK(to_json(replayed) == to_json(stage.model()));
  CHECK(replayed == stage.model());

  // The comparison sees a difference: one action less is another model.
  Model shorter = begun;
  for (std::size_t i = 0; i + 1 < actions->size(); ++i) apply(shorter, (*actions)[i], world);
  shorter.settings.night = !shorter.settings.night;
  CHECK_FALSE(shorter == stage.model());
}

TEST_CASE("a recording that cannot be read names its line") {
  test::TemporaryFolder folder;
  std::ofstream(folder.file("bad")) << to_json(Action(act::TakeBack{})).dump() << "\n{\"do\":\n";
  const auto read = shell::read_recording(folder.file("bad"));
  REQUIRE_FALSE(read);
  CHECK(read.error().message().find("line 2") != std::string::npos);
  CHECK_FALSE(shell::read_recording(folder.file("none")));
  CHECK_FALSE(shell::Recorder::begin(folder.file("no_folder/x")));
}

TEST_CASE("a recording takes text that is no UTF-8") {
  test::TemporaryFolder folder;
  auto recorder = shell::Recorder::begin(folder.file("latin"));
  REQUIRE(recorder);
  recorder->record(act::Trouble{"caf\xE9"});
  const auto read = shell::read_recording(folder.file("latin"));
  REQUIRE(read);
  CHECK(read->size() == 1);
}
