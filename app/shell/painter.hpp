#pragma once

struct ImDrawData;

namespace mastwise::shell {

// Puts draw data on the current OpenGL context. Needs the interface's context to be current.
class Painter {
 public:
  Painter();
  ~Painter();
  Painter(const Painter&) = delete;
  Painter& operator=(const Painter&) = delete;

  void paint(ImDrawData* data);
};

}  // namespace mastwise::shell
