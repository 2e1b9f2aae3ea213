#pragma once

#include "core/plan/scan_help.hpp"

#include <string>

// How to get the stations into the receiver.
namespace mastwise::words {

// The result of the ticked channels, and what to do next.
std::string scan_state(ScanState state);
// The right kind of scan here, and why.
std::string scan_choice(ScanChoice choice);
// What the receiver should show on a channel: "QABC 6.1 6.2; QXYZ".
std::string expected(const ChannelToEnter& channel);
// Which transmitters show a virtual channel, and what to do about it.
std::string twins(const Twins& twins, bool miles);

}  // namespace mastwise::words
