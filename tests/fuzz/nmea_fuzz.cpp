#include "core/nmea/log_replay.hpp"
#include "core/nmea/receiver.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/format.h>

using namespace mastwise;
using namespace mastwise::nmea;
using fuzz::require;

namespace {

constexpr sys_days kFloor = sys_days(std::chrono::year(2026) / 11 / 25);

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

std::string with_checksum(std::string_view text) {
  unsigned sum = 0;
  for (const char c : text.substr(1)) sum ^= static_cast<unsigned char>(c);
  return fmt::format("{}*{:02X}\r\n", text, sum);
}

// The lines from their last `$`, where a sentence begins, up to a `*`, each with its right
// checksum: random bytes rarely have one.
std::vector<std::string> sentences(std::string_view stream) {
  std::vector<std::string> all;
  while (!stream.empty()) {
    const std::size_t end = std::min(stream.find_first_of("\r\n"), stream.size());
    const std::string_view line = stream.substr(0, std::min(stream.find('*'), end));
    const std::size_t start = line.rfind('$');
    if (start != line.npos) all.push_back(with_checksum(line.substr(start)));
    stream.remove_prefix(std::min(end + 1, stream.size()));
  }
  return all;
}

// The sentence with what says that its position is void [NMEA 0183: the status of RMC and GLL is V,
// the quality of GGA 0]; empty for other sentences.
std::string void_form(std::string_view sentence) {
  const std::string_view name = sentence.substr(std::min<std::size_t>(3, sentence.size()), 3);
  const std::size_t field = name == "RMC" ? 2 : name == "GLL" || name == "GGA" ? 6 : 0;
  if (field == 0 || sentence.substr(0, 3) == "$P") return {};
  std::size_t begin = 0;
  for (std::size_t i = 0; i < field; ++i) {
    begin = sentence.find(',', begin) + 1;
    if (begin == 0) return {};
  }
  const std::size_t end = sentence.find_first_of(",*", begin);
  std::string changed(sentence.substr(0, sentence.find('*')));
  changed.replace(begin, end - begin, name == "GGA" ? "0" : "V");
  return with_checksum(changed);
}

void check_void(const std::vector<std::string>& all) {
  Receiver receiver(kFloor);
  for (const std::string& sentence : all) receiver.feed(void_form(sentence), Monotonic{});
  require(receiver.fix(Monotonic{}).positions_taken == 0);
}

// A receiver fed in pieces must equal one fed the whole, and the fix must keep its invariants.
void check(std::string_view stream, const std::uint8_t* lengths, std::size_t count) {
  const Monotonic now{};
  Receiver whole(kFloor);
  whole.feed(stream, now);
  Receiver in_pieces(kFloor);
  std::size_t piece = 0;
  for (std::string_view rest = stream; !rest.empty(); ++piece) {
    const std::size_t length = std::min<std::size_t>(lengths[piece % count] + 1u, rest.size());
    in_pieces.feed(rest.substr(0, length), now);
    rest.remove_prefix(length);
  }
  require(whole == in_pieces);
  check(whole, now);
  check(whole, now + std::chrono::seconds(5));
  const LogReplay replay = replay_log(stream, kFloor);
  check(replay.receiver, Monotonic(replay.duration));
  require(replay.last_good.good() == (replay.receiver.fix(Monotonic{}).positions_taken > 0));
}

}  // namespace

// The first bytes give the lengths of the pieces; the rest is the stream, as it is and with right
// checksums. A void sentence never gives a position.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  constexpr std::size_t kLengths = 4;
  if (size < kLengths) return 0;
  const std::string_view stream = fuzz::text_of(data + kLengths, size - kLengths);
  check(stream, data, kLengths);
  const auto all = sentences(stream);
  std::string joined;
  for (const std::string& sentence : all) joined += sentence;
  check(joined, data, kLengths);
  check_void(all);
  return 0;
}
