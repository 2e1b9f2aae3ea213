#pragma once

#include "app/shared/action.hpp"
#include "core/places/place_table.hpp"

#include <string>
#include <string_view>

namespace mastwise::act {

struct KeypadType {
  static constexpr std::string_view kName = "KeypadType";
  static constexpr auto kFields = fields("text");
  std::string text;  // what the key writes
};

struct KeypadErase {
  static constexpr std::string_view kName = "KeypadErase";
};

struct KeypadEraseAll {
  static constexpr std::string_view kName = "KeypadEraseAll";
};

// Figures or letters.
struct KeypadPage {
  static constexpr std::string_view kName = "KeypadPage";
};

// The heading typed is magnetic or true.
struct KeypadNorth {
  static constexpr std::string_view kName = "KeypadNorth";
};

struct KeypadAccept {
  static constexpr std::string_view kName = "KeypadAccept";
};

struct KeypadClose {
  static constexpr std::string_view kName = "KeypadClose";
};

// Enters the middle of a found place.
struct TakePlace {
  static constexpr std::string_view kName = "TakePlace";
  static constexpr auto kFields = fields("place");
  places::PopulatedPlace place;
};

}  // namespace mastwise::act

namespace mastwise {

using KeypadActions =
    ActionList<act::KeypadType, act::KeypadErase, act::KeypadEraseAll, act::KeypadPage,
               act::KeypadNorth, act::KeypadAccept, act::KeypadClose, act::TakePlace>;

}  // namespace mastwise
