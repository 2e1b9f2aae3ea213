#pragma once

#include "tests/support/stage.hpp"

#include <set>
#include <string>
#include <vector>

namespace mastwise::test {

// Lines of a failed check.
std::string indented(const std::vector<std::string>& lines);

// What is wrong with the last frame, one line each; empty if nothing is: targets that are too small
// or too close, texts off the screen, cut at a side, wider than their button, in fine print where
// something can be touched, or over one another.
std::string view_faults(const Stage& stage, const Screen& screen);

// Faults under their name; empty without any.
std::string named(const char* fault, const std::string& lines);

// Steps of the focus in the order of drawing that go up and not to another column on the right.
std::string steps_against_reading(const Stage& stage);

// What a finger can touch and the focus of keys never comes to in one round, and what has it while
// out of view.
std::string focus_faults(Stage& stage);

// The texts whose colors are not a pair of the theme's list, with those colors. Adds the listed
// pairs to `seen`.
std::string unlisted_colors(const Stage& stage, std::set<std::string>& seen);
// A finger on the first row of a list or the first field, if the screen has one.
bool press_a_row(Stage& stage);

using WordSet = std::set<std::string>;
WordSet drawn_words(const Stage& stage);
// A word that the English view shows, that no Spanish text has, and that the Spanish view shows all
// the same, has bypassed the table.
std::string untranslated(const Stage& stage, const char* view, const WordSet& english);

}  // namespace mastwise::test
