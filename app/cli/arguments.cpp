#include "app/cli/arguments.hpp"

#include "app/shared/shared.hpp"
#include "app/words/chances.hpp"
#include "app/words/headings.hpp"
#include "app/words/needle.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"
#include "core/catalog/catalog.hpp"
#include "core/gear/pattern.hpp"
#include "core/geo/notation.hpp"
#include "core/text/iso_time.hpp"
#include "core/text/words.hpp"
#include "platform/clock.hpp"
#include "platform/files.hpp"

#include <charconv>
#include <cmath>
#include <iostream>

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace mastwise::cli {

void wrong_usage(const Error& error) {
  throw CLI::ValidationError(error.message());
}

Result<Position> position_argument(const std::string& option, const std::string& text) {
  auto position = parse_position(text);
  if (position) return position;
  Error error = position.error();
  error.where = option + " \"" + text + "\"";
  if (error.character) error.where += fmt::format(", character {}", *error.character + 1);
  return error;
}

Result<UtcTime> date_argument(const std::string& option, const std::string& text,
                              const TimeZone& zone) {
  if (text.empty()) return platform::utc_now();
  if (const auto day = parse_iso_day(text)) {
    return noon_of(std::chrono::local_days(day->time_since_epoch()), zone);
  }
  constexpr std::size_t kWithoutSeconds = std::string_view("2026-07-02T18:00").size();
  const auto time = parse_iso_utc(text.size() == kWithoutSeconds ? text + ":00" : text);
  if (time) return *time;
  return Error{.what = "not a date",
               .where = option + " \"" + text + "\"",
               .remedy = "write it as 2026-07-02 or 2026-07-02T18:00:00Z"};
}

Result<Size> size_argument(const std::string& text) {
  constexpr int kLeast = 240, kMost = 8192;
  Size size{};
  const char* end = text.data() + text.size();
  const auto width = std::from_chars(text.data(), end, size.width_px);
  if (width.ec == std::errc{} && width.ptr != end && *width.ptr == 'x') {
    const auto height = std::from_chars(width.ptr + 1, end, size.height_px);
    const bool fits = size.width_px >= kLeast && size.width_px <= kMost &&
                      size.height_px >= kLeast && size.height_px <= kMost;
    if (height.ec == std::errc{} && height.ptr == end && fits) return size;
  }
  return Error{
      .what = fmt::format("a size is WIDTHxHEIGHT in pixels, each {} to {}", kLeast, kMost),
      .where = "--size \"" + text + "\"",
      .remedy = "write it as 1280x800"};
}

Result<std::optional<RigHeading>> nose_argument(std::optional<double> degrees) {
  if (!degrees) return std::optional<RigHeading>();
  if (!(*degrees >= 0.0 && *degrees <= 360.0)) {
    return Error{.what = fmt::format("{} is not a heading", *degrees),
                 .where = "--nose",
                 .remedy = "give the true heading of the nose, 0 to 360 degrees"};
  }
  return std::optional(RigHeading::nose_at(Bearing<True>::degrees(*degrees)));
}

Result<Station> practice_station(const std::vector<Station>& stations,
                                 const std::string& call_sign) {
  for (const Station& station : stations) {
    if (words::same_word(station.call_sign, call_sign)) return station;
  }
  return Error{.what = "the practice area has no station " + call_sign,
               .remedy = "add --at POSITION to use the catalog"};
}

Result<std::string> catalog_path(const std::string& given) {
  if (!given.empty()) return given;
  const auto folder = platform::data_folder();
  if (!folder) return folder.error();
  return *folder + "/catalog";
}

Result<Destination> destination_argument(const std::string& to, const std::string& call_sign,
                                         const std::string& given_catalog) {
  if (call_sign.empty()) {
    const auto position = position_argument("--to", to);
    if (!position) return position.error();
    return Destination{*position};
  }
  const auto path = mastwise::cli::catalog_path(given_catalog);
  if (!path) return path.error();
  auto catalog = Catalog::open(*path);
  if (!catalog) return catalog.error();
  const auto found = catalog->with_call_sign(call_sign);
  if (!found) return found.error();
  if (found->empty()) {
    return Error{.what = "the catalog has no station " + call_sign,
                 .where = *path,
                 .remedy = "check the call sign, or import a station table first"};
  }
  return Destination{found->front().position, found->front()};
}

void print(const nlohmann::json& json) {
  std::cout << json.dump(2, ' ', false, nlohmann::json::error_handler_t::replace) << '\n';
}

Result<std::string> pattern_argument(const std::string& path) {
  if (path.empty()) return std::string();
  auto text = platform::read_file(path);
  if (!text) return text;
  const auto pattern = gear::Pattern::from_table(*text);
  if (pattern) return text;
  Error error = pattern.error();
  error.where = error.where.empty() ? path : path + ", " + error.where;
  return error;
}

namespace {

Result<HeadingBudget> compass_budget(const AimCard& card, std::optional<Standing> standing) {
  return heading_budget(PointingMethod::baseplate_compass, compass_context(card, standing));
}

// The compass number with its whole error, or why there is none.
template <class Line>
void compass_lines(Line line, const AimCard& card, std::optional<Standing> standing) {
  const std::string number = words::tenths_of_degree(card.bearing_magnetic.degrees()) + " magnetic";
  if (!standing) {
    line("On your compass", number + "; say --standing for its error");
    return;
  }
  const auto budget = compass_budget(card, standing);
  if (!budget) {
    const Error& why = budget.error();
    line("On your compass",
         fmt::format("not {}: {}; {}", to_text(*standing), why.what, why.remedy));
    return;
  }
  line("On your compass", fmt::format("{}, ± {:.1f}° with a handheld compass {}", number,
                                      budget->total_deg, to_text(*standing)));
  std::string made_of;
  for (const ErrorLine& one : budget->lines) {
    made_of +=
        fmt::format("{}{} {:.1f}°", made_of.empty() ? "" : ", ", to_text(one.kind), one.sigma_deg);
  }
  line("Its error", made_of);
}

}  // namespace

HeadingContext compass_context(const AimCard& aim, std::optional<Standing> standing) {
  HeadingContext context{.distance_m = aim.distance_m,
                         .stop_error_m = kTypedPosition_m,
                         .transmitter_error_m = kTransmitter_m,
                         .declination_sigma_deg = aim.field.declination_sigma_deg,
                         .standing = standing};
  if (standing) {
    context.deviation_sigma_deg = deviation_sigma_deg(*standing, aim.field.horizontal_nt);
  }
  return context;
}

nlohmann::json card_json(const AimCard& card, std::optional<Standing> standing) {
  nlohmann::json json{
      {"distance_m", card.distance_m},
      {"bearing_true_deg", card.bearing_true.degrees()},
      {"bearing_magnetic_deg", card.bearing_magnetic.degrees()},
      {"declination_deg", card.field.declination.east_deg()},
      {"declination_sigma_deg", card.field.declination_sigma_deg},
      {"inclination_deg", card.field.inclination_deg},
      {"bearing_grid_deg", card.bearing_grid.degrees()},
      {"convergence_deg", card.grid.convergence.east_deg()},
      {"utm_zone", card.grid.name},
  };
  const auto budget = compass_budget(card, standing);
  if (budget) {
    json["compass_sigma_deg"] = budget->total_deg;
    for (const ErrorLine& line : budget->lines) {
      json["compass_errors_deg"][std::string(to_text(line.kind))] = line.sigma_deg;
    }
  } else {
    json["compass_refused"] = budget.error().message();
  }
  if (card.rig_angle) json["rig_angle_deg"] = card.rig_angle->clockwise_deg();
  if (card.field.beyond_model_end) json["warning"] = "the date is beyond the magnetic model";
  return json;
}

std::string card_text(const AimCard& card, std::optional<Standing> standing, Position from,
                      const Destination& to, std::chrono::local_days day) {
  std::string text;
  const auto line = [&](std::string_view label, const std::string& value) {
    text += fmt::format("  {:<18}{}\n", label, value);
  };
  if (to.station) {
    text += fmt::format("{}  {}  RF {}\n", words::title(*to.station), words::carries(*to.station),
                        to_text(to.station->rf_channel));
  }
  line("From", format_position(from, Notation::Decimal));
  line("To", format_position(to.position, Notation::Decimal));
  line("Away", fmt::format("{}, {}", words::distance(card.distance_m, true),
                           words::distance(card.distance_m, false)));
  compass_lines(line, card, standing);
  line("On the map", words::tenths_of_degree(card.bearing_true.degrees()) + " true");
  line("On the grid",
       fmt::format("{} in zone {}", words::tenths_of_degree(card.bearing_grid.degrees()),
                   card.grid.name));
  if (card.rig_angle) {
    line("From the nose", fmt::format("{}: {}", words::from_nose(*card.rig_angle),
                                      words::rig_sides(*card.rig_angle)));
  }
  line("The needle", fmt::format("{} of true north on {}",
                                 words::declination(card.field.declination), words::date(day)));
  line("The field", words::dip(card.field.inclination_deg));
  if (card.field.zone != MagneticField::Zone::Normal) {
    line("Caution", "so near the magnetic pole a compass cannot be trusted");
  }
  if (card.field.beyond_model_end) {
    line("Caution", "the date is beyond the magnetic model: the compass number is unsure");
  }
  return text;
}

}  // namespace mastwise::cli
