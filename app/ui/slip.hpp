#pragma once

#include "app/ui/ui.hpp"

#include <string>

namespace mastwise::ui {

// A value that a touch edits in place: a slip of paper with a folded corner. The label may be
// empty. True when touched.
bool slip(Ui& ui, const std::string& name, Rect rect, const std::string& label,
          const std::string& value, bool enabled = true);

}  // namespace mastwise::ui
