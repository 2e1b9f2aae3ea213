#pragma once

#include <filesystem>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace mastwise::test {

// The path of a file or folder of the published reference data, or nothing where the data is not on
// this machine: then "SKIPPED <name>" is printed, and the test should return.
// The data is sought in the folder that MASTWISE_REFERENCE names, else in ../shared/reference.
std::optional<std::filesystem::path> reference(const std::string& name);

// Says that the test leaves out what needs `lacking`, which this machine does not have.
void skip(const std::string& lacking);
// The names of the tests that left something out so far.
const std::set<std::string>& skipped_tests();

// The whole file. Fails the test when it cannot be read.
std::string read_file(const std::filesystem::path& path);

// The file's lines without "\r" and without the end-of-line.
std::vector<std::string> read_lines(const std::filesystem::path& path);

// The fields of one line of a comma-separated table, without quoting.
std::vector<std::string> split(const std::string& line, char separator);

}  // namespace mastwise::test
