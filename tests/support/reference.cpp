#include "tests/support/reference.hpp"

#include "tests/support/folders.hpp"

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <sstream>

#include <catch2/catch.hpp>

namespace mastwise::test {
namespace {

std::set<std::string> skipped;

}  // namespace

std::optional<std::filesystem::path> reference(const std::string& name) {
  const char* folder = std::getenv("MASTWISE_REFERENCE");
  const auto root = folder != nullptr
                        ? std::filesystem::path(folder)
                        : std::filesystem::path(source_folder()) / "../shared/reference";
  if (std::filesystem::exists(root / name)) return root / name;
  skip(name + " in the reference data");
  return std::nullopt;
}

void skip(const std::string& lacking) {
  const std::string name = Catch::getResultCapture().getCurrentTestName();
  skipped.insert(name);
  std::cout << "SKIPPED " << name << ": no " << lacking << '\n';
}

const std::set<std::string>& skipped_tests() {
  return skipped;
}

std::string read_file(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  INFO("reading " << path);
  REQUIRE(file);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

std::vector<std::string> read_lines(const std::filesystem::path& path) {
  std::istringstream text(read_file(path));
  std::vector<std::string> lines;
  for (std::string line; std::getline(text, line);) {
    if (!line.empty() && line.back() == '\r') line.pop_back();
    lines.push_back(line);
  }
  return lines;
}

std::vector<std::string> split(const std::string& line, char separator) {
  std::vector<std::string> fields;
  std::istringstream text(line);
  for (std::string field; std::getline(text, field, separator);) fields.push_back(field);
  if (!line.empty() && line.back() == separator) fields.emplace_back();
  return fields;
}

}  // namespace mastwise::test
