#include "app/words/receivers.hpp"

#include "app/words/phrases.hpp"

#include <chrono>

namespace mastwise::words {

std::string fix_trouble(const nmea::Fix& fix) {
  const auto& p = phrases().receivers;
  if (fix.why_not_good == nmea::FixTrouble::receiver_says_void && fix.satellites) {
    return fill(p.no_fix_with_satellites, {{"number", std::to_string(*fix.satellites)}});
  }
  const auto silence =
      std::chrono::floor<std::chrono::seconds>(fix.silent_for.value_or(milliseconds(0)));
  const std::string trouble = named(p.troubles, fix.why_not_good);
  return fill(trouble.c_str(), {{"seconds", std::to_string(silence.count())}});
}

}  // namespace mastwise::words
