#include "app/model/apply.hpp"

#include "app/model/keypad.hpp"

namespace mastwise {
namespace {

constexpr milliseconds kTakeBackFor{12'000};

template <class Choice>
void next(Choice& choice, Choice last) {
  choice = choice == last ? Choice{} : static_cast<Choice>(static_cast<int>(choice) + 1);
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

  void operator()(const act::OpenSheet& open) { m_.sheet = open.sheet; }
  void operator()(const act::ChooseSurroundings& chosen) {
    remember("Other surroundings");
    m_.stop.surroundings = chosen.surroundings;
    m_.sheet = Sheet::None;
  }
  void operator()(const act::ChooseGear& chosen) { m_.settings.gear = chosen.gear; }

  void operator()(const act::OpenKeypad& open) {
    m_.keypad = Keypad{.purpose = open.purpose, .letters = open.purpose == KeypadPurpose::Search};
    if (open.purpose == KeypadPurpose::Search) m_.keypad->text = m_.search;
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
  void operator()(const act::KeypadAccept&);
  void operator()(const act::KeypadClose&) { m_.keypad.reset(); }

  void operator()(const act::NoseFromCourse& from) {
    const auto course = m_.course.last();
    if (!course) return;
    remember("Nose from the last course");
    using Origin = Nose::Origin;
    m_.stop.nose = from.backed_in ? Nose{course->course.reciprocal(), Origin::BackedIn}
                                  : Nose{course->course, Origin::LastCourse};
  }
  void operator()(const act::ForgetNose&) {
    remember("Nose forgotten");
    m_.stop.nose.reset();
  }

  void operator()(const act::ClearSearch&) { m_.search.clear(); }
  void operator()(const act::SelectStation& selected) {
    const StationRow* row = m_.stations ? find_row(*m_.stations, selected.key) : nullptr;
    if (row == nullptr) return;
    remember("Aim at " + row->station.call_sign);
    m_.stop.target = row->station;
    m_.place = Place::Aim;
    m_.keypad.reset();
  }
  void operator()(const act::NextChanceFloor&) {
    m_.chance_floor = (m_.chance_floor + 1) % kChanceFloors.size();
  }
  void operator()(const act::SwitchGrouping&) { m_.by_network = !m_.by_network; }
  void operator()(const act::StationsFound& found) { m_.stations = found.answer; }

  void operator()(const act::AskRaise&) { m_.asking_raise = m_.antenna == safety::Antenna::Down; }
  void operator()(const act::ConfirmRaise&) {
    if (m_.asking_raise) m_.antenna = safety::Antenna::Raised;
    m_.asking_raise = false;
  }
  void operator()(const act::RefuseRaise&) { m_.asking_raise = false; }
  void operator()(const act::AntennaIsDown&) { m_.antenna = safety::Antenna::Down; }

  void operator()(const act::Trouble& trouble) { m_.trouble = trouble.what; }

  void operator()(const act::TakeBack&) {
    if (!m_.taken_back) return;
    m_.stop = m_.taken_back->stop;
    m_.taken_back.reset();
  }

 private:
  void remember(std::string what) {
    m_.taken_back = TakenBack{std::move(what), m_.stop, m_.now + kTakeBackFor};
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
  remember(leaving ? "Out of the practice area" : "Into the practice area");
  m_.stop = leaving ? Stop{} : world_.practice_stop;
  m_.stations.reset();
}

void Applier::operator()(const act::KeypadAccept&) {
  if (!m_.keypad) return;
  Keypad& keypad = *m_.keypad;
  if (keypad.purpose == KeypadPurpose::Position) {
    const auto position = parse_position(keypad.text);
    if (!position) {
      keypad.error = position.error();
      return;
    }
    remember("Position by hand");
    m_.stop.by_hand = *position;
    m_.stop.source = PositionSource::ByHand;
  } else if (keypad.purpose == KeypadPurpose::Nose) {
    const auto heading = read_heading(keypad);
    if (!heading) {
      keypad.error = heading.error();
      return;
    }
    remember("Nose by hand");
    m_.stop.nose = Nose{*heading, Nose::Origin::ByHand};
  }
  m_.keypad.reset();
}

}  // namespace

void apply(Model& model, const Action& action, const World& world) {
  std::visit(Applier(model, world), action);
  derive(model, world);
}

}  // namespace mastwise
