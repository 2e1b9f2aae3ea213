#pragma once

#include "core/catalog/catalog.hpp"
#include "core/import/guess_mapping.hpp"

#include <string>

#include <nlohmann/json.hpp>

// Output of the import verbs.
namespace mastwise::cli {

nlohmann::json report_json(const ImportReport& report);
std::string report_text(const ImportReport& report);

nlohmann::json report_json(const ProgramReport& report);
std::string report_text(const ProgramReport& report);

// The guess with its doubts and `sample`, stations read by it, for a person to check.
nlohmann::json guess_json(const GuessedMapping& guess, const std::vector<Station>& sample);
std::string guess_text(const GuessedMapping& guess, const std::vector<Station>& sample);

}  // namespace mastwise::cli
