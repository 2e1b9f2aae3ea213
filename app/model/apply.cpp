#include "app/model/apply.hpp"

#include "app/model/keypad.hpp"
#include "app/model/nose.hpp"
#include "app/model/sweeping.hpp"
#include "app/model/typing.hpp"
#include "app/safety/update.hpp"

#include <algorithm>

namespace mastwise {
namespace {

template <class Choice>
void next(Choice& choice, Choice last) {
  choice = choice == last ? Choice{} : static_cast<Choice>(static_cast<int>(choice) + 1);
}

SafetyContext safety_context(const Model& model) {
  SafetyContext context{.now = model.now, .when = moment_of(model)};
  if (!model.stop.practice) context.place = model.findings.position;
  context.speed_kmh = model.findings.speed_kmh;
  return context;
}

// What follows from the antenna's guard for the rest of the model.
void heed(Model& model, const SafetyAnswer& answer) {
  if (answer.trouble) model.trouble = *answer.trouble;
  if (answer.confirmed == Asking::MergeLogbook) {
    ask_logbook_files(model, LogbookTask::TakeIn, model.log_files.to_merge);
  }
}

class Applier {
 public:
  Applier(Model& model, const World& world) : m_(model), world_(world) {}

  void operator()(const act::Tick& tick) {
    m_.now = tick.now;
    m_.machine_time = tick.utc;
    if (m_.taken_back && m_.now >= m_.taken_back->until) m_.taken_back.reset();
  }
  void operator()(const act::ReceiverBytes& received) {
    m_.now = received.now;
    m_.receiver.feed(received.bytes, received.now);
    follow_receiver();
  }
  void operator()(const act::LinkChanged& changed) { m_.link = changed.link; }

  void operator()(const act::Show& show) {
    m_.place = show.place;
    m_.trouble.clear();
  }
  void operator()(const act::SetStop& set) { m_.stop = set.stop; }
  void operator()(const act::UseReceiver&) {
    remember("Position from the receiver");
    m_.stop.source = PositionSource::Receiver;
  }
  void operator()(const act::NextNotation&) { next(m_.settings.notation, Notation::Mgrs); }
  void operator()(const act::SwitchNight&) { m_.settings.night = !m_.settings.night; }
  void operator()(const act::SwitchUnits&) { m_.settings.miles = !m_.settings.miles; }
  void operator()(const act::SwitchHand&) { m_.settings.left_handed = !m_.settings.left_handed; }
  void operator()(const act::SwitchPractice&);
  void operator()(const act::TurnDial&) { next(m_.dial_up, DialUp::Facing); }

  void operator()(const act::OpenSheet& open) {
    if (m_.sheet == Sheet::Import && open.sheet != Sheet::Import) leave_intake(m_.intake);
    m_.sheet = open.sheet;
    m_.paper_file.clear();
    if (open.sheet == Sheet::LogbookFiles) ask_logbook_files(m_, LogbookTask::Look);
    if (open.sheet == Sheet::Import) open_intake(m_.intake);
  }
  void operator()(const act::ChooseSurroundings& chosen) {
    remember("Other surroundings");
    m_.stop.surroundings = chosen.surroundings;
    m_.sheet = Sheet::None;
  }
  void operator()(const act::ChooseGear& chosen) {
    m_.settings.gear = chosen.gear;
    teach(m_);
  }

  void operator()(const act::OpenKeypad& open) {
    m_.keypad = Keypad{.purpose = open.purpose, .letters = open.purpose == KeypadPurpose::Search};
    if (open.purpose == KeypadPurpose::Search) m_.keypad->text = m_.search;
  }
  void operator()(const act::OpenField& open) {
    m_.keypad = Keypad{.purpose = KeypadPurpose::Field, .field = open.field};
  }
  void operator()(const act::UseMapPlace& use) {
    const FormAnswer& from = use.by_net ? m_.findings.from_net : m_.findings.from_map;
    if (!from.place) return;
    remember("Position from the map");
    stand_at(m_.stop, *from.place, from.place_error_m);
    m_.sheet = Sheet::None;
  }
  void operator()(const act::KeepHandle&) {
    if (const auto handle = handle_from(m_.form)) m_.settings.handle = handle;
  }
  void operator()(const act::ForgetHandle&) {
    remember("Handle deleted");
    m_.taken_back->handle = m_.settings.handle;
    m_.settings.handle.reset();
  }
  void operator()(const act::KeypadType& typed) {
    if (m_.keypad) type(*m_.keypad, typed.text);
    search_as_typed();
  }
  void operator()(const act::KeypadErase&) {
    if (m_.keypad) erase_last(*m_.keypad);
    search_as_typed();
  }
  void operator()(const act::KeypadEraseAll&) {
    if (m_.keypad) m_.keypad->text.clear();
    search_as_typed();
  }
  void operator()(const act::KeypadPage&) {
    if (m_.keypad) m_.keypad->letters = !m_.keypad->letters;
  }
  void operator()(const act::KeypadNorth&) {
    if (m_.keypad) m_.keypad->magnetic = !m_.keypad->magnetic;
  }
  void operator()(const act::KeypadAccept&) { accept_typed(m_); }
  void operator()(const act::TakePlace& take) { take_place(m_, take.place); }
  void operator()(const act::PlacesFound& found) { m_.places = found.answer; }
  void operator()(const act::KeypadClose&) { m_.keypad.reset(); }

  void operator()(const act::NoseFromCourse& from) {
    remember("Nose from the last course");
    nose_from_course(m_, from.backed_in);
  }
  void operator()(const act::NoseFromSensor&) {
    remember("Nose from the sensor");
    nose_from_sensor(m_);
  }
  void operator()(const act::NoseFromSun& from) {
    remember("Nose by the sun");
    nose_from_sun(m_, from.side);
  }
  void operator()(const act::MarkTail&) {
    remember("Tail marked");
    m_.stop.tail_mark = m_.findings.position;
    // The receiver moves to the other end, so its average restarts.
    m_.parked.restart();
  }
  void operator()(const act::NoseFromPoints&) {
    remember("Nose from two points");
    nose_from_points(m_);
  }
  void operator()(const act::NextCarrier&) { next(m_.settings.carrier, Carrier::trailer); }
  void operator()(const act::ForgetNose&) {
    remember("Rig heading deleted");
    m_.stop.nose.reset();
  }

  void operator()(const act::ClearSearch&) { m_.search.clear(); }
  void operator()(const act::SelectStation& selected) {
    const StationRow* row = m_.stations ? find_row(*m_.stations, selected.key) : nullptr;
    if (row == nullptr) return;
    remember("Aim at " + row->station.call_sign);
    m_.stop.target = row->station;
    m_.place = Place::Aim;
    m_.sheet = Sheet::None;
    m_.keypad.reset();
  }
  void operator()(const act::PinStation& pin) {
    remember(is_pinned(m_.stop, pin.key) ? "Unpinned" : "Pinned");
    auto& pinned = m_.stop.pinned;
    const auto place = std::find(pinned.begin(), pinned.end(), pin.key);
    if (place == pinned.end()) {
      pinned.push_back(pin.key);
    } else {
      pinned.erase(place);
    }
  }
  void operator()(const act::ChoosePlan& chosen) { m_.plan_for = chosen.plan_for; }
  void operator()(const act::NextPlanFloor&) {
    m_.plan_floor = (m_.plan_floor + 1) % kPlanFloors.size();
  }
  void operator()(const act::SwitchChannelEntry&) {
    m_.settings.channels_by_hand = !m_.settings.channels_by_hand;
  }
  void operator()(const act::ScanStep& scan) {
    m_.scan_step = scan.step;
    m_.sheet = Sheet::Scan;
  }
  void operator()(const act::TickStation& ticked) {
    forget_old_ticks();
    auto& ticks = m_.ticks;
    auto known = std::find_if(ticks.begin(), ticks.end(),
                              [&](const Ticked& one) { return one.key == ticked.key; });
    if (known == ticks.end()) known = ticks.insert(known, Ticked{.key = ticked.key});
    next(known->tick, ScanTick::not_found);
  }
  void operator()(const act::ChoosePointing& chosen) { m_.settings.pointing = chosen.method; }
  void operator()(const act::NextChanceFloor&) {
    m_.chance_floor = (m_.chance_floor + 1) % kChanceFloors.size();
  }
  void operator()(const act::SwitchGrouping&) { m_.by_network = !m_.by_network; }
  void operator()(const act::StationsFound& found) {
    m_.stations = found.answer;
    // A newly imported table may have more facts of the target, or another position.
    if (!m_.stop.target) return;
    const StationRow* row = find_row(*m_.stations, key_of(*m_.stop.target));
    if (row != nullptr) m_.stop.target = row->station;
  }

  void operator()(const act::SwitchMap&) { switch_map(m_); }
  void operator()(const act::MoveMap& move) {
    m_.map.view = moved(m_.map.view, move.move);
    if (move.move.turn_deg != 0.0) m_.map.up = MapUp::Turned;
  }
  void operator()(const act::TouchMap& touch) { touch_map(m_, touch.at); }
  void operator()(const act::NextMapUp&) { next_map_up(m_); }
  void operator()(const act::CenterMap&) { m_.map.view.middle = {}; }
  void operator()(const act::SwitchArea&) { switch_area(m_); }
  void operator()(const act::NextAreaRadius&) {
    m_.map.area_radius = (m_.map.area_radius + 1) % kAreaRadii_m.size();
    show_area(m_);
  }
  void operator()(const act::MapDrawn& drawn) {
    m_.map.sheet = drawn.sheet;
    m_.map.sheet_serial = ++m_.map.sheets;
  }
  void operator()(const act::AreaScanned& scanned) {
    m_.map.area_sheet = scanned.sheet;
    m_.map.area_serial = ++m_.map.sheets;
  }

  void operator()(const act::SwitchTone&) { m_.settings.tone = !m_.settings.tone; }

  void operator()(const act::BeginSweep& begin) { begin_sweep(m_, begin.by); }
  void operator()(const act::TurnSweep& turn) { turn_sweep(m_, turn.degrees); }
  void operator()(const act::SetMeter& set) { set_meter(m_, set.by); }
  void operator()(const act::ReadMeter& read) { read_sweep(m_, read.nothing); }
  void operator()(const act::NextScale&) { next_scale(m_); }
  void operator()(const act::DropReading&) { drop_sweep_reading(m_); }
  void operator()(const act::MarkEdge& edge) { mark_sweep_edge(m_, edge.right); }
  void operator()(const act::KeepSweep&) {
    remember("Sweep saved");
    keep_sweep(m_);
    log_sweep(m_);
  }
  void operator()(const act::ForgetCorrection&) {
    remember("Correction deleted");
    m_.stop.strong_stations.clear();
  }

  void operator()(const act::DropPlace& drop) {
    if (drop.index < m_.ahead.size()) {
      remember_ahead("Place removed");
      m_.ahead.erase(m_.ahead.begin() + static_cast<std::ptrdiff_t>(drop.index));
    }
  }
  void operator()(const act::SwitchAlong&) { m_.along = !m_.along; }
  void operator()(const act::RouteSurveyed& surveyed) { m_.route = surveyed.sheet; }
  void operator()(const act::DropAllPlaces&) {
    remember_ahead("All places removed");
    m_.ahead.clear();
  }

  void operator()(const act::LogOutcome& log) {
    remember("Outcome saved");
    log_outcome(m_, log.key, log.outcome);
  }
  void operator()(const act::NextWeather&) { m_.weather = next_weather(m_.weather); }
  void operator()(const act::LogWritten&) { m_.log_writes.clear(); }
  void operator()(const act::AskMerge& asked) { ask_merge(m_, asked.path); }
  void operator()(const act::AskLogbookFiles& ask) { ask_logbook_files(m_, ask.task, ask.path); }
  void operator()(const act::NextLogbookFolder&) { next_logbook_folder(m_.log_files); }
  void operator()(const act::LogbookFilesDone& done) { logbook_files_done(m_, done.answer); }

  void operator()(const act::SavePaper&) {
    m_.paper_wanted = true;
    m_.paper_file.clear();
    m_.trouble.clear();
  }
  void operator()(const act::PaperSaved& saved) {
    m_.paper_wanted = false;
    m_.paper_file = saved.file;
  }

  void operator()(const act::OpenIntakeFolder& open) { open_intake_folder(m_.intake, open.path); }
  void operator()(const act::PickTable& pick) { pick_table(m_.intake, pick.path); }
  void operator()(const act::ChooseColumnOf& choose) { m_.intake.choosing = choose.part; }
  void operator()(const act::CorrectReading& correct) {
    correct_reading(m_.intake, correct.part, correct.value);
  }
  void operator()(const act::TakeIn&) { take_in(m_.intake); }
  void operator()(const act::StopTakingIn&) { stop_taking_in(m_.intake); }
  void operator()(const act::IntakeFound& found) { intake_found(m_.intake, found.answer); }
  void operator()(const act::TickNetwork& tick) { tick_network(m_.settings, tick.ticked); }
  void operator()(const act::PinNetwork& pin) { pin_network(m_.settings, pin.network); }

  void operator()(const act::Trouble& trouble) { m_.trouble = trouble.what; }

  void operator()(const act::TakeBack&) {
    if (!m_.taken_back) return heed(m_, undo_antenna(m_.safety, safety_context(m_)));
    const TakenBack back = *m_.taken_back;
    m_.taken_back.reset();
    m_.stop = back.stop;
    if (back.outcome) take_back_outcome(m_, *back.outcome, back.replaced);
    if (back.ahead) m_.ahead = *back.ahead;
    if (back.handle) m_.settings.handle = back.handle;
    if (back.sweep_id) take_back_sweep(m_, *back.sweep_id);
  }

 private:
  void remember(std::string what) { mastwise::remember(m_, std::move(what)); }
  void remember_ahead(std::string what) {
    remember(std::move(what));
    m_.taken_back->ahead = m_.ahead;
  }
  // Ticks of the receiver's list at another stop do not count here.
  void forget_old_ticks() {
    const auto& here = m_.findings.position;
    if (!m_.ticked_at || !here || !same_stop(*m_.ticked_at, *here)) m_.ticks.clear();
    m_.ticked_at = here;
  }
  void search_as_typed() {
    if (m_.keypad && m_.keypad->purpose == KeypadPurpose::Search) m_.search = m_.keypad->text;
    if (m_.keypad) m_.keypad->error.reset();
  }
  void follow_receiver();

  Model& m_;
  const World& world_;
};

// One position for each epoch of the receiver.
void Applier::follow_receiver() {
  const nmea::Fix fix = m_.receiver.fix(m_.now);
  if (!fix.position || fix.positions_taken == m_.positions_followed) return;
  m_.positions_followed = fix.positions_taken;
  m_.parked.add(*fix.position, m_.now);
  m_.course.add(*fix.position, fix.course, fix.speed_mps, m_.now);
}

void Applier::operator()(const act::SwitchPractice&) {
  const bool leaving = m_.stop.practice;
  remember(leaving ? "Practice ended" : "Practice started");
  m_.stop = leaving ? Stop{} : world_.practice_stop;
  m_.stations.reset();
  m_.map = MapState{.sheets = m_.map.sheets};
  m_.log.stop_id.reset();
  teach(m_);
}

}  // namespace

void apply(Model& model, const Action& action, const World& world) {
  if (const auto answer = update(model.safety, safety_context(model), action)) {
    heed(model, *answer);
  } else {
    visit(action, ModelActions{}, Applier(model, world));
  }
  derive(model, world);
  follow_motion(model.safety, safety_context(model));
}

}  // namespace mastwise
