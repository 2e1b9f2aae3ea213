#include "app/service/practice_log.hpp"
#include "tests/app/session/picked_files.hpp"
#include "tests/app/session/views.hpp"

#include <fstream>

#include <catch2/catch.hpp>

// The Logbook, the places ahead, and the data.
namespace mastwise::test {
namespace {

void nights_before(Stage& stage) {
  const auto practice = service::load_practice();
  REQUIRE(practice);
  LogbookFilesAnswer answer;
  answer.records = service::practice_log(*practice, moment_of(stage.model()));
  press(stage, act::LogbookFilesDone{answer});
  press(stage, act::Show{Place::Logbook});
  REQUIRE(stage.model().logbook.found.nights.size() == 3);
}

IntakeAnswer fetched_answer(const Intake& data) {
  IntakeAnswer answer = *data.answer;
  answer.report = IntakeReport{.fetched = FetchReport{.name = "Copernicus DEM GLO-90",
                                                      .notice = "(c) DLR e.V. 2010-2014",
                                                      .files = 9,
                                                      .bytes = 36'000'000,
                                                      .cells = {"N44W072", "N44W071"},
                                                      .without_file = 2,
                                                      .stations = ImportReport{}}};
  answer.question.taking = data.question.taking;
  return answer;
}

}  // namespace

std::vector<View> record_views() {
  return {
      {"logbook files, none found",
       [](Stage& s) { press(s, act::OpenSheet{Sheet::LogbookFiles}); }},
      {"logbook files, given out",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::LogbookFiles});
         press(s, act::AskLogbookFiles{LogbookTask::GiveTable, {}});
         press(s, act::AskLogbookFiles{LogbookTask::GiveBackup, {}});
       }},
      {"logbook files, taken in",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::LogbookFiles});
         press(s, act::AskLogbookFiles{LogbookTask::GiveBackup, {}});
         press(s, act::AskLogbookFiles{LogbookTask::TakeIn,
                                       s.model().logbook.files.answer->files.front().path});
       }},
      {"Logbook", [](Stage& s) { press(s, act::Show{Place::Logbook}); }},
      {"Logbook by station, with outcomes",
       [](Stage& s) {
         press(s, act::Show{Place::Logbook});
         press(s, act::ListTried{TriedBy::Stations});
         const auto rows = s.model().logbook.tried.rows;
         for (std::size_t i = 0; i < 3; ++i) {
           press(s, act::LogOutcome{key_of(rows[i].station.station), static_cast<Outcome>(i)});
         }
       }},
      {"Logbook after nights here", nights_before},
      {"Logbook without a position",
       [](Stage& s) {
         leave_practice(s);
         press(s, act::Show{Place::Logbook});
       }},
      {"Logbook without stations",
       [](Stage& s) {
         press(s, act::SetStop{Stop{.source = PositionSource::ByHand, .by_hand = kNowhere}});
         press(s, act::Show{Place::Logbook});
       }},
      {"stops, none", [](Stage& s) { press(s, act::OpenSheet{Sheet::Stops}); }},
      {"stops",
       [](Stage& s) {
         nights_before(s);
         press(s, act::OpenSheet{Sheet::Stops});
       }},
      {"Ahead", [](Stage& s) { press(s, act::Show{Place::Ahead}); }},
      {"Ahead without a position",
       [](Stage& s) {
         leave_practice(s);
         press(s, act::Show{Place::Ahead});
       }},
      {"Ahead, the way without heights",
       [](Stage& s) {
         press(s, act::Show{Place::Ahead});
         type_number(s, Field::AheadPlace, "46.5,-118.5");
       }},
      {"Ahead, nothing pinned",
       [](Stage& s) {
         press(s, act::Show{Place::Ahead});
         type_number(s, Field::AheadPlace, "43.1,-118.2");
         press(s, act::CompareBy{AheadWants::Pinned});
       }},
      {"Ahead with more places than fit",
       [](Stage& s) {
         press(s, act::Show{Place::Ahead});
         for (const char* place : {"42.6,-118.6", "42.7,-118.6", "43.1,-118.2", "43.4,-118.9",
                                   "43.6,-119.5", "43.2,-120.4", "42.2,-121.7"}) {
           type_number(s, Field::AheadPlace, place);
         }
         press(s, act::ShowPlacesFrom{2});
       }},
      {"Ahead with two places",
       [](Stage& s) {
         press(s, act::Show{Place::Ahead});
         type_number(s, Field::AheadPlace, "43.1,-118.2");
         type_number(s, Field::AheadPlace, "-28.2,-65.1");
       }},
      {"data", [](Stage& s) { press(s, act::OpenSheet{Sheet::Import}); }},
      {"data along the way",
       [](Stage& s) {
         press(s, act::Show{Place::Ahead});
         type_number(s, Field::AheadPlace, "44.6,-118.2");
         type_number(s, Field::AheadPlace, "46.2,-119.7");
         press(s, act::OpenSheet{Sheet::Import});
       }},
      {"data without a position",
       [](Stage& s) {
         leave_practice(s);
         press(s, act::OpenSheet{Sheet::Import});
       }},
      {"data, where to import from",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::Import});
         press(s, act::ShowImportPlaces{});
       }},
      {"data, a folder",
       [](Stage& s) {
         const std::filesystem::path table = put_table(s, 3);
         press(s, act::OpenIntakeFolder{table.parent_path()});
       }},
      {"data, a folder that is gone",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::Import});
         press(s, act::OpenIntakeFolder{"/no/such/folder"});
       }},
      {"data, a table", pick_table},
      {"data, which column",
       [](Stage& s) {
         pick_table(s);
         press(s, act::ChooseColumnOf{"latitude"});
       }},
      {"data, being taken in",
       [](Stage& s) {
         press(s, act::PickTable{put_table(s, 20'000)});
         s.session().act(act::TakeIn{});
         s.round();
         REQUIRE(s.model().data.question.step == IntakeStep::TakingIn);
       }},
      {"data, taken in",
       [](Stage& s) {
         pick_table(s);
         press(s, act::TakeIn{});
       }},
      {"data, an update taken in",
       [](Stage& s) {
         pick_table(s);
         press(s, act::TakeIn{});
         press(s, act::PickTable{put_table(s, 9)});
         press(s, act::TakeIn{});
         REQUIRE_FALSE(s.model().data.report->stations.changes.empty());
       }},
      {"data, what to fetch",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::Import});
         press(s, act::ShowOffers{});
       }},
      {"data, an offer of squares",
       [](Stage& s) {
         press(s, act::SetStop{Stop{.source = PositionSource::ByHand,
                                    .by_hand = *Position::at_deg(42.5, -118.5)}});
         press(s, act::OpenSheet{Sheet::Import});
         press(s, act::ShowOffers{});
         press(s, act::PickOffer{"glo_90"});
         REQUIRE(s.targets().find("fetch now") != nullptr);
       }},
      {"data, an offer in a browser",
       [](Stage& s) {
         press(s, act::InBrowser{});
         press(s, act::OpenSheet{Sheet::Import});
         press(s, act::ShowOffers{});
         press(s, act::PickOffer{"us_lms"});
         REQUIRE(s.targets().find("offer back") != nullptr);
       }},
      {"data, a fetch that failed",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::Import});
         press(s, act::ShowOffers{});
         press(s, act::PickOffer{"us_lms"});
         press(s, act::FetchNow{});
         REQUIRE_FALSE(s.model().data.trouble.empty());
       }},
      {"data, fetched",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::Import});
         press(s, act::ShowOffers{});
         press(s, act::PickOffer{"us_lms"});
         press(s, act::FetchNow{});
         press(s, act::IntakeFound{fetched_answer(s.model().data)});
         REQUIRE(s.model().data.question.step == IntakeStep::Report);
       }},
      {"data, where a way can be from",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::Import});
         press(s, act::ShowRoutePlaces{});
       }},
      {"data, the ways in a file",
       [](Stage& s) {
         press(s, act::OpenSheet{Sheet::Import});
         const std::string path = s.model().data.answer->places.front().path + "/trip.gpx";
         std::ofstream(path) << "<gpx version=\"1.1\"><wpt lat=\"1\" lon=\"2\"/><rte><name>Lake"
                                "</name><rtept lat=\"44\" lon=\"-118\"/></rte></gpx>";
         press(s, act::PickRoute{path});
         REQUIRE(s.targets().find("route 1") != nullptr);
       }},
      {"data, a pack", pick_pack},
      {"data, a pack taken in",
       [](Stage& s) {
         pick_pack(s);
         press(s, act::TakeIn{});
       }},
      {"data, a raster", pick_cover},
      {"data, a raster taken in",
       [](Stage& s) {
         pick_cover(s);
         press(s, act::TakeIn{});
       }},
      {"data with land cover",
       [](Stage& s) {
         pick_cover(s);
         press(s, act::TakeIn{});
         press(s, act::OpenIntakeFolder{});
       }},
      {"data with a source",
       [](Stage& s) {
         pick_table(s);
         press(s, act::TakeIn{});
         press(s, act::OpenIntakeFolder{});
       }},
  };
}

}  // namespace mastwise::test
