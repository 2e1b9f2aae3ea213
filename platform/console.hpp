#pragma once

namespace mastwise::platform {

// Makes standard output and errors arrive as the UTF-8 bytes that were written, in a terminal and
// in a file. One source file for each system.
void use_utf8_console();

}  // namespace mastwise::platform
