#include "core/logbook/record.hpp"

#include "core/text/utf8.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace mastwise {
namespace {

constexpr std::array kOutcomes{Outcome::steady, Outcome::breaks_up, Outcome::nothing};
constexpr std::array kBands{Band::low_vhf, Band::high_vhf, Band::uhf};

// The years that have four digits.
constexpr UtcTime kEarliest{std::chrono::sys_days(std::chrono::year(0) / 1 / 1)};
constexpr UtcTime kLatest{std::chrono::sys_days(std::chrono::year(9999) / 12 / 31)};

class Check {
 public:
  explicit Check(std::string where) : where_(std::move(where)) {}

  Check& id(std::string_view name, const std::string& id) {
    constexpr std::size_t kLongest = 64;
    const bool plain = std::all_of(id.begin(), id.end(), [](char c) {
      return words::is_letter(c) || words::is_digit(c) || c == '-';
    });
    if (id.empty() || id.size() > kLongest || !plain) {
      refuse(fmt::format("the {} is not 1 to {} letters, digits and hyphens", name, kLongest));
    }
    return *this;
  }
  Check& text(std::string_view name, const std::string& text) {
    if (!is_utf8(text) || text.find('\0') != std::string::npos) {
      refuse(fmt::format("the {} is not UTF-8", name));
    }
    return *this;
  }
  Check& time(std::string_view name, UtcTime time) {
    if (time < kEarliest || time > kLatest) refuse(fmt::format("the {} is not a valid date", name));
    return *this;
  }
  Check& number(std::string_view name, std::optional<double> value, double least, double most) {
    if (value && !(*value >= least && *value <= most)) {
      refuse(fmt::format("the {} is {}, outside {} to {}", name, *value, least, most));
    }
    return *this;
  }
  Check& that(bool holds, const std::string& what) {
    if (!holds) refuse(what);
    return *this;
  }
  Check& mark(const Mark& mark) {
    return time("time of change", mark.changed).text("tablet", mark.tablet);
  }
  const std::optional<Error>& found() const { return found_; }

 private:
  void refuse(std::string what) {
    if (!found_) found_ = Error{.what = std::move(what), .where = where_};
  }
  std::string where_;
  std::optional<Error> found_ = {};
};

constexpr double kMostDecibel = 1000.0;
constexpr double kLeastDeviation_db = 0.01;

}  // namespace

std::string_view to_text(Outcome outcome) {
  switch (outcome) {
    case Outcome::steady:
      return "steady";
    case Outcome::breaks_up:
      return "breaks up";
    case Outcome::nothing:
      return "nothing";
  }
  return {};
}

Result<Outcome> parse_outcome(std::string_view text) {
  return words::parse_choice(text, kOutcomes, "an outcome");
}

Result<Band> parse_band(std::string_view text) {
  return words::parse_choice(text, kBands, "a band");
}

std::optional<Error> fault(const StopRecord& stop) {
  Check check("the stop");
  check.id("id", stop.id).mark(stop.mark).time("arrival", stop.arrived);
  if (stop.left) {
    check.time("departure", *stop.left)
        .that(*stop.left >= stop.arrived, "the departure is before the arrival");
  }
  check.text("name", stop.name).text("note", stop.note);
  return check.text("gear", stop.gear).text("weather", stop.weather).found();
}

std::optional<Error> fault(const OutcomeRecord& outcome) {
  Check check("the outcome");
  check.id("stop's id", outcome.stop_id).mark(outcome.mark).time("time", outcome.when);
  check.that(!outcome.station_id.empty(), "the station has no id");
  check.text("source", outcome.source).text("station's id", outcome.station_id);
  check.text("call sign", outcome.call_sign).text("virtual channel", outcome.virtual_channel);
  const char letter = outcome.rf_channel.letter;
  check.number("RF channel", outcome.rf_channel.number, 1.0, 999.0)
      .that(letter == '\0' || (letter >= 'A' && letter <= 'Z'),
            "the RF channel has a suffix that is not a capital letter");
  check.number("chance", outcome.chance_percent, 0.0, 100.0)
      .number("margin", outcome.margin_db, -kMostDecibel, kMostDecibel)
      .number("deviation", outcome.deviation_db, kLeastDeviation_db, kMostDecibel)
      .number("temperature", outcome.temperature_c, -100.0, 100.0);
  return check.text("gear", outcome.gear).text("weather", outcome.weather).found();
}

std::optional<Error> fault(const SweepRecord& sweep) {
  Check check("the sweep");
  check.id("id", sweep.id).id("stop's id", sweep.stop_id).mark(sweep.mark);
  check.time("time", sweep.when).that(!sweep.station_id.empty(), "the station has no id");
  check.text("source", sweep.source).text("station's id", sweep.station_id);
  check.text("scale", sweep.scale).number("sigma", sweep.sigma_deg, 0.0, 180.0);
  for (const SweepReading& reading : sweep.readings) {
    check.number("reading", reading.value, -kMostDecibel, kMostDecibel);
  }
  return check.found();
}

}  // namespace mastwise
