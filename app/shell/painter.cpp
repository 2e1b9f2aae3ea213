#include "app/shell/painter.hpp"

#include "platform/video_driver.hpp"

#include <SDL_opengl.h>
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

namespace mastwise::shell {

Result<std::unique_ptr<Painter>> Painter::make() {
  if (!ImGui_ImplOpenGL3_Init(platform::opengl().shading_language)) {
    return Error{.what = "the OpenGL library could not be loaded",
                 .remedy = "install the package libgl1"};
  }
  ImGui_ImplOpenGL3_NewFrame();  // makes the font texture and the shaders
  return std::unique_ptr<Painter>(new Painter);
}

Painter::~Painter() {
  for (const auto& [bitmap, texture] : textures_) glDeleteTextures(1, &texture.name);
  ImGui_ImplOpenGL3_Shutdown();
}

void Painter::bring_up(const ui::Bitmap& bitmap) {
  Texture& texture = textures_[&bitmap];
  if (texture.version == bitmap.version) return;
  texture.version = bitmap.version;
  if (texture.name == 0) glGenTextures(1, &texture.name);
  glBindTexture(GL_TEXTURE_2D, texture.name);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
  glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, bitmap.width, bitmap.height, 0, GL_RGBA,
               GL_UNSIGNED_BYTE, bitmap.rgba.data());
}

void Painter::paint(ImDrawData* data, ui::Color ground, const ui::Bitmaps& bitmaps) {
  for (const auto& [name, bitmap] : bitmaps) bring_up(bitmap);
  // A new text size has new letters, whose commands were made before their texture.
  const ImFontAtlas& letters = *ImGui::GetIO().Fonts;
  if (letters.TexID == nullptr) {
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    ImGui_ImplOpenGL3_CreateFontsTexture();
  }
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
