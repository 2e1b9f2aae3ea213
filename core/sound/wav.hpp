#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace mastwise::sound {

// The samples as the bytes of a WAV file: 16-bit PCM, mono, kRate_hz. Samples beyond -1 to 1 are
// cut there. Format: RIFF/WAVE, "fmt " and "data" chunks (Multimedia Programming Interface and Data
// Specifications 1.0, 1991; from memory).
std::string wav_bytes(std::span<const float> samples);

// Samples of -1 to 1 from 16-bit PCM.
std::vector<float> from_pcm(std::span<const std::int16_t> samples);

// Levels in decibels under full scale, a sample of 1: 0 dB for a square wave of full scale, -3.01
// for the power of a full sine. Silence is -120 dB.
double peak_dbfs(std::span<const float> samples);
double rms_dbfs(std::span<const float> samples);

}  // namespace mastwise::sound
