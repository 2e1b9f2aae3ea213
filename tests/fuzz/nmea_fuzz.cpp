#include "core/nmea/log_replay.hpp"
#include "core/nmea/receiver.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

using namespace mastwise;
using namespace mastwise::nmea;

namespace {

void require(bool holds) {
  if (!holds) std::abort();
}

bool is_on_earth(const Position& position) {
  return std::fabs(position.latitude_deg()) <= 90.0 && std::fabs(position.longitude_deg()) <= 180.0;
}

void check(const Receiver& receiver, Monotonic now) {
  const Fix fix = receiver.fix(now);
  require(fix.good() == fix.position.has_value());
  require(fix.last_position.has_value() == (fix.positions_taken > 0));
  require(fix.good() == is_satellite_fix(fix.quality));
  if (fix.last_position) require(is_on_earth(*fix.last_position));
  if (fix.good()) require(*fix.age < Receiver::kPositionLifetime);
  if (fix.speed_mps) require(*fix.speed_mps >= 0.0);
  if (const auto& date = receiver.date()) {
    require(date->date - date->said == std::chrono::days(7) * date->weeks_shifted);
    require(date->weeks_shifted % 1024 == 0);
  }
}

}  // namespace

// The first bytes give the lengths of the pieces; the rest is the stream. A receiver fed in pieces
// must equal one fed the whole, and the fix must keep its invariants.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  constexpr std::size_t kLengths = 4;
  if (size < kLengths) return 0;
  const sys_days floor = sys_days(std::chrono::year(2026) / 11 / 25);
  const std::string_view stream(reinterpret_cast<const char*>(data) + kLengths, size - kLengths);
  const Monotonic now{};
  Receiver whole(floor);
  whole.feed(stream, now);
  Receiver in_pieces(floor);
  std::size_t piece = 0;
  for (std::string_view rest = stream; !rest.empty(); ++piece) {
    const std::size_t length = std::min<std::size_t>(data[piece % kLengths] + 1u, rest.size());
    in_pieces.feed(rest.substr(0, length), now);
    rest.remove_prefix(length);
  }
  require(whole == in_pieces);
  check(whole, now);
  check(whole, now + std::chrono::seconds(5));
  const LogReplay replay = replay_log(stream, floor);
  check(replay.receiver, Monotonic(replay.duration));
  require(replay.last_good.good() == (replay.receiver.fix(Monotonic{}).positions_taken > 0));
  return 0;
}
