#pragma once

#include "core/reception/reason.hpp"
#include "core/reception/signal_budget.hpp"

#include <string>

// The link budget in a few words a row.
namespace mastwise::words {

// "Ridge, 11.1 mi out", "Low antenna, 15 ft", "QLSB, next channel".
std::string signal_step(const reception::SignalStep& step, bool miles);
// "17 dB to spare", "19 dB too weak".
std::string margin(double margin_db);
// Whole decibels with a true minus: "−13", "+2".
std::string signed_db(long decibel);

// Why no heading brings a station, in a few words: "Ridge, 44 mi out: 30 dB".
std::string brief_reason(const reception::Reason& reason, bool miles);

}  // namespace mastwise::words
