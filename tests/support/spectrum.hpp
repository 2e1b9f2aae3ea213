#pragma once

#include <span>

namespace mastwise::test {

// The amplitude of one frequency in the samples: 1 for a sine of full scale at that frequency.
// Goertzel's algorithm (G. Goertzel, American Mathematical Monthly 65, 1958) under a Hann window,
// which has half of the amplitude on average.
double amplitude_at(std::span<const float> samples, double frequency_hz);

// The strongest frequency within a range, found in steps of 1 Hz.
double strongest_hz(std::span<const float> samples, double from_hz, double to_hz);

// The largest step from one sample to the next, in full scales.
double largest_step(std::span<const float> samples);

}  // namespace mastwise::test
