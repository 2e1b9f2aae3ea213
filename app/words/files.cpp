#include "app/words/files.hpp"

#include "app/words/phrases.hpp"

#include <fmt/format.h>

namespace mastwise::words {

std::vector<std::string> merged(const MergeReport& report) {
  const auto& p = phrases().files;
  const auto line = [&](Phrase what, const MergeCounts& counts) {
    return fill(p.merged, {{"what", what},
                           {"added", std::to_string(counts.added)},
                           {"renewed", std::to_string(counts.renewed)},
                           {"same", std::to_string(counts.same)},
                           {"kept", std::to_string(counts.kept)}});
  };
  return {line(p.stops, report.stops), line(p.outcomes, report.outcomes),
          line(p.sweeps, report.sweeps)};
}

std::string unsaved(std::size_t records, const std::string& why) {
  const auto& p = phrases().files;
  return fill(records == 1 ? p.unsaved_one : p.unsaved,
              {{"number", std::to_string(records)}, {"why", why}});
}

std::string refused(std::size_t records) {
  return fill(phrases().files.refused, {{"number", std::to_string(records)}});
}

std::string logbook_rescued(const std::string& file, std::size_t stops, std::size_t outcomes) {
  return fill(
      phrases().files.logbook_rescued,
      {{"stops", std::to_string(stops)}, {"outcomes", std::to_string(outcomes)}, {"file", file}});
}

std::string catalog_rescued(const std::string& file, std::size_t stations) {
  return fill(phrases().files.catalog_rescued,
              {{"stations", std::to_string(stations)}, {"file", file}});
}

std::string catalog_damaged(const std::string& why) {
  return fill(phrases().files.catalog_damaged, {{"why", why}});
}

std::string logbook_unwritable(const std::string& why) {
  return fill(phrases().files.logbook_unwritable, {{"why", why}});
}

std::string settings_dropped(const std::vector<std::string>& names) {
  return fill(phrases().files.settings_dropped,
              {{"names", fmt::format("{}", fmt::join(names, ", "))}});
}

std::string state_dropped(const std::string& why) {
  return fill(phrases().files.state_dropped, {{"why", why}});
}

}  // namespace mastwise::words
