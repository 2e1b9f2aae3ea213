#include "app/session/apply.hpp"

#include "app/ahead/update.hpp"
#include "app/aim/update.hpp"
#include "app/data/update.hpp"
#include "app/here/update.hpp"
#include "app/keypad/update.hpp"
#include "app/logbook/update.hpp"
#include "app/map/update.hpp"
#include "app/parking/update.hpp"
#include "app/peak/update.hpp"
#include "app/plan/update.hpp"
#include "app/safety/update.hpp"
#include "app/stations/update.hpp"

#include <utility>
#include <vector>

namespace mastwise {
namespace {

// Every feature hears every action.
void update_all(Model& model, const Action& action, const World& world) {
  update(model.safety, model, action);
  update(model, action, world);
  update(model.here, model, action);
  update(model.list, model, action);
  update(model.map, model, action);
  update(model.aim, model, action);
  update(model.plan, model, action);
  update(model.peak, model, action);
  update(model.logbook, model, action);
  update(model.ahead, model, action);
  update(model.parking, model, action);
  update(model.data, model, action);
  update(model.keypad, model, action);
}

}  // namespace

void apply(Model& model, const Action& action, const World& world) {
  update_all(model, action, world);
  while (!model.following.empty()) {
    for (const Action& next : std::exchange(model.following, {})) update_all(model, next, world);
  }
  derive_all(model, world);
}

void derive_all(Model& model, const World& world) {
  derive(model, world);
  derive(model.ahead, model, world);
  derive(model.list, model);
  derive(model.here, model);
  derive(model.map, model);
  derive(model.aim, model, world);
  derive(model.plan, model);
  derive(model.parking, model);
  derive(model.logbook, model, world);
  derive(model.data, model);
  derive(model.safety, model);
}

}  // namespace mastwise
