#pragma once

namespace mastwise::platform {

// What every `main` does first: texts go in and out as UTF-8, the libraries find the data that the
// system does not have, and the heap suits a quick start. Returns main's arguments in UTF-8 and
// their number in `count`; call it once. One source file for each system.
char** start_program(int& count, char* given[]);

}  // namespace mastwise::platform
