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

void Painter::paint(ImDrawData* data) {
  glViewport(0, 0, static_cast<GLsizei>(data->DisplaySize.x),
             static_cast<GLsizei>(data->DisplaySize.y));
  ImGui_ImplOpenGL3_RenderDrawData(data);
}

}  // namespace mastwise::shell
