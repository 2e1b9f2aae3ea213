#include "app/service/startup.hpp"
#include "app/session/action.hpp"
#include "app/shell/session.hpp"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

// What must be written: in order, retried after growing pauses, told until it is on the disk.
using namespace mastwise;
using shell::Keeper;
using shell::Session;

namespace {

// A disk that refuses writes while it is full.
struct Disk {
  bool full = false;
  int tries = 0;
  std::vector<std::string> written = {};

  Result<Done> write(const std::string& what) {
    ++tries;
    if (full) return Error{.what = "the disk is full"};
    written.push_back(what);
    return Done{};
  }
};

Keeper keeper(Disk& disk) {
  return {.keep_antenna = [&](const AntennaChange&) { return disk.write("antenna"); },
          .keep_settings = [&](const Settings&) { return disk.write("settings"); },
          .keep_working_state = [&](const std::string&) { return disk.write("state"); },
          .keep_date = [&](const nmea::RepairedDate&) { return disk.write("date"); },
          .write_log =
              [&](const LogWrite& write) {
                const auto* outcome = std::get_if<OutcomeRecord>(&write);
                return disk.write(outcome != nullptr ? outcome->call_sign : "stop");
              },
          .save_paper = [](const Model&) { return Result<std::string>(std::string()); }};
}

// Not in practice, with two stations in the list.
class Owner {
 public:
  explicit Owner(Disk& disk)
      : magnetic_(*service::load_magnetic_model()),
        practice_(*service::load_practice()),
        world_{magnetic_, service::practice_stop(practice_)} {
    Model model{
        Shared{.settings = {.tablet = "dash"}, .receiver = nmea::Receiver(service::build_date())}};
    model.now = Monotonic(milliseconds(1'000));
    model.stop.source = PositionSource::ByHand;
    model.stop.by_hand = practice_.position;
    StationsAnswer answer;
    for (const char* call_sign : {"QAAA", "QBBB"}) {
      Station station = practice_.stations.front();
      station.call_sign = station.id = call_sign;
      answer.rows.push_back({.station = station});
    }
    model.stations = answer;
    session_ = std::make_unique<Session>(std::move(model), world_, shell::Errands{}, keeper(disk),
                                         Settings{.tablet = "dash"});
  }

  Session& session() { return *session_; }
  void log(const std::string& call_sign) {
    for (const StationRow& row : session_->model().stations->rows) {
      if (row.station.call_sign != call_sign) continue;
      session_->act(act::LogOutcome{key_of(row.station), Outcome::steady});
      return;
    }
  }
  void pass(milliseconds time) {
    now_ += time;
    session_->act(act::Tick{now_, UtcTime(milliseconds(1'800'000'000'000)) + (now_ - Monotonic{})});
  }

 private:
  MagneticModel magnetic_;
  service::Practice practice_;
  World world_;
  std::unique_ptr<Session> session_;
  Monotonic now_{milliseconds(1'000)};
};

}  // namespace

TEST_CASE(
    "a full disk loses no record: the screen counts them, and they are written later in order") {
  Disk disk{.full = true};
  Owner owner(disk);
  owner.pass(milliseconds(100));
  owner.log("QAAA");
  owner.log("QBBB");
  const Model& model = owner.session().model();
  CHECK(disk.written.empty());
  CHECK(model.unsaved.records >= 3);  // a stop and two outcomes
  CHECK(model.unsaved.why.find("the disk is full") != std::string::npos);
  // No touch clears it.
  owner.session().act(act::Show{Place::Here});
  CHECK(model.unsaved.records >= 3);

  disk.full = false;
  owner.pass(milliseconds(60'000));
  REQUIRE(disk.written.size() >= 3);
  CHECK(disk.written[0] == "stop");
  CHECK(disk.written[1] == "QAAA");
  CHECK(disk.written[2] == "QBBB");
  CHECK(model.logbook.writes.empty());
  CHECK(model.unsaved.records == 0);
}

TEST_CASE("a refused write is tried again after growing pauses, a minute apart at most") {
  Disk disk{.full = true};
  Owner owner(disk);
  owner.log("QAAA");
  std::vector<int> seconds;
  int before = disk.tries;
  for (int second = 1; second <= 300; ++second) {
    owner.pass(milliseconds(1'000));
    if (disk.tries > before) seconds.push_back(second);
    before = disk.tries;
  }
  REQUIRE(seconds.size() >= 6);
  for (std::size_t i = 1; i < seconds.size(); ++i) {
    const int pause = seconds[i] - seconds[i - 1];
    CHECK(pause <= 61);
    if (i > 1) CHECK(pause >= seconds[i - 1] - seconds[i - 2]);
  }
}

TEST_CASE("the raised antenna is written before whatever else waits") {
  Disk disk{.full = true};
  Owner owner(disk);
  owner.log("QAAA");
  owner.session().act(act::Ask{Asking::Raise});
  owner.session().act(act::ConfirmAsked{});
  disk.full = false;
  owner.pass(milliseconds(61'000));
  REQUIRE_FALSE(disk.written.empty());
  CHECK(disk.written[0] == "antenna");
}

// For every n, the n-th write and all after it fail once; nothing is lost and the order stays.
TEST_CASE("whichever write the disk refuses, every record arrives once and in order") {
  for (int refused = 0; refused < 8; ++refused) {
    Disk disk;
    Owner owner(disk);
    owner.pass(milliseconds(100));
    disk.written.clear();
    disk.tries = 0;
    for (const char* call_sign : {"QAAA", "QBBB", "QAAA", "QBBB"}) {
      disk.full = disk.tries >= refused;
      owner.log(call_sign);
    }
    disk.full = false;
    owner.pass(milliseconds(61'000));
    owner.pass(milliseconds(61'000));
    std::vector<std::string> records;
    for (const std::string& one : disk.written) {
      if (one != "state" && one != "settings") records.push_back(one);
    }
    INFO("refused from write " << refused);
    CHECK(records == std::vector<std::string>{"stop", "QAAA", "QBBB", "QAAA", "QBBB"});
  }
}

TEST_CASE("at most 10,000 records wait for the disk, the newest are refused and the foot says so") {
  Disk disk{.full = true};
  Owner owner(disk);
  owner.pass(milliseconds(100));
  const Model& model = owner.session().model();
  for (std::size_t i = 0; i < kMostWaiting + 50; ++i) owner.log(i % 2 == 0 ? "QAAA" : "QBBB");
  CHECK(model.logbook.writes.size() <= kMostWaiting);
  CHECK(model.logbook.writes.size() >= kMostWaiting - 1);
  CHECK(model.logbook.refused >= 49);
  // The list shows no record that will not be saved.
  const OutcomeRecord shown = model.logbook.log.outcomes.front();
  CHECK(shown == std::get<OutcomeRecord>(model.logbook.writes.back()));
  const std::size_t waiting = model.logbook.writes.size();

  // The raised antenna is never refused.
  owner.session().act(act::Ask{Asking::Raise});
  owner.session().act(act::ConfirmAsked{});
  CHECK(model.findings.antenna_up);
  disk.full = false;
  for (int minute = 0; minute < 60; ++minute) owner.pass(milliseconds(61'000));
  REQUIRE(disk.written.size() > waiting);
  CHECK(disk.written[0] == "antenna");
  CHECK(disk.written[1] == "stop");
  for (std::size_t i = 2; i <= waiting; ++i) {
    if (disk.written[i] != (i % 2 == 0 ? "QAAA" : "QBBB")) FAIL("out of order at " << i);
  }
  CHECK(model.logbook.writes.empty());
  CHECK(model.unsaved.records == 0);

  CHECK(model.logbook.refused > 0);
  owner.log("QAAA");
  CHECK(model.logbook.refused == 0);
}
