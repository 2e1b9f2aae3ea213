#pragma once

#include "tests/support/stage.hpp"

#include <functional>
#include <vector>

namespace mastwise::test {

// A screen or cover, and the actions that open it.
struct View {
  const char* name;
  std::function<void(Stage&)> reach;
};

const std::vector<View>& views();
// Those of the Logbook, of Ahead and of Data, which views() has too.
std::vector<View> record_views();

// Those of Path, Plan and Peak that are not among the usual ones; part of views().
std::vector<View> signal_views();
// Those of them that cover all others: prompts, roof, under way, alarm.
std::vector<View> safety_views();

// The sheets of the compass and the heading sensor; part of views().
std::vector<View> compass_views();

// The drawn guides; part of views().
std::vector<View> guide_views();

// A sea without a station in reach.
inline const Position kNowhere = *Position::at_deg(-40.0, 20.0);

void leave_practice(Stage& stage);
// Applies the action without a finger, and waits until nothing moves.
void press(Stage& stage, const Action& action);
// Types a number or place into a field.
void type_number(Stage& stage, Field field, const std::string& text);

}  // namespace mastwise::test
