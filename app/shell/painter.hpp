#pragma once

#include "app/look/theme.hpp"
#include "app/ui/raster.hpp"

#include <cstdint>
#include <map>

struct ImDrawData;

namespace mastwise::shell {

// Puts draw data on the current OpenGL context. Needs the interface's context to be current.
class Painter {
 public:
  Painter();
  ~Painter();
  Painter(const Painter&) = delete;
  Painter& operator=(const Painter&) = delete;

  // Clears to the ground, which costs less than drawing it, and draws. `rasters`: those that the
  // data names.
  void paint(ImDrawData* data, ui::Color ground, const ui::Rasters& rasters);

 private:
  struct Texture {
    unsigned name = 0;  // OpenGL's
    std::uint64_t version = 0;
  };
  void bring_up(const ui::Raster& raster);

  std::map<const ui::Raster*, Texture> textures_;
};

}  // namespace mastwise::shell
