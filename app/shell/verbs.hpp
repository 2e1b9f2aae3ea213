#pragma once

#include "app/cli/verbs.hpp"

// The verbs that draw, apart from the others, which do not need a window.
namespace mastwise::cli {

void add_shot(CLI::App& program, Job& chosen);

// Without a verb: the touch app.
void add_window(CLI::App& program, Job& chosen);

}  // namespace mastwise::cli
