#pragma once

#include <span>
#include <string_view>

namespace mastwise::safety {

// A usual published caution. The words are this project's; the source says where the figure stands.
struct Caution {
  std::string_view text;
  std::string_view source;
};

// What is asked before an act that can hurt someone.
struct Prompt {
  std::string_view title;
  std::span<const Caution> cautions;
  std::string_view deference;  // who decides: never the app
  std::string_view accept;     // the person's own statement, as the label of the act
  std::string_view refuse;
};

// Asked once for each raising; it cannot be switched off.
const Prompt& before_raising();

// Before the walk on the roof, tablet in hand.
const Prompt& before_roof();

// At wind and thunder, while the antenna is up or about to be.
const Prompt& weather();

// Before driving off.
const Prompt& before_driving();

// When the rig stands after it moved with the antenna up.
const Prompt& after_alarm();

// When the app starts, or after a night, with the antenna marked up.
const Prompt& still_up();

// Before an antenna that was marked up counts as down without having been lowered.
const Prompt& undo_raising();

// Before another logbook is imported, which cannot be undone.
const Prompt& before_merging();

}  // namespace mastwise::safety
