#pragma once

#include "app/shared/form.hpp"

namespace mastwise {

struct HereState {
  FormAnswer from_map = {}, from_net = {}, ruler = {};  // while the sheet for the map is open
  bool operator==(const HereState&) const = default;
};

}  // namespace mastwise
