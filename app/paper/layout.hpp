#pragma once

#include "app/paper/card.hpp"
#include "app/paper/page.hpp"
#include "app/paper/typefaces.hpp"

namespace mastwise::paper {

// The card on one page. What would not fit is cut, and it says how much.
Page lay_out(const PaperCard& card, PageSize size, const Typefaces& typefaces);

}  // namespace mastwise::paper
