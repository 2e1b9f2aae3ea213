#include "tests/support/pdf.hpp"

#include "tests/support/reference.hpp"

#include <array>
#include <cstdio>
#include <cstdlib>
#include <sstream>

#include <catch2/catch.hpp>

namespace mastwise::test {
namespace {

// Standard output of a command, which must succeed.
std::string output_of(const std::string& command) {
  std::FILE* pipe = ::popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string output;
  std::array<char, 4096> bytes;
  while (const std::size_t count = std::fread(bytes.data(), 1, bytes.size(), pipe)) {
    output.append(bytes.data(), count);
  }
  INFO(command);
  REQUIRE(::pclose(pipe) == 0);
  return output;
}

// The value of a label of pdfinfo.
std::istringstream behind(const std::string& info, const std::string& label) {
  const std::size_t at = info.find(label);
  REQUIRE(at != std::string::npos);
  return std::istringstream(info.substr(at + label.size()));
}

}  // namespace

std::optional<PdfRead> read_pdf(const std::string& path) {
  if (std::system("(command -v pdfinfo && command -v pdftotext) >/dev/null") != 0) {
    skip("pdfinfo and pdftotext (package poppler-utils)");
    return std::nullopt;
  }
  PdfRead read;
  const std::string info = output_of("pdfinfo '" + path + "'");
  behind(info, "Pages:") >> read.pages;
  std::string by;
  behind(info, "Page size:") >> read.width_pt >> by >> read.height_pt;
  std::istringstream words(output_of("pdftotext -raw '" + path + "' -"));
  for (std::string word; words >> word;) read.text += (read.text.empty() ? "" : " ") + word;
  return read;
}

}  // namespace mastwise::test
