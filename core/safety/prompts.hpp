#pragma once

#include <span>
#include <string_view>

namespace mastwise::safety {

// What a caution's mark shows.
enum class CautionMark {
  LookUp,       // an eye under a line
  LiveLine,     // a line that sparks
  WindAndBolt,  // a flag in the wind, and lightning
  Falling,      // a mast that falls
  Rain,         // wet, icy, windy or dark
  Ladder,       // leaning
  ThreePoints,  // of contact, on a ladder
  Wind,         // a flag in the wind
  Storm,        // a cloud that comes
  Thunder,      // a cloud with lightning
  HalfHour,     // half of a clock's face
  Down,         // an antenna that is down
  Tag,          // on a steering wheel
  Stowed,       // a ladder on its hooks
  Passenger,    // beside the driver
  Files,        // two that are joined
};

// A usual published caution: the act in a few words, then its whole sense. The words are this
// project's; the source says where the figure stands. {distance} in the head is that of keep_out().
struct Caution {
  CautionMark mark;
  std::string_view head;
  std::string_view text;
  std::string_view source;
};

// What is drawn beside the cautions.
enum class PromptPicture { KeepOut, Ladder, Storm, Lowered, None };

// What is asked before an act that can hurt someone.
struct Prompt {
  std::string_view title;
  PromptPicture picture = PromptPicture::None;
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

// When sensors on board say that the rig moves, with the antenna marked up.
const Prompt& seems_to_move();

// Before an antenna that was marked up counts as down without having been lowered.
const Prompt& undo_raising();

// Before another logbook is imported, which cannot be undone.
const Prompt& before_merging();

}  // namespace mastwise::safety
