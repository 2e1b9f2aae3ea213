#include "app/service/startup.hpp"
#include "app/session/action_json.hpp"
#include "app/session/working_state.hpp"
#include "app/shared/json.hpp"
#include "app/shared/settings_json.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

// As the first release wrote them: enums as numbers.
TEST_CASE("settings of the first release still open") {
  const auto settings = nlohmann::json::parse(R"({"carrier":2,"channels_by_hand":false,
      "gear":{"amplifier":false,"cable_m":12.0,"height_m":null,"pattern_table":"","preset":"",
              "splits":null},
      "handle":null,"left_handed":true,"miles":false,"night":true,"notation":3,
      "pinned_networks":["Basin Public"],"pointing":2,"tablet":"0123456789abcdef",
      "ticked_networks":[],"tone":false})")
                            .get<Settings>();
  CHECK(settings.carrier == Carrier::trailer);
  CHECK(settings.notation == Notation::UtmUps);
  CHECK(settings.pointing == PointingMethod::baseplate_compass);
  CHECK(settings.gear.cable_m == 12.0);
  CHECK_FALSE(settings.gear.amplifier);
  CHECK(settings.left_handed);
  CHECK(settings.look == LookChoice::Night);
  CHECK_FALSE(settings.miles);
  CHECK(settings.pinned_networks == std::vector<std::string>{"Basin Public"});
  CHECK(settings.tablet == "0123456789abcdef");
}

// As version 2 wrote them: gear without the TV's decoders, a stop without its noise.
TEST_CASE("gear and a stop of before the TV and the noise were asked still open") {
  const auto gear = nlohmann::json::parse(R"({"amplifier":true,"cable_m":null,"height_m":4.0,
      "pattern_table":"","preset":"","splits":2})")
                        .get<GearChoice>();
  CHECK(gear.height_m == 4.0);
  CHECK_FALSE(gear.decoders);
  const auto stop = nlohmann::json::parse(R"({"by_hand":[42.5,-118.5],"by_hand_error_m":50.0,
      "by_name":"","nose":null,"pinned":[],"practice":false,"source":"by_hand",
      "strong_stations":[],"surroundings":"town","tail_mark":null,"target":null})")
                        .get<Stop>();
  CHECK(stop.surroundings == reception::Surroundings::town);
  CHECK_FALSE(stop.noise);
  CHECK_FALSE(stop.inverter_on);
}

TEST_CASE("the TV's decoders are stored by name") {
  GearChoice gear;
  gear.decoders = gear::DecoderSet{gear::Decoder::atsc1, gear::Decoder::atsc3_encrypted};
  const nlohmann::json json = gear;
  CHECK(json.at("decoders") == nlohmann::json({"atsc1", "atsc3", "atsc3_encrypted"}));
  CHECK(json.get<GearChoice>() == gear);
  gear.decoders = gear::DecoderSet{};
  CHECK(nlohmann::json(gear).get<GearChoice>() == gear);
}

TEST_CASE("settings are stored by name and read back the same") {
  Settings settings;
  settings.carrier = Carrier::trailer_straight;
  settings.notation = Notation::Mgrs;
  settings.pointing = PointingMethod::set_compass;
  const nlohmann::json json = settings;
  CHECK(json.at("carrier") == "trailer_straight");
  CHECK(json.at("notation") == "mgrs");
  CHECK(json.at("pointing") == "set_compass");
  CHECK(json.get<Settings>() == settings);
}

TEST_CASE("to point by Polaris, as it was stored, is to point by a star") {
  auto json = nlohmann::json(Settings{});
  json["pointing"] = "pole_star";
  CHECK(json.get<Settings>().pointing == PointingMethod::star);
  CHECK(nlohmann::json(json.get<Settings>()).at("pointing") == "pole_star");
  json["pointing"] = 9u;  // in the first release
  CHECK(json.get<Settings>().pointing == PointingMethod::star);
}

TEST_CASE("actions of the first release still open, under the names they had") {
  const auto name_of = [](const char* text) {
    const auto action = action_from_json(nlohmann::json::parse(text));
    INFO(text);
    REQUIRE(action);
    return std::string(action->name());
  };
  CHECK(name_of(R"({"do":"CentreMap"})") == "CenterMap");
  // It ended the alarm, which no touch does any more.
  CHECK(name_of(R"({"do":"AntennaIsDown"})") == "QuietAlarm");
  const auto shown = action_from_json(nlohmann::json::parse(R"({"do":"Show","place":2})"));
  REQUIRE(shown);
  CHECK(shown->get_if<act::Show>()->place == Place::Aim);
  const auto asked = action_from_json(nlohmann::json::parse(R"({"do":"Ask","what":2})"));
  REQUIRE(asked);
  CHECK(asked->get_if<act::Ask>()->what == Asking::Roof);
  CHECK_FALSE(action_from_json(nlohmann::json::parse(R"({"do":"Show","place":99})")));
  CHECK_FALSE(action_from_json(nlohmann::json::parse(R"({"do":"Show","place":"nowhere"})")));
}

TEST_CASE("2026-11-29: settings and a working state that nest 100,000 deep are not read") {
  const std::string nested = std::string(100'000, '[') + std::string(100'000, ']');
  const SettingsRead read = read_settings(R"({"miles":false,"of_tomorrow":)" + nested + "}");
  CHECK(read.dropped == std::vector<std::string>{"all settings"});
  CHECK(read.settings == Settings{});
  const auto magnetic = service::load_magnetic_model();
  REQUIRE(magnetic);
  Model model{Shared{.receiver = nmea::Receiver(service::build_date())}};
  const Model before = model;
  CHECK_FALSE(restore(model, R"({"search":"QA","undo":)" + nested + "}", World{*magnetic, {}}));
  CHECK(model == before);
}

TEST_CASE("2026-11-29: gear that nobody has is dropped from the settings") {
  for (const char* gear : {R"("height_m":1e308)", R"("height_m":0)", R"("cable_m":-1)",
                           R"("cable_m":1e9)", R"("splits":-2000000000)"}) {
    INFO(gear);
    const SettingsRead read =
        read_settings(std::string(R"({"miles":false,"gear":{)") + gear + "}}");
    CHECK(read.dropped == std::vector<std::string>{"gear"});
    CHECK(read.settings.gear == GearChoice{});
    CHECK_FALSE(read.settings.miles);
  }
}

TEST_CASE("2026-11-29: a choice with a fraction and an impossible time are refused") {
  const auto reads = [](const char* text) {
    return static_cast<bool>(action_from_json(nlohmann::json::parse(text)));
  };
  CHECK(reads(R"({"do":"Show","place":2})"));
  CHECK_FALSE(reads(R"({"do":"Show","place":2.5})"));
  CHECK_FALSE(reads(R"({"do":"Show","place":-1e308})"));
  CHECK(reads(R"({"do":"Tick","now":1000,"utc":1790000000000})"));
  CHECK_FALSE(reads(R"({"do":"Tick","now":9223372036854775807,"utc":0})"));
  CHECK_FALSE(reads(R"({"do":"Tick","now":0,"utc":-9223372036854775808})"));
  CHECK_FALSE(reads(R"({"do":"Tick","now":0,"utc":1e300})"));
}

// std::from_chars reads them as numbers.
TEST_CASE("2026-11-29: infinity and NaN are not typed numbers") {
  CHECK_FALSE(read_number("inf"));
  CHECK_FALSE(read_number("nan"));
  CHECK(*read_number("12.5") == 12.5);
}

TEST_CASE("2026-11-29: a tick and a floor out of their range are not restored") {
  const auto magnetic = service::load_magnetic_model();
  REQUIRE(magnetic);
  const World world{*magnetic, {}};
  const auto tick = [](const char* value) {
    return std::string(R"({"ticks":[{"key":{"source":"PRACTICE","id":"QAAB"},"tick":)") + value +
           "}]}";
  };
  Model model{Shared{.receiver = nmea::Receiver(service::build_date())}};
  for (const std::string& state :
       {tick("-1"), tick("1e300"), tick("0.5"), std::string(R"({"plan_floor":-1})"),
        std::string(R"({"list_of":-5.5})")}) {
    INFO(state);
    CHECK_FALSE(restore(model, state, world));
    CHECK(model.plan.ticks.empty());
  }
  CHECK(restore(model, tick("1"), world));
  CHECK(model.plan.ticks.size() == 1);
}
