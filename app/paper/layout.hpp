#pragma once

#include "app/paper/card.hpp"
#include "app/paper/page.hpp"
#include "app/paper/typefaces.hpp"

namespace mastwise::paper {

// Lays out the card on one page. Lists that do not fit are cut and count the rest.
Page lay_out(const PaperCard& card, PageSize size, const Typefaces& typefaces);

}  // namespace mastwise::paper
