#pragma once

#include <optional>
#include <string>

namespace mastwise::test {

// The content of a PDF file as read by other software.
struct PdfRead {
  int pages = 0;
  double width_pt = 0.0, height_pt = 0.0;
  std::string text = {};  // in the order written, all white space a single blank
};

// By the tools of the package poppler-utils; empty if they are missing: then the test is reported
// as skipped and should return.
std::optional<PdfRead> read_pdf(const std::string& path);

}  // namespace mastwise::test
