#pragma once

#include "app/model/model.hpp"

namespace mastwise {

// The listed rows of the stations' answer, their networks, the wanted networks, and the caution on
// the age of their tables.
void derive_listing(const Model& model, Findings& findings);
// Every network of the rows, by name.
void derive_networks(const Model& model, Findings& findings);

}  // namespace mastwise
