#pragma once

#include "core/channels/channels.hpp"
#include "core/logbook/learning.hpp"

#include <array>
#include <cstddef>
#include <optional>

namespace mastwise::learning {

// What the record teaches of one band.
struct Lesson {
  Band band = Band::uhf;
  double bias_db = 0.0;  // negative: stations come in worse than computed
  double sigma_db = 0.0;
  std::size_t outcomes = 0;
  std::size_t stops = 0;
  bool operator==(const Lesson&) const = default;
};

// The used correction farthest from 0, by band in the order of Band; empty if none is used.
std::optional<Lesson> main_lesson(const std::array<Correction, 3>& corrections);

}  // namespace mastwise::learning
