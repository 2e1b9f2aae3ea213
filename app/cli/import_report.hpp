#pragma once

#include "core/catalog/catalog.hpp"
#include "core/import/guess_mapping.hpp"

#include <string>

#include <nlohmann/json.hpp>

// What the import verbs print.
namespace mastwise::cli {

nlohmann::json report_json(const ImportReport& report);
std::string report_text(const ImportReport& report);

nlohmann::json report_json(const ProgramReport& report);
std::string report_text(const ProgramReport& report);

// The guess with its doubts, as a person decides on it; `sample` are stations read by it.
nlohmann::json guess_json(const GuessedMapping& guess, const std::vector<Station>& sample);
std::string guess_text(const GuessedMapping& guess, const std::vector<Station>& sample);

}  // namespace mastwise::cli
