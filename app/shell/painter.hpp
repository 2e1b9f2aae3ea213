#pragma once

#include "app/look/theme.hpp"
#include "app/ui/bitmap.hpp"
#include "core/result.hpp"

#include <cstdint>
#include <map>
#include <memory>

struct ImDrawData;
struct ImFontAtlas;

namespace mastwise::shell {

// Draws on the current OpenGL context. The interface's context must be current.
class Painter {
 public:
  // Error if the system has no OpenGL library.
  static Result<std::unique_ptr<Painter>> make();
  ~Painter();
  Painter(const Painter&) = delete;
  Painter& operator=(const Painter&) = delete;

  // Clears to the background color, which is cheaper than drawing it, and draws. `bitmaps`: those
  // named in the data.
  void paint(ImDrawData* data, ui::Color ground, const ui::Bitmaps& bitmaps);

 private:
  Painter() = default;

  struct Texture {
    unsigned name = 0;  // OpenGL's
    std::uint64_t version = 0;
  };
  void bring_up(const ui::Bitmap& bitmap);
  void bring_up_letters(ImFontAtlas& letters);

  unsigned letters_ = 0;  // OpenGL's
  std::map<const ui::Bitmap*, Texture> textures_;
};

}  // namespace mastwise::shell
