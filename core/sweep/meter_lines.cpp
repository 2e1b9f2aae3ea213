#include "core/sweep/meter_lines.hpp"

#include "core/import/station_fields.hpp"
#include "core/text/words.hpp"

#include <vector>

namespace mastwise::aim {
namespace {

std::vector<std::string_view> words_of(std::string_view line) {
  std::vector<std::string_view> found;
  for (line = words::trimmed(line); !line.empty(); line = words::trimmed(line)) {
    std::size_t end = 0;
    while (end < line.size() && !words::is_blank(line[end])) ++end;
    found.push_back(line.substr(0, end));
    line.remove_prefix(end);
  }
  return found;
}

std::optional<double> number_within(std::string_view word, double least, double most) {
  const auto number = fields::parse_number(word, false);
  return number && *number >= least && *number <= most ? number : std::nullopt;
}

// 0 dBmV is 60 dBuV; 1 mW in 75 ohm is 0.2739 V.
std::optional<double> dbuv_above(std::string_view unit) {
  if (words::same_word(unit, "dBuV")) return 0.0;
  if (words::same_word(unit, "dBmV")) return 60.0;
  if (words::same_word(unit, "dBm")) return 108.75;
  return std::nullopt;
}

std::optional<milliseconds> read_seconds(const std::vector<std::string_view>& said) {
  constexpr double kLongest_s = 10.0;
  if (said.size() != 3 || !words::same_word(said[2], "s")) return std::nullopt;
  const auto seconds = number_within(said[1], 0.0, kLongest_s);
  if (!seconds) return std::nullopt;
  return milliseconds(static_cast<milliseconds::rep>(*seconds * 1000.0 + 0.5));
}

struct Said {
  MeterKind kind;
  double value;
};

std::optional<Said> read_value(const std::vector<std::string_view>& said) {
  const auto is = [&](std::string_view word, std::size_t count) {
    return said.size() == count && words::same_word(said[0], word);
  };
  const auto given = [](MeterKind kind, std::optional<double> value) {
    return value ? std::optional<Said>({kind, *value}) : std::nullopt;
  };
  if (is("SNR", 3) && words::same_word(said[2], "dB")) {
    return given(MeterKind::snr_db, number_within(said[1], -50.0, 100.0));
  }
  if (is("QUALITY", 3) && said[2] == "%") {
    return given(MeterKind::quality_percent, number_within(said[1], 0.0, 100.0));
  }
  if (is("LEVEL", 3)) {
    const auto above = dbuv_above(said[2]);
    const auto level = number_within(said[1], -200.0, 200.0);
    return above && level ? given(MeterKind::level_dbuv, *level + *above) : std::nullopt;
  }
  if (is("BARS", 4) && words::same_word(said[2], "of")) {
    if (said[3] == "5") return given(MeterKind::bars_of_5, number_within(said[1], 0.0, 5.0));
    if (said[3] == "10") return given(MeterKind::bars_of_10, number_within(said[1], 0.0, 10.0));
  }
  return std::nullopt;
}

}  // namespace

Scale scale_of(MeterKind kind) {
  switch (kind) {
    case MeterKind::quality_percent:
      return Scale::quality_percent;
    case MeterKind::bars_of_5:
      return Scale::bars_of_5;
    case MeterKind::bars_of_10:
      return Scale::bars_of_10;
    case MeterKind::snr_db:
    case MeterKind::level_dbuv:
      break;
  }
  return Scale::decibel;
}

std::optional<MeterReading> MeterLines::read_line(Monotonic now) {
  const auto said = words_of(line_);
  if (said.empty() || said[0].starts_with('#')) return std::nullopt;
  if (words::same_word(said[0], "SMOOTHING")) {
    timing_.smoothing = read_seconds(said).value_or(timing_.smoothing);
    return std::nullopt;
  }
  if (words::same_word(said[0], "DELAY")) {
    timing_.delay = read_seconds(said).value_or(timing_.delay);
    return std::nullopt;
  }
  if (said.size() == 1 && words::same_word(said[0], "NONE")) {
    no_lock_ = MeterReading{.when = now};
    return no_lock_;
  }
  const auto value = read_value(said);
  if (!value) return std::nullopt;
  const MeterReading reading{.when = now, .kind = value->kind, .value = value->value};
  heard_[static_cast<std::size_t>(value->kind)] = reading;
  return reading;
}

void MeterLines::feed(std::string_view bytes, Monotonic now,
                      const std::function<void(const MeterReading&)>& hear) {
  if (!bytes.empty()) bytes_ = now;
  for (const char byte : bytes) {
    if (byte != '\n' && byte != '\r') {
      too_long_ |= line_.size() == kLongestLine;
      if (!too_long_) line_ += byte;
      continue;
    }
    if (!too_long_) {
      if (const auto reading = read_line(now)) {
        reading_ = now;
        hear(*reading);
      }
    }
    line_.clear();
    too_long_ = false;
  }
}

MeterState MeterLines::state(Monotonic now) const {
  if (!bytes_) return MeterState::silent;
  if (reading_ && now - *reading_ < kLifetime) return MeterState::speaking;
  if (now - *bytes_ < kLifetime) return MeterState::unreadable;
  return MeterState::stale;
}

std::optional<MeterKind> MeterLines::kind(Monotonic now) const {
  for (const auto& heard : heard_) {
    if (heard && now - heard->when < kLifetime) return heard->kind;
  }
  return std::nullopt;
}

std::optional<MeterReading> MeterLines::latest(Monotonic now) const {
  if (state(now) != MeterState::speaking) return std::nullopt;
  const auto used = kind(now);
  if (!used) return no_lock_;
  const auto& heard = heard_[static_cast<std::size_t>(*used)];
  return no_lock_ && no_lock_->when > heard->when ? no_lock_ : heard;
}

}  // namespace mastwise::aim
