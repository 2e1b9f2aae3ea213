#pragma once

#include "app/paper/page.hpp"
#include "app/paper/typefaces.hpp"
#include "core/result.hpp"

#include <string>

namespace mastwise::paper {

// The bytes of a PDF file with this one page.
Result<std::string> pdf_of(const Page& page, const Typefaces& typefaces);

// Limits of a picture's resolution.
inline constexpr int kLeastDpi = 50, kMostDpi = 1200, kUsualDpi = 150;

// The bytes of a PNG file with the page on white; the dots per inch from kLeastDpi to kMostDpi.
Result<std::string> png_of(const Page& page, const Typefaces& typefaces, int dots_per_inch);

// Writes the same to a file in one step: a reader sees the new file whole or the old one.
Result<Done> save_pdf(const Page& page, const Typefaces& typefaces, const std::string& path);
Result<Done> save_png(const Page& page, const Typefaces& typefaces, int dots_per_inch,
                      const std::string& path);

}  // namespace mastwise::paper
