#include "app/here/update.hpp"

#include "app/here/nose.hpp"
#include "app/here/paper_map.hpp"

namespace mastwise {
namespace {

class HereUpdater {
 public:
  HereUpdater(HereState& state, Shared& shared) : state_(state), shared_(shared) {}

  void operator()(const act::UseReceiver&) {
    remember(shared_, "Position from the receiver");
    shared_.stop.source = PositionSource::Receiver;
  }
  void operator()(const act::UseMapPlace& use) {
    const FormAnswer& from = use.by_net ? state_.from_net : state_.from_map;
    if (!from.place) return;
    remember(shared_, "Position from the map");
    stand_at(shared_.stop, *from.place, from.place_error_m);
    shared_.sheet = Sheet::None;
  }
  void operator()(const act::ChooseSurroundings& chosen) {
    remember(shared_, "Other surroundings");
    shared_.stop.surroundings = chosen.surroundings;
  }
  void operator()(const act::ChooseLeaves& chosen) {
    remember(shared_, "Leaves changed");
    shared_.stop.leaves = chosen.leaves;
  }
  void operator()(const act::ChooseNoise& chosen) {
    remember(shared_, "Other noise");
    shared_.stop.noise = chosen.noise;
    shared_.stop.inverter_on = chosen.inverter_on;
  }
  void operator()(const act::ChooseTowers& chosen) {
    remember(shared_, "Other towers");
    shared_.stop.towers = {chosen.radio, chosen.cell};
  }
  void operator()(const act::ChooseGear& chosen) { use_gear(shared_.settings, chosen.gear); }

  void operator()(const act::NoseFromCourse& from) {
    remember(shared_, "Nose from the last course");
    nose_from_course(shared_, from.backed_in);
  }
  void operator()(const act::NoseFromSensor&) {
    remember(shared_, "Nose from the sensor");
    nose_from_sensor(shared_);
  }
  void operator()(const act::NoseFromSun& from) {
    remember(shared_, "Nose by the sun");
    nose_from_sun(shared_, from.side);
  }
  void operator()(const act::MarkTail&) {
    remember(shared_, "Tail marked");
    shared_.stop.tail_mark = shared_.findings.position;
    // The receiver moves to the other end, so its average restarts.
    shared_.parked.restart();
  }
  void operator()(const act::NoseFromPoints&) {
    remember(shared_, "Nose from two points");
    nose_from_points(shared_);
  }
  void operator()(const act::NoseReadAt& read) {
    auto& nose = shared_.stop.nose;
    if (!nose || nose->origin != Nose::Origin::ByHand) return;
    remember(shared_, "Rig heading read elsewhere");
    nose->read_at = read.standing;
  }
  void operator()(const act::ForgetStretches&) {
    remember(shared_, "Deviation card deleted")
        .also.push_back(act::StretchesBack{shared_.settings.sensor_stretches});
    shared_.settings.sensor_stretches.clear();
  }
  void operator()(const act::StretchesBack& back) {
    shared_.settings.sensor_stretches = back.stretches;
  }
  void operator()(const act::ForgetNose&) {
    remember(shared_, "Rig heading deleted");
    shared_.stop.nose.reset();
  }

 private:
  HereState& state_;
  Shared& shared_;
};

}  // namespace

void update(HereState& state, Shared& shared, const Action& action) {
  visit(action, HereActions{}, HereUpdater(state, shared));
}

void derive(HereState& state, const Shared& shared) {
  state = {};
  if (shared.sheet != Sheet::Paper) return;
  state.from_map = place_from_map(shared.form, shared.settings.miles);
  state.from_net = place_from_net(shared.form, shared.settings.miles);
  state.ruler = ruler_for_heading(shared);
}

}  // namespace mastwise
