#include "app/shell/painter.hpp"

#include "platform/video_driver.hpp"

#include <array>
#include <utility>
#include <vector>

#include <SDL_opengl.h>
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

namespace mastwise::shell {
namespace {

// Makes Dear ImGui's shaders. It would also make a texture of the letters, four times as large as
// needed, so it gets an atlas of one pixel.
void make_shaders() {
  ImFontAtlas one_pixel;
  one_pixel.TexWidth = one_pixel.TexHeight = 1;
  one_pixel.TexPixelsRGBA32 = static_cast<unsigned*>(ImGui::MemAlloc(sizeof(unsigned)));
  *one_pixel.TexPixelsRGBA32 = 0;
  ImFontAtlas* const letters = std::exchange(ImGui::GetIO().Fonts, &one_pixel);
  ImGui_ImplOpenGL3_NewFrame();
  ImGui::GetIO().Fonts = letters;
}

// A new texture, bound.
unsigned smooth_texture() {
  unsigned name = 0;
  glGenTextures(1, &name);
  glBindTexture(GL_TEXTURE_2D, name);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
  return name;
}

}  // namespace

Result<std::unique_ptr<Painter>> Painter::make() {
  if (!ImGui_ImplOpenGL3_Init(platform::opengl().shading_language)) {
    return Error{.what = "the OpenGL library could not be loaded",
                 .remedy = "install the package libgl1"};
  }
  make_shaders();
  return std::unique_ptr<Painter>(new Painter);
}

Painter::~Painter() {
  glDeleteTextures(1, &letters_);
  for (const auto& [bitmap, texture] : textures_) glDeleteTextures(1, &texture.name);
  ImGui_ImplOpenGL3_Shutdown();
}

// Letters take one byte per pixel, their opacity. Where OpenGL cannot read that as white, they take
// a second one for the white.
void Painter::bring_up_letters(ImFontAtlas& letters) {
  glDeleteTextures(1, &letters_);
  letters_ = smooth_texture();
  unsigned char* opacity = nullptr;
  int width = 0, height = 0;
  letters.GetTexDataAsAlpha8(&opacity, &width, &height);
  glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
  if (platform::opengl().swizzles) {
    constexpr std::array<GLint, 4> kWhite{GL_ONE, GL_ONE, GL_ONE, GL_RED};
    glTexParameteriv(GL_TEXTURE_2D, GL_TEXTURE_SWIZZLE_RGBA, kWhite.data());
    glTexImage2D(GL_TEXTURE_2D, 0, GL_R8, width, height, 0, GL_RED, GL_UNSIGNED_BYTE, opacity);
  } else {
    std::vector<unsigned char> pairs(2 * static_cast<std::size_t>(width * height), 0xFF);
    for (std::size_t i = 1; i < pairs.size(); i += 2) pairs[i] = *opacity++;
    glTexImage2D(GL_TEXTURE_2D, 0, GL_LUMINANCE_ALPHA, width, height, 0, GL_LUMINANCE_ALPHA,
                 GL_UNSIGNED_BYTE, pairs.data());
  }
  letters.SetTexID(reinterpret_cast<ImTextureID>(std::uintptr_t{letters_}));
}

void Painter::bring_up(const ui::Bitmap& bitmap) {
  Texture& texture = textures_[&bitmap];
  if (texture.version == bitmap.version) return;
  texture.version = bitmap.version;
  if (texture.name == 0) {
    texture.name = smooth_texture();
  } else {
    glBindTexture(GL_TEXTURE_2D, texture.name);
  }
  glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, bitmap.width, bitmap.height, 0, GL_RGBA,
               GL_UNSIGNED_BYTE, bitmap.rgba.data());
}

void Painter::paint(ImDrawData* data, ui::Color ground, const ui::Bitmaps& bitmaps) {
  for (const auto& [name, bitmap] : bitmaps) bring_up(bitmap);
  // A new text size has new letters, whose commands were made before their texture.
  ImFontAtlas& letters = *ImGui::GetIO().Fonts;
  if (letters.TexID == nullptr) bring_up_letters(letters);
  // Replace a bitmap's name in a command by its texture.
  for (int i = 0; i < data->CmdListsCount; ++i) {
    for (ImDrawCmd& command : data->CmdLists[i]->CmdBuffer) {
      if (command.TextureId == nullptr) command.TextureId = letters.TexID;
      const auto found = textures_.find(static_cast<const ui::Bitmap*>(command.TextureId));
      if (found != textures_.end()) {
        command.TextureId = reinterpret_cast<ImTextureID>(std::uintptr_t{found->second.name});
      }
    }
  }
  glViewport(0, 0, static_cast<GLsizei>(data->DisplaySize.x),
             static_cast<GLsizei>(data->DisplaySize.y));
  glClearColor(static_cast<float>(ground.red) / 255.0f, static_cast<float>(ground.green) / 255.0f,
               static_cast<float>(ground.blue) / 255.0f, 1.0f);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(data);
}

}  // namespace mastwise::shell
