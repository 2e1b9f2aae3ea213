#include "app/map/clusters.hpp"

#include "app/session/model.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

double apart(const Cluster& a, const Cluster& b) {
  return std::hypot(a.at.right - b.at.right, a.at.down - b.at.down);
}

}  // namespace

TEST_CASE("every listed station is in one cluster, and the likeliest of it is named") {
  test::Stage stage;
  stage.set(act::Show{Place::Map});
  const Model& model = stage.model();
  const auto all = clusters(model.map.view, model, {});
  std::set<const StationRow*> seen;
  bool gathered = false;
  for (const Cluster& cluster : all) {
    gathered = gathered || cluster.rows.size() > 1;
    for (const StationRow* row : cluster.rows) CHECK(seen.insert(row).second);
    for (const Cluster& other : all) CHECK((&cluster == &other || apart(cluster, other) >= 40.0));
    // The list is in order of the chance, and the target comes first.
    const bool target = key_of(cluster.first().station) == key_of(*model.stop.target);
    for (const StationRow* row : cluster.rows) CHECK((target || row >= &cluster.first()));
  }
  CHECK(gathered);
  CHECK(seen.size() == model.findings.listed.size());
}

TEST_CASE("a search in the list leaves only its stations on the map") {
  test::Stage stage;
  stage.set(act::Show{Place::Stations});
  stage.set(act::OpenKeypad{KeypadPurpose::Search});
  stage.set(act::KeypadType{"QB"});
  stage.set(act::KeypadAccept{});
  stage.set(act::Show{Place::Map});
  std::size_t shown = 0;
  for (const Cluster& cluster : clusters(stage.model().map.view, stage.model(), {})) {
    for (const StationRow* row : cluster.rows) {
      ++shown;
      CHECK(row->station.call_sign.find("QB") == 0);
    }
  }
  CHECK(shown > 0);
  CHECK(stage.shows_within("Only stations that match"));
}

TEST_CASE("touching a cluster again selects its stations one after another") {
  test::Stage stage;
  stage.set(act::Show{Place::Map});
  const auto all = clusters(stage.model().map.view, stage.model(), {});
  const auto several = std::max_element(
      all.begin(), all.end(),
      [](const Cluster& a, const Cluster& b) { return a.rows.size() < b.rows.size(); });
  REQUIRE(several->rows.size() > 1);
  std::set<std::string> touched;
  std::optional<StationKey> selected = next_of(*several, {});
  CHECK(selected == key_of(several->first().station));
  for (std::size_t i = 0; i < several->rows.size(); ++i) {
    REQUIRE(selected);
    touched.insert(selected->id);
    selected = next_of(*several, selected);
  }
  CHECK(touched.size() == several->rows.size());
  const Cluster single{.at = {}, .rows = {several->rows.front()}};
  CHECK_FALSE(next_of(single, key_of(single.first().station)));
}
