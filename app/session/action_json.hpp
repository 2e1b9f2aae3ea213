#pragma once

#include "app/session/action.hpp"
#include "app/session/model.hpp"
#include "core/result.hpp"

#include <nlohmann/json.hpp>

namespace mastwise {

// An action as JSON: {"do": "KeypadType", ...its members}. What one writes the other reads back.
nlohmann::json to_json(const Action& action);
Result<Action> action_from_json(const nlohmann::json& json);

// The model as JSON for a person to read; a session is restored from its actions instead.
nlohmann::json to_json(const Model& model);

}  // namespace mastwise
