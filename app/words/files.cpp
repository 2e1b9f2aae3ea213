#include "app/words/files.hpp"

#include "app/words/phrases.hpp"

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

}  // namespace mastwise::words
