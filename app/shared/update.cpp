#include "app/shared/actions.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"

#include <algorithm>
#include <utility>

namespace mastwise {
namespace {

// The heading sensor is compared with the course while the rig drives straight.
void learn_deviation(Shared& shared, const nmea::Fix& fix) {
  const auto read = shared.receiver.heading(shared.now).magnetic_heading;
  const auto& field = shared.findings.field;
  const bool by_receiver = shared.stop.source == PositionSource::Receiver;
  if (!read || !field || !fix.course || !fix.speed_mps || !by_receiver) return;
  // A log that is played may be of another rig.
  if (shared.settings.sensor_mount == SensorMount::Antenna || shared.link.recorded) return;
  const auto stretch =
      shared.stretch_finder.add({.course = *fix.course, .speed_mps = *fix.speed_mps, .read = *read},
                                *field, moment_of(shared), shared.now);
  if (stretch && add_stretch(shared.settings.sensor_stretches, *stretch)) {
    shared.trouble =
        words::say("Iron on the rig has moved: the heading sensor's deviation is learned anew.");
  }
}

// A heading sensor turns with the rig only if it is fixed to it.
void watch_turn(Shared& shared) {
  if (shared.settings.sensor_mount != SensorMount::Rig) return shared.rig_turn.forget();
  const auto sensor = shared.receiver.heading(shared.now);
  if (sensor.true_heading) {
    shared.rig_turn.add(sensor.true_heading->degrees(), shared.now);
  } else if (sensor.magnetic_heading) {
    shared.rig_turn.add(sensor.magnetic_heading->degrees(), shared.now);
  }
}

// While its sheet is open and its iron is not known, each new reading of the tablet counts.
void learn_iron(Shared& shared, const motion::Vector& reading_ut) {
  if (shared.sheet != Sheet::Tablet || !shared.settings.tablet_points.empty()) return;
  TabletIron& iron = shared.tablet_iron;
  if (!motion::add_point(iron.seen, reading_ut)) return;
  iron.fitted = iron.seen;
  iron.fit = motion::fit_iron(iron.seen);
  if (motion::usable(iron.fit)) shared.settings.tablet_points = std::exchange(iron.seen, {});
}

// One position for each epoch of the receiver.
void follow_receiver(Shared& shared) {
  const nmea::Fix fix = shared.receiver.fix(shared.now);
  if (!fix.position || fix.positions_taken == shared.positions_followed) return;
  shared.positions_followed = fix.positions_taken;
  shared.parked.add(*fix.position, shared.now);
  shared.course.add(*fix.position, fix.course, fix.speed_mps, shared.now);
  learn_deviation(shared, fix);
}

class SharedUpdater {
 public:
  SharedUpdater(Shared& shared, const World& world) : s_(shared), world_(world) {}

  void operator()(const act::Tick& tick) {
    s_.now = tick.now;
    s_.machine_time = tick.utc;
  }
  void operator()(const act::ReceiverBytes& received) {
    s_.now = received.now;
    s_.receiver.feed(received.bytes, received.now);
    follow_receiver(s_);
    watch_turn(s_);
  }
  void operator()(const act::TabletBytes& received) {
    s_.now = received.now;
    s_.tablet.feed(received.bytes, received.now, [&](const motion::Sample& sample) {
      if (sample.kind == motion::Sample::Kind::acceleration) s_.shake.add(sample);
      if (sample.kind == motion::Sample::Kind::field) learn_iron(s_, sample.value);
    });
  }
  void operator()(const act::TabletLinkChanged& changed) {
    s_.tablet_link = changed.link;
    if (changed.link.state == Link::State::Open) return;
    s_.tablet.forget();
    s_.shake.forget();
  }
  void operator()(const act::BacklightFound&) { s_.backlight = true; }
  void operator()(const act::VoiceAnswered& answered) { s_.voiceless = !answered.heard; }
  void operator()(const act::InBrowser&) { s_.in_browser = true; }
  void operator()(const act::LinkChanged& changed) {
    // The dates of a log that is played are old, not wrong by 1,024 weeks: nothing to repair.
    if (changed.link.recorded && !s_.link.recorded) {
      s_.receiver = nmea::Receiver(nmea::kNoFloor);
    }
    s_.link = changed.link;
  }

  void operator()(const act::Show& show) {
    s_.place = show.place;
    s_.trouble.clear();
    s_.notice.clear();
  }
  void operator()(const act::SwitchMap&) {
    s_.place = s_.place == Place::Map ? Place::Stations : Place::Map;
  }
  void operator()(const act::OpenSheet& open) { s_.sheet = open.sheet; }
  void operator()(const act::NextSetting& next) { next_setting(s_.settings, next.setting); }
  void operator()(const act::ChooseSetting& chosen) {
    choose_setting(s_.settings, chosen.setting, chosen.value);
  }

  void operator()(const act::SetStop& set) { s_.stop = set.stop; }
  void operator()(const act::UseEarlierStop&) {
    if (!s_.earlier) return;
    remember(s_, "Earlier stop used");
    s_.stop = s_.earlier->stop;
    s_.earlier.reset();
  }
  void operator()(const act::NotSaved& waiting) { s_.unsaved = {waiting.records, waiting.why}; }
  void operator()(const act::SwitchPractice&) {
    const bool leaving = s_.stop.practice;
    remember(s_, leaving ? "Practice ended" : "Practice started");
    s_.stop = leaving ? Stop{} : world_.practice_stop;
    s_.stations.reset();
  }
  void operator()(const act::SelectStation& selected) { aim(selected.key, std::nullopt); }
  void operator()(const act::Explain& explain) { s_.explained = explain.term; }
  void operator()(const act::OpenGuide& open) { s_.guide = open.guide; }
  void operator()(const act::AimTurn& turn) { aim(turn.key, turn.bearing); }
  void operator()(const act::PinStation& pin) {
    remember(s_, is_pinned(s_.stop, pin.key) ? "Unpinned" : "Pinned");
    if (std::erase(s_.stop.pinned, pin.key) == 0) s_.stop.pinned.push_back(pin.key);
    if (s_.stations) note_pins(s_.stop, *s_.stations);
  }
  void operator()(const act::StationsFound& found) {
    s_.stations = found.answer;
    note_pins(s_.stop, *s_.stations);
    // A newly imported table may have more facts of the target, or another position.
    if (!s_.stop.target) return;
    const StationRow* row = find_row(*s_.stations, key_of(*s_.stop.target));
    if (row != nullptr) s_.stop.target = row->station;
  }
  void operator()(const act::PlacesFound& found) { s_.places = found.answer; }

  void operator()(const act::Trouble& trouble) { s_.trouble = trouble.what; }
  void operator()(const act::TakeBack&) {
    if (s_.undo.empty() || undo_is_antennas(s_)) return;
    TakenBack back = std::move(s_.undo.back());
    s_.undo.pop_back();
    s_.undo_shown = s_.now;
    s_.stop = std::move(back.stop);
    for (Action& action : back.also) s_.following.push_back(std::move(action));
  }

  // The features hear the rest.
  template <class Other>
  void operator()(const Other&) {}

 private:
  void aim(const StationKey& key, std::optional<Bearing<True>> turn) {
    const StationRow* row = s_.stations ? find_row(*s_.stations, key) : nullptr;
    if (row == nullptr) return;
    remember(s_,
             words::fill(words::say("Aim at {station}"), {{"station", row->station.call_sign}}));
    s_.stop.target = row->station;
    s_.stop.turn = turn;
    s_.place = Place::Aim;
    s_.sheet = Sheet::None;
  }

  Shared& s_;
  const World& world_;
};

}  // namespace

TakenBack& remember(Shared& shared, std::string what) {
  if (shared.undo.size() >= kMostUndo) shared.undo.erase(shared.undo.begin());
  shared.undo.push_back({.what = std::move(what), .stop = shared.stop, .at = shared.now});
  shared.undo_shown = shared.now;
  return shared.undo.back();
}

bool undo_is_antennas(const Shared& shared) {
  const auto& changed = shared.findings.antenna_changed;
  return changed && (shared.undo.empty() || shared.undo.back().at < *changed);
}

void update(Shared& shared, const Action& action, const World& world) {
  visit(action, SharedActions{}, SharedUpdater(shared, world));
}

}  // namespace mastwise
