#include "app/words.hpp"

#include "core/catalog/source_age.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <fmt/chrono.h>
#include <fmt/format.h>

namespace mastwise::words {

std::string whole_degrees(double degrees) {
  return fmt::format("{}°", static_cast<int>(std::lround(degrees)) % 360);
}

std::string tenths_of_degree(double degrees) {
  return fmt::format("{:.1f}°", static_cast<double>(std::lround(degrees * 10.0) % 3600) / 10.0);
}

namespace {

// In miles or kilometers.
double long_units(double distance_m, bool miles) {
  constexpr double kMetersPerMile = 1609.344;
  return distance_m / (miles ? kMetersPerMile : 1000.0);
}

}  // namespace

std::string distance(double distance_m, bool miles) {
  const double value = long_units(distance_m, miles);
  const char* unit = miles ? "mi" : "km";
  if (value < 1.0) return fmt::format("{:.2f} {}", value, unit);
  if (value < 99.95) return fmt::format("{:.1f} {}", value, unit);
  return fmt::format("{:.0f} {}", value, unit);
}

std::string declination(Declination declination) {
  const double degrees = declination.east_deg();
  return fmt::format("{:.1f}° {}", std::fabs(degrees), degrees < 0.0 ? "west" : "east");
}

std::string from_nose(RigAngle angle) {
  const double right = fold_half_circle_deg(angle.clockwise_deg());
  const long whole = std::lround(std::fabs(right));
  if (whole == 0) return "straight ahead";
  if (whole == 180) return "straight behind";
  return fmt::format("{}° {}", whole, right > 0.0 ? "right" : "left");
}

std::string turn(Turn turn) {
  if (std::lround(turn.size_deg()) == 0) return "On target";
  return turn.clockwise_deg() > 0.0 ? "Turn right" : "Turn left";
}

std::string slack(const std::optional<Slack>& slack) {
  if (!slack) return "Its slack is not known: turn to the number exactly";
  if (slack->all_round()) return "Any heading will do";
  return fmt::format("Anywhere from {:.0f}° left to {:.0f}° right of it will do", slack->left_deg,
                     slack->right_deg);
}

std::string octant(Bearing<True> bearing) {
  constexpr std::array kOctants{"N", "NE", "E", "SE", "S", "SW", "W", "NW"};
  return kOctants[static_cast<std::size_t>(std::lround(bearing.degrees() / 45.0)) % 8];
}

std::string age(milliseconds age) {
  const double seconds = std::chrono::duration<double>(age).count();
  if (seconds < 90.0) return fmt::format("{:.0f} s", seconds);
  if (seconds < 5400.0) return fmt::format("{:.0f} min", seconds / 60.0);
  return fmt::format("{:.0f} h", seconds / 3600.0);
}

std::string date(UtcTime time) {
  const std::tm day = fmt::gmtime(std::chrono::system_clock::to_time_t(time));
  return fmt::format("{} {:%B %Y}", day.tm_mday, day);
}

namespace {

std::string counted(int count, const char* one) {
  return fmt::format("{} {}{}", count, one, count == 1 ? "" : "s");
}

}  // namespace

std::string data_age(std::string_view date, UtcTime now) {
  const auto age = source_age(date, now);
  if (!age) return date.empty() ? "age not known" : fmt::format("of {}, age not known", date);
  std::vector<std::string> parts;
  if (age->years > 0) parts.push_back(counted(age->years, "year"));
  if (age->months > 0) parts.push_back(counted(age->months, "month"));
  if (parts.empty()) parts.push_back(counted(age->days, "day"));
  return fmt::format("of {}, {} old", date, fmt::join(parts, " "));
}

std::string data_caution(std::string_view date, UtcTime now) {
  const auto age = source_age(date, now);
  if (!age) return {};
  switch (age->freshness) {
    case SourceFreshness::fresh:
      return {};
    case SourceFreshness::ageing:
      return "Here and there a station is new, gone, moved or on another channel since.";
    case SourceFreshness::stale:
      return "Headings hold for decades, channels do not: many may have changed since.";
  }
  return {};
}

std::string iso_time(UtcTime time) {
  return fmt::format("{:%Y-%m-%dT%H:%M:%SZ}",
                     fmt::gmtime(std::chrono::system_clock::to_time_t(time)));
}

std::string time_of_day(milliseconds since_midnight) {
  return iso_time(UtcTime(since_midnight)).substr(std::string_view("1970-01-01T").size());
}

std::string notation(Notation notation) {
  switch (notation) {
    case Notation::Decimal:
      return "Decimal degrees";
    case Notation::DegreesMinutes:
      return "Degrees, minutes";
    case Notation::DegreesMinutesSeconds:
      return "Degrees, min., sec.";
    case Notation::UtmUps:
      return "UTM grid";
    case Notation::Mgrs:
      return "MGRS grid";
  }
  return {};
}

std::string link(const Link& link) {
  switch (link.state) {
    case Link::State::Searching:
      return "Looking for a receiver";
    case Link::State::Open:
      return "Receiver on " + link.name;
    case Link::State::Lost:
      return "No receiver: " + link.name;
    case Link::State::Ended:
      return link.name + " has been played to its end";
  }
  return {};
}

std::string chance_number(double percent) {
  // No evening is certain.
  constexpr double kMost = 99.0;
  return fmt::format("{:.0f} %", std::min(kMost, percent));
}

std::string chance_number(const reception::Outlook& outlook) {
  return outlook.chance_percent ? chance_number(*outlook.chance_percent) : "";
}

std::string chance_word(const reception::Outlook& outlook) {
  if (!outlook.chance_percent) return "not known";
  return std::string(to_text(reception::chance_word(*outlook.chance_percent)));
}

std::string models(const reception::Outlook& outlook) {
  if (!outlook.field_dbuvm) return "not computed";
  if (!outlook.spread_db) {
    return fmt::format("{:.0f} dBµV/m by the area mode: no terrain for the path",
                       *outlook.field_dbuvm);
  }
  return fmt::format("{:.0f} dBµV/m, models {:.0f} dB apart", *outlook.field_dbuvm,
                     *outlook.spread_db);
}

std::string surroundings(reception::Surroundings surroundings) {
  return std::string(to_text(surroundings));
}

std::string place(const places::Place& place) {
  return place.name + ", " + (place.region.empty() ? place.country_name : place.region);
}

std::string near_place(const places::NearPlace& near, bool miles) {
  const double value = long_units(near.distance_m, miles);
  if (value < 1.0) return "near " + place(near.place);
  // The middle of a town is no point: beyond a few miles tenths would say more than is known.
  constexpr double kTenthsBelow = 9.95;
  const std::string away = value < kTenthsBelow
                               ? distance(near.distance_m, miles)
                               : fmt::format("{:.0f} {}", value, miles ? "mi" : "km");
  return fmt::format("{} {} of {}", away, octant(near.bearing), place(near.place));
}

std::vector<std::string> merged(const MergeReport& report) {
  const auto line = [](const char* what, const MergeCounts& counts) {
    return fmt::format("{}: {} new, {} newer, {} the same, {} older than here", what, counts.added,
                       counts.renewed, counts.same, counts.kept);
  };
  return {line("stops", report.stops), line("outcomes", report.outcomes),
          line("sweeps", report.sweeps)};
}

std::string sentence(std::string words) {
  if (!words.empty() && words.front() >= 'a' && words.front() <= 'z') words.front() -= 'a' - 'A';
  return words;
}

std::string why_no_shadow(sky::NoShadow why) {
  switch (why) {
    case sky::NoShadow::Night:
      return "the sun is down";
    case sky::NoShadow::TooLow:
      return "the sun is too low";
    case sky::NoShadow::Overhead:
      return "the sun is nearly overhead";
  }
  return {};
}

std::string why_no_pole_star(sky::NoPoleStar why) {
  switch (why) {
    case sky::NoPoleStar::TooFarSouth:
      return "it is too low or under the horizon this far south";
    case sky::NoPoleStar::NotDark:
      return "it is not dark";
  }
  return {};
}

std::string programs(const Station& station) {
  std::string line;
  for (const Program& program : station.programs) {
    if (!line.empty()) line += ", ";
    line += program.virtual_channel;
    const std::string& name = program.name.empty() ? program.network : program.name;
    if (!name.empty()) line += (program.virtual_channel.empty() ? "" : " ") + name;
  }
  return line;
}

std::string title(const Station& station) {
  if (station.programs.empty() || station.programs.front().virtual_channel.empty()) {
    return station.call_sign;
  }
  return station.call_sign + " " + station.programs.front().virtual_channel;
}

std::string carries(const Station& station) {
  std::vector<std::string> names;
  const auto add = [&](const std::string& name) {
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) {
      names.push_back(name);
    }
  };
  add(station.network);
  for (const Program& program : station.programs) add(program.network);
  if (!names.empty()) return fmt::format("{}", fmt::join(names, ", "));
  if (station.state.empty()) return station.city;
  return station.city.empty() ? station.state : station.city + ", " + station.state;
}

}  // namespace mastwise::words
