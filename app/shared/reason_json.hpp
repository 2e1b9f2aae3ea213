#pragma once

#include "core/reception/reason.hpp"
#include "core/rig/rig_heading.hpp"

#include <optional>
#include <vector>

#include <nlohmann/json_fwd.hpp>

// Facts of core as JSON, every enum by its name. Recordings from before 2026-11-29 have finished
// sentences instead, which the reader drops.
namespace mastwise {

nlohmann::json to_json(const reception::Reason& reason);
// Empty for a sentence of an old recording; throws json's exception on anything else that is not
// a reason.
std::optional<reception::Reason> reason_from_json(const nlohmann::json& json);

nlohmann::json to_json(const std::vector<reception::Reason>& reasons);
std::vector<reception::Reason> reasons_from_json(const nlohmann::json& json);

nlohmann::json to_json(const std::optional<RigHeadingCaution>& caution);
std::optional<RigHeadingCaution> caution_from_json(const nlohmann::json& json);

}  // namespace mastwise
