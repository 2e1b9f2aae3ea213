#pragma once

#include "app/data/state.hpp"
#include "app/service/packs.hpp"
#include "core/map/borders.hpp"

#include <functional>
#include <string>

// Packs by touch: what is in one, and taking it in.
namespace mastwise {

// Reads a pack's manifest; the answer contains any trouble. `borders` may be null.
TableLook look_into_pack(const std::string& path, const packs::Home& home,
                         const map::Borders* borders);

// `progress` gets the fraction done and returns true to continue. Errors: those of packs::take.
Result<PackReport> import_pack(const std::string& path, const packs::Home& home,
                               const std::function<bool(double part)>& progress,
                               const ImportFocus& focus);

}  // namespace mastwise
