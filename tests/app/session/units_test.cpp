#include "app/words/units.hpp"

#include "app/session/questions.hpp"
#include "app/words/phrases.hpp"
#include "app/words/reasons.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;
using test::Stage;

// A touch on the units must not ask the worker for another survey.
TEST_CASE("the units button changes the words and leaves the survey's question as it was") {
  Stage stage(test::kTablet);
  stage.settle();
  const Model& model = stage.model();
  REQUIRE(model.stations);
  const StationsQuestion asked = stations_question(model);
  const StationsAnswer answered = *model.stations;
  REQUIRE(answered.question == asked);
  const auto& reasons = model.findings.reasons;
  const auto found =
      std::find_if(reasons.begin(), reasons.end(), [](const reception::Reason& reason) {
        return words::reason(reason, true) != words::reason(reason, false);
      });
  REQUIRE(found != reasons.end());
  const auto shown = [&](bool miles) {
    stage.set(act::OpenSheet{Sheet::Path});
    stage.settle();
    std::string text = stage.all_text();
    std::replace(text.begin(), text.end(), '\n', ' ');
    stage.set(act::OpenSheet{Sheet::None});
    const std::string far = words::distance(model.findings.card->distance_m, miles);
    return text.find(far) != std::string::npos;
  };
  REQUIRE(model.settings.miles);
  CHECK(shown(true));
  CHECK_FALSE(shown(false));

  stage.set(act::Show{Place::Here});
  stage.tap("settings");
  stage.tap("miles off");
  stage.tap("close sheet");

  CHECK_FALSE(model.settings.miles);
  CHECK(stations_question(model) == asked);
  stage.settle();
  CHECK(*model.stations == answered);
  CHECK(shown(false));
  CHECK_FALSE(shown(true));
}
