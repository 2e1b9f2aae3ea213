#include "app/shell/recording.hpp"

#include "app/service/clocks.hpp"
#include "app/session/action_json.hpp"
#include "tests/support/action_examples.hpp"
#include "tests/support/receiver_log.hpp"
#include "tests/support/stage.hpp"
#include "tests/support/temporary_folder.hpp"

#include <fstream>
#include <set>
#include <type_traits>
#include <variant>

#include <catch2/catch.hpp>

using namespace mastwise;
using test::Stage;

namespace {

// How many members an action has: those that it names, and by hand for the four with JSON of
// their own.
template <class T>
constexpr std::size_t member_count() {
  if constexpr (requires { T::kFields; }) return T::kFields.size();
  if constexpr (std::is_same_v<T, act::ReceiverBytes>) return 2;
  if constexpr (std::is_same_v<T, act::MeterBytes>) return 2;
  if constexpr (std::is_same_v<T, act::TabletBytes>) return 2;
  if constexpr (std::is_same_v<T, act::MapDrawn>) return 1;
  static_assert(
      requires { T::kFields; } || std::is_same_v<T, act::ReceiverBytes> ||
          std::is_same_v<T, act::MeterBytes> || std::is_same_v<T, act::TabletBytes> ||
          std::is_same_v<T, act::MapDrawn> || std::is_empty_v<T>,
      "an action's members have no names");
  return 0;
}

template <class T>
bool equal(const T& one, const T& other) {
  return one == other;
}
bool equal(const MapMove& one, const MapMove& other) {
  return one.drag == other.drag && one.scale == other.scale && one.turn_deg == other.turn_deg &&
         one.about == other.about;
}

// Whether two actions of one kind have equal members. Actions do not have operator==.
template <class T>
bool carry_the_same(const T& one, const T& other) {
  if constexpr (member_count<T>() == 2) {
    const auto& [a, b] = one;
    const auto& [other_a, other_b] = other;
    return equal(a, other_a) && equal(b, other_b);
  } else if constexpr (member_count<T>() == 1) {
    const auto& [a] = one;
    const auto& [other_a] = other;
    return equal(a, other_a);
  } else {
    return true;
  }
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

TEST_CASE("the members of every action read back the same, to the last bit") {
  std::size_t compared = 0;
  for (const Action& action : test::every_action()) {
    const nlohmann::json json = to_json(action);
    INFO(json.dump());
    const auto read = action_from_json(nlohmann::json::parse(json.dump()));
    REQUIRE(read);
    const bool known = visit(action, AllActions{}, [&]<class Kind>(const Kind& sent) {
      const Kind* got = read->get_if<Kind>();
      REQUIRE(got != nullptr);
      CHECK(carry_the_same(sent, *got));
      // An example equal to a default action would hide a reader that reads nothing.
      if constexpr (member_count<Kind>() > 0 && std::is_default_constructible_v<Kind>) {
        CHECK_FALSE(carry_the_same(sent, Kind{}));
      }
      ++compared;
    });
    CHECK(known);
  }
  CHECK(compared == AllActions::kSize);
}

TEST_CASE("an unknown action is an error that names it") {
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
    stage.set(act::UseReceiver{});
    for (int second = 0; second < 6; ++second) {
      stage.receive(test::epoch(36'000 + second, parked));
      stage.receive("$GP\xFF noise \x01");
      stage.wait(milliseconds(1000));
    }
    stage.tap("nose");
    stage.tap("type nose");
    stage.tap_keys("118");
    stage.tap("key Use it");
    stage.set(act::OpenSheet{Sheet::None});
    stage.set(act::Show{Place::Stations});
    stage.tap("search");
    stage.tap_keys("Q");
    stage.tap("key Done");
    stage.tap("station QHTA QHTA-20");
    stage.receive(test::sentence("HEHDT,123.4,T"));
    stage.tap("dial up nose");
    stage.tap("raise");
    stage.confirm();
    stage.session().record_to({});
  }
  const auto actions = shell::read_recording(file);
  REQUIRE(actions);
  CHECK(actions->size() > 100);

  const auto magnetic = service::load_magnetic_model();
  const auto practice = service::load_practice();
  const World world{*magnetic, service::practice_stop(*practice), service::clocks_of_this_system()};
  Model replayed = begun;
  for (const Action& action : *actions) apply(replayed, action, world);
  CHECK(replayed.safety.antenna == safety::Antenna::Raised);
  CHECK(replayed.receiver == stage.model().receiver);
  CHECK(to_json(replayed) == to_json(stage.model()));
  CHECK(replayed == stage.model());

  // The comparison detects a difference: one action less gives another model.
  Model shorter = begun;
  for (std::size_t i = 0; i + 1 < actions->size(); ++i) apply(shorter, (*actions)[i], world);
  shorter.settings.miles = !shorter.settings.miles;
  CHECK_FALSE(shorter == stage.model());
}

TEST_CASE("an unreadable recording names its line") {
  test::TemporaryFolder folder;
  std::ofstream(folder.file("bad")) << to_json(Action(act::TakeBack{})).dump() << "\n{\"do\":\n";
  const auto read = shell::read_recording(folder.file("bad"));
  REQUIRE_FALSE(read);
  CHECK(read.error().message().find("line 2") != std::string::npos);
  CHECK_FALSE(shell::read_recording(folder.file("none")));
  CHECK_FALSE(shell::Recorder::begin(folder.file("no_folder/x")));
}

TEST_CASE("a recording accepts text that is not UTF-8") {
  test::TemporaryFolder folder;
  auto recorder = shell::Recorder::begin(folder.file("latin"));
  REQUIRE(recorder);
  recorder->record(act::Trouble{"caf\xE9"});
  const auto read = shell::read_recording(folder.file("latin"));
  REQUIRE(read);
  CHECK(read->size() == 1);
}

TEST_CASE("2026-11-29: a recording whose line nests 100,000 deep is refused with the line") {
  const test::TemporaryFolder folder;
  const std::string path = folder.file("deep.jsonl");
  std::ofstream(path) << R"({"do":"GoToRoof"})"
                      << "\n"
                      << R"({"do":"Show","place":)" << std::string(100'000, '[')
                      << std::string(100'000, ']') << "}\n";
  const auto refused = shell::read_recording(path);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().where.find("deep.jsonl, line 2") != std::string::npos);
}
