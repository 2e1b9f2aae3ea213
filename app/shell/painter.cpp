#include "app/shell/painter.hpp"

#include <SDL_opengl.h>
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

namespace mastwise::shell {

Painter::Painter() {
  ImGui_ImplOpenGL3_Init("#version 330");
  ImGui_ImplOpenGL3_NewFrame();  // makes the font texture and the shaders
}

Painter::~Painter() {
  ImGui_ImplOpenGL3_Shutdown();
}

void Painter::paint(ImDrawData* data, ui::Colour ground) {
  glViewport(0, 0, static_cast<GLsizei>(data->DisplaySize.x),
             static_cast<GLsizei>(data->DisplaySize.y));
  glClearColor(static_cast<float>(ground.red) / 255.0f, static_cast<float>(ground.green) / 255.0f,
               static_cast<float>(ground.blue) / 255.0f, 1.0f);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(data);
}

}  // namespace mastwise::shell
