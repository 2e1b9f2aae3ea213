#pragma once

#include <filesystem>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace mastwise::test {

// The path of a file or folder of the published reference data, or empty without the data on this
// machine: then it prints "SKIPPED <name>", and the test should return. Searches the folder named
// by MASTWISE_REFERENCE, else ../shared/reference.
std::optional<std::filesystem::path> reference(const std::string& name);

// Reports that the test skips a check because this machine does not have `lacking`.
void skip(const std::string& lacking);
// The names of the tests that skipped a check so far.
const std::set<std::string>& skipped_tests();

// The whole file. Fails the test if it is unreadable.
std::string read_file(const std::filesystem::path& path);

// The file's lines without "\r" and without the end-of-line.
std::vector<std::string> read_lines(const std::filesystem::path& path);

// The fields of one line of a comma-separated table, without quoting.
std::vector<std::string> split(const std::string& line, char separator);

}  // namespace mastwise::test
