#include "app/words/scans.hpp"

#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

namespace mastwise::words {

std::string scan_state(ScanState state) {
  return named(phrases().scans.states, state);
}

std::string scan_choice(ScanChoice choice) {
  return named(phrases().scans.choices, choice);
}

std::string expected(const ChannelToEnter& channel) {
  std::string words;
  for (const ExpectedStation& expected : channel.expected) {
    if (!words.empty()) words += "; ";
    words += expected.call_sign;
    for (const std::string& virtual_channel : expected.virtual_channels) {
      words += " " + virtual_channel;
    }
  }
  return words;
}

std::string twins(const Twins& twins, bool miles) {
  const auto& p = phrases().scans;
  std::string stations;
  for (const Twin& twin : twins.by_scan) {
    if (!stations.empty()) stations += p.and_twin;
    stations += fill(p.twin, {{"station", twin.call_sign},
                              {"rf", to_text(twin.rf_channel)},
                              {"distance", distance(twin.distance_m, miles)}});
  }
  const std::string shown =
      fill(p.twins, {{"channel", twins.virtual_channel}, {"stations", stations}});
  if (!twins.another_comes_first()) return shown + ".";
  return fill(p.other_first,
              {{"twins", shown}, {"rf", to_text(twins.by_scan[twins.best].rf_channel)}}) +
         ".";
}

}  // namespace mastwise::words
