#pragma once

#include "app/model/model.hpp"
#include "app/shell/gl_window.hpp"

#include <optional>
#include <string>

namespace mastwise::shell {

// A screen to be drawn into a file, with no display.
struct Shot {
  Place place = Place::Aim;
  std::optional<KeypadPurpose> keypad = {};  // open over the place
  bool raise_prompt = false;
  Sheet sheet = Sheet::None;
  bool night = false;
  std::string file;
  WindowWish window = {};
  std::string catalog;         // the user's stations
  std::string terrain_folder;  // the user's elevation tiles
  UtcTime date = {};
  std::optional<Position> at = {};  // the practice area where nothing
  std::optional<Station> target = {};
  std::optional<RigHeading> nose = {};
};

Result<Done> draw_shot(Shot shot);

}  // namespace mastwise::shell
