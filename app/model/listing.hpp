#pragma once

#include "app/model/model.hpp"

namespace mastwise {

// Which rows of the stations' answer are listed, which networks they bring and are wanted, and how
// far the age of their tables is to be minded.
void derive_listing(const Model& model, Findings& findings);
// Every network of the rows, by name.
void derive_networks(const Model& model, Findings& findings);

}  // namespace mastwise
