#pragma once

#include "core/angles/bearing.hpp"
#include "core/sound/mixer.hpp"

// The sounds of the app. Pitches lie where old ears still hear well: below 2 kHz hearing falls by
// some 20 dB to the age of 70, at 4 kHz by 40 (ISO 7029, from memory).
namespace mastwise::sound {

// The drive-off alarm: 520 and 780 Hz in turn, a quarter of a second each, without a pause. A 520
// Hz wave with harmonics wakes people with hearing loss where a high tone does not (NFPA
// 72, 18.4.6.3 of 2013, from memory; D. Bruck and I. Thomas, "Towards a better smoke alarm
// signal"). The rest follows IEC 60601-1-8, table 4 (fundamental 150 to 1000 Hz, four harmonics
// within 300 to 4000 Hz), and ISO 7731 (0.5 to 4 pulses a second; from memory). Quiet: 14 dB less.
Tone alarm(bool quiet);

// How far the antenna is from the heading, and which way to turn it: pulses whose rate and pitch
// rise toward the heading, from 2 a second at 520 Hz (90 degrees away and more) to 10 a second at
// 1040 Hz. Each pulse glides upward for a turn to the right, downward for one to the left.
Tone turning(Turn turn);

// On the heading: the same sound without a pause.
Tone on_heading();

// Something was done that a person asked for: two notes, 0.24 s.
Samples confirm();

// Speech made about as loud as the tones: -15 dBFS before its peaks are limited softly to 0.8 of
// full scale; its ends faded. Silence stays silent.
Samples leveled(Samples speech);

}  // namespace mastwise::sound
