#pragma once

#include "app/session/action.hpp"
#include "app/session/model.hpp"
#include "app/shell/gl_window.hpp"

#include <optional>
#include <string>
#include <vector>

namespace mastwise::shell {

// A screen to draw into a file without a display.
struct Shot {
  std::vector<Action> acts = {};  // that open the screen
  LookChoice look = LookChoice::Day;
  Language language = Language::English;
  TextSize text_size = TextSize::Usual;
  ui::Eyes eyes = ui::Eyes::Usual;
  int keys = 0;  // times the focus moves on before the picture; 0: no focus
  std::string file;
  WindowWish window = {};
  std::string catalog;         // the user's stations
  std::string terrain_folder;  // the user's elevation tiles
  UtcTime date = {};
  std::optional<Position> at = {};  // the practice area if empty
  std::optional<Station> target = {};
  std::optional<RigHeading> nose = {};
};

Result<Done> draw_shot(Shot shot);

}  // namespace mastwise::shell
