#include "app/model/typing.hpp"

#include "app/model/keypad.hpp"
#include "app/words/places.hpp"

#include <utility>

namespace mastwise {
namespace {

void fill_place(Model& model, Field field, const Position& position, const std::string& name = {}) {
  model.form.set_place(field, position, name);
  if (field == Field::AheadPlace) model.ahead.push_back(position);
}

Result<Done> accept_position(Model& model) {
  const auto position = parse_position(model.keypad->text);
  if (!position) return position.error();
  if (model.keypad->purpose == KeypadPurpose::Position) {
    remember(model, "Position by hand");
    stand_at(model.stop, *position, kTypedPosition_m);
  } else {
    fill_place(model, model.keypad->field, *position);
  }
  return Done{};
}

Result<Done> accept_nose(Model& model) {
  const auto heading = read_heading(*model.keypad);
  if (!heading) return heading.error();
  remember(model, "Nose by hand");
  model.stop.nose = Nose{.heading = *heading, .taken_at = model.findings.position};
  return Done{};
}

Result<Done> accept(Model& model) {
  if (types_position(*model.keypad)) return accept_position(model);
  if (model.keypad->purpose == KeypadPurpose::Nose) return accept_nose(model);
  if (model.keypad->purpose == KeypadPurpose::Field) return fill(model.form, *model.keypad);
  return Done{};
}

}  // namespace

void remember(Model& model, std::string what) {
  constexpr milliseconds kTakeBackFor{12'000};
  model.taken_back =
      TakenBack{.what = std::move(what), .stop = model.stop, .until = model.now + kTakeBackFor};
}

void stand_at(Stop& stop, const Position& position, double error_m, std::string name) {
  stop.by_hand = position;
  stop.by_hand_error_m = error_m;
  stop.by_name = std::move(name);
  stop.source = PositionSource::ByHand;
}

void accept_typed(Model& model) {
  if (!model.keypad) return;
  const auto accepted = accept(model);
  if (accepted) {
    model.keypad.reset();
  } else {
    model.keypad->error = accepted.error();
  }
}

void take_place(Model& model, const places::Place& place) {
  if (!model.keypad || !types_position(*model.keypad)) return;
  if (model.keypad->purpose == KeypadPurpose::Position) {
    remember(model, "Position by name");
    stand_at(model.stop, place.position, kSomewhereInTown_m, words::place(place));
  } else {
    fill_place(model, model.keypad->field, place.position, words::place(place));
  }
  model.keypad.reset();
}

}  // namespace mastwise
