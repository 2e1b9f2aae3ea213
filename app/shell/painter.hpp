#pragma once

#include "app/ui/theme.hpp"

struct ImDrawData;

namespace mastwise::shell {

// Puts draw data on the current OpenGL context. Needs the interface's context to be current.
class Painter {
 public:
  Painter();
  ~Painter();
  Painter(const Painter&) = delete;
  Painter& operator=(const Painter&) = delete;

  // Clears to the ground, which costs less than drawing it, and draws.
  void paint(ImDrawData* data, ui::Colour ground);
};

}  // namespace mastwise::shell
