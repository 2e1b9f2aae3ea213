#include "app/keypad/update.hpp"

#include "app/keypad/keypad.hpp"
#include "app/shared/actions.hpp"
#include "app/words/places.hpp"
#include "core/text/words.hpp"

namespace mastwise {
namespace {

void fill_place(Shared& shared, Field field, const Position& position,
                const std::string& name = {}) {
  shared.form.set_place(field, position, name);
  if (field == Field::AheadPlace) shared.following.push_back(act::PlaceTyped{position});
}

Result<Done> accept_position(const Keypad& keypad, Shared& shared) {
  const auto position = parse_position(keypad.text);
  if (!position) return position.error();
  if (keypad.purpose == KeypadPurpose::Position) {
    remember(shared, "Position by hand");
    stand_at(shared.stop, *position, kTypedPosition_m);
  } else {
    fill_place(shared, keypad.field, *position);
  }
  return Done{};
}

Result<Done> accept_nose(const Keypad& keypad, Shared& shared) {
  const auto heading = read_heading(keypad);
  if (!heading) return heading.error();
  remember(shared, "Nose by hand");
  shared.stop.nose = Nose{
      .heading = *heading, .taken_at = shared.findings.position, .read_at = shared.stop.standing};
  return Done{};
}

Result<Done> accept(const Keypad& keypad, Shared& shared) {
  if (types_position(keypad)) return accept_position(keypad, shared);
  if (keypad.purpose == KeypadPurpose::Nose) return accept_nose(keypad, shared);
  if (keypad.purpose == KeypadPurpose::Field) return fill(shared.form, keypad);
  if (keypad.purpose == KeypadPurpose::Appliance) {
    shared.following.push_back(act::TurnedOff{std::string(words::trimmed(keypad.text))});
  }
  return Done{};
}

// On an open keypad.
class KeypadUpdater {
 public:
  KeypadUpdater(KeypadState& keypad, Shared& shared) : keypad_(keypad), shared_(shared) {}

  void operator()(const act::KeypadType& typed) {
    type(*keypad_, typed.text);
    typed_anew();
  }
  void operator()(const act::KeypadErase&) {
    erase_last(*keypad_);
    typed_anew();
  }
  void operator()(const act::KeypadEraseAll&) {
    keypad_->text.clear();
    typed_anew();
  }
  void operator()(const act::KeypadPage&) { keypad_->letters = !keypad_->letters; }
  void operator()(const act::KeypadNorth&) { keypad_->magnetic = !keypad_->magnetic; }
  void operator()(const act::KeypadClose&) { keypad_.reset(); }
  void operator()(const act::KeypadAccept&) {
    const auto accepted = accept(*keypad_, shared_);
    if (accepted) {
      keypad_.reset();
    } else {
      keypad_->error = accepted.error();
    }
  }
  void operator()(const act::TakePlace& take) {
    if (!types_position(*keypad_)) return;
    const std::string name = words::place(take.place);
    if (keypad_->purpose == KeypadPurpose::Position) {
      remember(shared_, "Position by name");
      stand_at(shared_.stop, take.place.position, kSomewhereInTown_m, name);
    } else {
      fill_place(shared_, keypad_->field, take.place.position, name);
    }
    keypad_.reset();
  }

 private:
  void typed_anew() {
    if (keypad_->purpose == KeypadPurpose::Search) shared_.search = keypad_->text;
    keypad_->error.reset();
  }

  KeypadState& keypad_;
  Shared& shared_;
};

// Actions of all features that matter here too.
void hear(KeypadState& keypad, const Shared& shared, const Action& action) {
  if (const auto* open = action.get_if<act::OpenKeypad>()) {
    keypad = Keypad{.purpose = open->purpose,
                    .letters = open->purpose == KeypadPurpose::Search ||
                               open->purpose == KeypadPurpose::Appliance};
    if (open->purpose == KeypadPurpose::Search) keypad->text = shared.search;
  }
  if (const auto* open = action.get_if<act::OpenField>()) {
    keypad = Keypad{.purpose = KeypadPurpose::Field, .field = open->field};
  }
  if (action.is<act::SelectStation>() && shared.place == Place::Aim) keypad.reset();
}

}  // namespace

void update(KeypadState& keypad, Shared& shared, const Action& action) {
  hear(keypad, shared, action);
  if (keypad) visit(action, KeypadActions{}, KeypadUpdater(keypad, shared));
}

const std::vector<places::FoundPlace>* places_found(const Keypad& keypad, const Shared& shared) {
  if (!types_name(keypad) || !shared.places) return nullptr;
  const std::string &asked = shared.places->question.typed, &now = keypad.text;
  if (asked.empty() || !(asked.starts_with(now) || now.starts_with(asked))) return nullptr;
  return &shared.places->found;
}

}  // namespace mastwise
