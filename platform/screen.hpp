#pragma once

namespace mastwise::platform {

// Keeps the screen on, where SDL does not. One source file for each kind of system.
void keep_screen_awake(bool awake);

// Buttons beside Mastwise's own picture, in a browser only. Those for files bring them to Mastwise
// and take them away, as a person has no folders there that both can see; the one for a receiver
// lets the page use a serial port.
enum class SideButtons { none, files, receiver };
void offer(SideButtons buttons);

// Darkens what the system shows beside Mastwise's own picture, where it can be darkened.
void darken_surroundings(bool dark);

}  // namespace mastwise::platform
