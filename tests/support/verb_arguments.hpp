#pragma once

#include <string>
#include <vector>

namespace mastwise::test {

using Arguments = std::vector<std::string>;

// The example of the reference data's README, WLED-TV from where a log was recorded: 207.950
// degrees true, 222.09 magnetic.
inline const Arguments kExampleCard{
    "card", "--at", "44.435217,-71.675993", "--to", "44.352778,-71.736944", "--date", "2026-07-02"};

inline Arguments with(Arguments arguments, const Arguments& more) {
  arguments.insert(arguments.end(), more.begin(), more.end());
  return arguments;
}

inline bool contains(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace mastwise::test
