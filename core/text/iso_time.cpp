#include "core/text/iso_time.hpp"

#include <charconv>

#include <fmt/format.h>

namespace mastwise {
namespace {

class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  bool take(char wanted) {
    if (text_.empty() || text_.front() != wanted) return false;
    text_.remove_prefix(1);
    return true;
  }
  // A number with exactly this many digits, within the limits.
  std::optional<int> number(std::size_t digits, int least, int most) {
    int value = 0;
    if (text_.size() < digits || text_.front() == '-') return std::nullopt;
    const auto [end, trouble] = std::from_chars(text_.data(), text_.data() + digits, value);
    if (trouble != std::errc{} || end != text_.data() + digits) return std::nullopt;
    text_.remove_prefix(digits);
    return value >= least && value <= most ? std::optional(value) : std::nullopt;
  }
  std::optional<milliseconds> fraction() {
    int value_ms = 0, weight_ms = 100;
    bool any = false;
    while (!text_.empty() && text_.front() >= '0' && text_.front() <= '9') {
      value_ms += weight_ms * (text_.front() - '0');
      weight_ms /= 10;
      text_.remove_prefix(1);
      any = true;
    }
    return any ? std::optional(milliseconds(value_ms)) : std::nullopt;
  }
  bool at_end() const { return text_.empty(); }

 private:
  std::string_view text_;
};

std::optional<std::chrono::sys_days> read_day(Reader& reader) {
  const auto year = reader.number(4, 0, 9999);
  if (!year || !reader.take('-')) return std::nullopt;
  const auto month = reader.number(2, 1, 12);
  if (!month || !reader.take('-')) return std::nullopt;
  const auto day = reader.number(2, 1, 31);
  if (!day) return std::nullopt;
  const std::chrono::year_month_day date{std::chrono::year(*year),
                                         std::chrono::month(static_cast<unsigned>(*month)),
                                         std::chrono::day(static_cast<unsigned>(*day))};
  return date.ok() ? std::optional(std::chrono::sys_days(date)) : std::nullopt;
}

std::optional<milliseconds> read_time_of_day(Reader& reader) {
  const auto hour = reader.number(2, 0, 23);
  if (!hour || !reader.take(':')) return std::nullopt;
  const auto minute = reader.number(2, 0, 59);
  if (!minute || !reader.take(':')) return std::nullopt;
  const auto second = reader.number(2, 0, 60);
  if (!second) return std::nullopt;
  milliseconds time =
      std::chrono::hours(*hour) + std::chrono::minutes(*minute) + std::chrono::seconds(*second);
  if (reader.take('.')) {
    const auto fraction = reader.fraction();
    if (!fraction) return std::nullopt;
    time += *fraction;
  }
  return time;
}

// How far local time is ahead of UTC.
std::optional<std::chrono::minutes> read_offset(Reader& reader) {
  if (reader.at_end() || reader.take('Z')) return std::chrono::minutes(0);
  const bool behind = reader.take('-');
  if (!behind && !reader.take('+')) return std::nullopt;
  const auto hours = reader.number(2, 0, 23);
  if (!hours || !reader.take(':')) return std::nullopt;
  const auto minutes = reader.number(2, 0, 59);
  if (!minutes) return std::nullopt;
  const std::chrono::minutes offset = std::chrono::hours(*hours) + std::chrono::minutes(*minutes);
  return behind ? -offset : offset;
}

}  // namespace

std::string iso_utc(UtcTime time) {
  const auto day = std::chrono::floor<std::chrono::days>(time);
  const std::chrono::year_month_day date(day);
  const std::chrono::hh_mm_ss clock(time - day);
  const std::string fraction = clock.subseconds().count() == 0
                                   ? std::string()
                                   : fmt::format(".{:03}", clock.subseconds().count());
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}{}Z", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                     clock.hours().count(), clock.minutes().count(), clock.seconds().count(),
                     fraction);
}

std::string iso_utc_seconds(UtcTime time) {
  return iso_utc(std::chrono::floor<std::chrono::seconds>(time));
}

std::string iso_day(UtcTime time) {
  return iso_utc(std::chrono::floor<std::chrono::days>(time)).substr(0, 10);
}

std::string iso_day(std::chrono::local_days day) {
  return iso_day(UtcTime(day.time_since_epoch()));
}

std::optional<std::chrono::sys_days> parse_iso_day(std::string_view text) {
  Reader reader(text);
  const auto day = read_day(reader);
  return reader.at_end() ? day : std::nullopt;
}

std::optional<UtcTime> parse_iso_utc(std::string_view text) {
  Reader reader(text);
  const auto day = read_day(reader);
  if (!day || !reader.take('T')) return std::nullopt;
  const auto time = read_time_of_day(reader);
  if (!time) return std::nullopt;
  const auto offset = read_offset(reader);
  if (!offset || !reader.at_end()) return std::nullopt;
  return UtcTime(*day) + *time - *offset;
}

}  // namespace mastwise
