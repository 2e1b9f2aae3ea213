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

std::string settings_dropped(const std::vector<std::string>& names) {
  return fill(phrases().files.settings_dropped,
              {{"names", fmt::format("{}", fmt::join(names, ", "))}});
}

std::string state_dropped(const std::string& why) {
  return fill(phrases().files.state_dropped, {{"why", why}});
}

}  // namespace mastwise::words
