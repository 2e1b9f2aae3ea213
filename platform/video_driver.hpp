#pragma once

namespace mastwise::platform {

// SDL's driver that draws without a screen; null where a hidden window has to do. One source file
// for each system.
const char* offscreen_video_driver();

// The OpenGL that the screens are drawn with.
struct OpenGl {
  bool embedded = false;  // OpenGL ES
  int major = 3, minor = 3;
  const char* shading_language = "#version 330";
  // Whether a texture of one channel can be read as white with that opacity.
  bool swizzles = true;
};
OpenGl opengl();

}  // namespace mastwise::platform
