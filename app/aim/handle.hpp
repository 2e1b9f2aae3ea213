#pragma once

#include "app/shared/shared.hpp"

#include <optional>

namespace mastwise {

// The handle as the form describes it; empty until both points are typed.
std::optional<HandleChoice> handle_from(const Form& form);

// The turn of the ceiling handle to the target and for lowering, by the typed handle or else the
// saved one.
FormAnswer handle_turn(const Shared& shared);

}  // namespace mastwise
