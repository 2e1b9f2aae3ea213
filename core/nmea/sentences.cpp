#include "core/nmea/sentences.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::nmea {
namespace {

constexpr double kKnot_mps = 1852.0 / 3600.0;

template <class Quantity>
std::optional<Quantity> bearing(std::optional<double> degrees) {
  if (!degrees || *degrees < 0.0 || *degrees > 360.0) return std::nullopt;
  return Quantity::degrees(*degrees);
}

std::optional<double> between(std::optional<double> value, double low, double high) {
  return value && *value >= low && *value <= high ? value : std::nullopt;
}

std::optional<double> speed_mps(std::optional<double> speed, double unit_mps) {
  if (!between(speed, 0.0, 10000.0)) return std::nullopt;
  return *speed * unit_mps;
}

std::optional<Declination> declination(std::optional<double> east_deg) {
  if (!east_deg) return std::nullopt;
  return Declination::east_deg(*east_deg);
}

// Receivers without a fix send a dilution of 0.0 or 99.99 for "none".
std::optional<double> dilution(std::optional<double> value) {
  return between(value, 0.1, 99.0);
}

// The mode indicator (NMEA 0183 2.3 and later).
FixQuality quality_of_mode(char mode) {
  switch (mode) {
    case 'A':
      return FixQuality::autonomous;
    case 'D':
      return FixQuality::differential;
    case 'P':
      return FixQuality::precise;
    case 'R':
      return FixQuality::rtk_fixed;
    case 'F':
      return FixQuality::rtk_float;
    case 'E':
      return FixQuality::estimated;
    case 'M':
      return FixQuality::manual;
    case 'S':
      return FixQuality::simulator;
    case 'N':
      return FixQuality::none;
    default:
      return FixQuality::unspecified;
  }
}

// Status A or V, with the mode indicator if present. With status V only modes that explain it are
// believed; without a status nothing is known.
std::optional<FixQuality> quality_of_status(char status, char mode) {
  const FixQuality quality = quality_of_mode(mode);
  if (status == 'A') return quality;
  if (status != 'V') return std::nullopt;
  return is_satellite_fix(quality) ? FixQuality::none : quality;
}

// GGA's indicator has a different numbering. Values above 8 are not in the standard.
std::optional<FixQuality> quality_of_indicator(std::optional<int> indicator) {
  constexpr FixQuality kQualities[] = {
      FixQuality::none,      FixQuality::autonomous, FixQuality::differential,
      FixQuality::precise,   FixQuality::rtk_fixed,  FixQuality::rtk_float,
      FixQuality::estimated, FixQuality::manual,     FixQuality::simulator};
  if (!indicator || *indicator > 8) return std::nullopt;
  return kQualities[*indicator];
}

// GNS has one mode letter for each constellation: the best of them counts.
std::optional<FixQuality> quality_of_modes(std::string_view modes) {
  std::optional<FixQuality> best;
  for (const char mode : modes) best = std::max(best, std::optional(quality_of_mode(mode)));
  return best;
}

// The navigational status of 4.1 (field 13) is ignored: receivers that do not provide it send V
// with a good fix.
void read_rmc(const Fields& fields, Report& report) {
  report.time = fields.time_of_day(1);
  report.quality = quality_of_status(fields.letter(2), fields.letter(12));
  report.position = fields.position(3);
  report.speed_mps = speed_mps(fields.number(7), kKnot_mps);
  report.course = bearing<Bearing<True>>(fields.number(8));
  report.date = fields.date(9);
  report.declination = declination(fields.east_deg(10));
}

void read_gga(const Fields& fields, Report& report) {
  report.time = fields.time_of_day(1);
  report.position = fields.position(2);
  report.quality = quality_of_indicator(fields.whole(6));
  report.satellites = fields.whole(7);
  report.hdop = dilution(fields.number(8));
  report.altitude_m = fields.number(9);
}

// Before 2.0 there was neither time nor status: such a position may be a void one.
void read_gll(const Fields& fields, Report& report) {
  report.position = fields.position(1);
  report.time = fields.time_of_day(5);
  report.quality = quality_of_status(fields.letter(6), fields.letter(7));
}

void read_gns(const Fields& fields, Report& report) {
  report.time = fields.time_of_day(1);
  report.position = fields.position(2);
  report.quality = quality_of_modes(fields.text(6));
  report.satellites = fields.whole(7);
  report.hdop = dilution(fields.number(8));
  report.altitude_m = fields.number(9);
}

void read_vtg(const Fields& fields, Report& report) {
  if (!is_satellite_fix(quality_of_mode(fields.letter(9)))) return;
  const bool has_unit_letters = fields.letter(2) == 'T';  // not before 2.0
  report.course = bearing<Bearing<True>>(fields.number(1));
  report.speed_mps = speed_mps(fields.number(has_unit_letters ? 5 : 3), kKnot_mps);
}

void read_zda(const Fields& fields, Report& report) {
  report.time = fields.time_of_day(1);
  const auto day = fields.whole(2);
  const auto month = fields.whole(3);
  const auto year = fields.whole(4);
  if (!day || !month || !year) return;
  const Date date{std::chrono::year(*year), std::chrono::month(static_cast<unsigned>(*month)),
                  std::chrono::day(static_cast<unsigned>(*day))};
  if (date.ok()) report.date = date;
}

void read_gsa(const Fields& fields, Report& report) {
  const auto dimensions = fields.whole(2);
  if (dimensions == 2 || dimensions == 3) report.dimensions = dimensions;
  report.hdop = dilution(fields.number(16));
}

void read_gst(const Fields& fields, Report& report) {
  const auto north_m = between(fields.number(6), 0.0, 1e6);
  const auto east_m = between(fields.number(7), 0.0, 1e6);
  if (north_m && east_m) report.error_m = std::hypot(*north_m, *east_m);
}

void read_hdt(const Fields& fields, Report& report) {
  report.true_heading = bearing<Bearing<True>>(fields.number(1));
}

// Only mode A is a measured heading; E is estimated, M and S are manual and simulated.
void read_ths(const Fields& fields, Report& report) {
  if (fields.letter(2) == 'A') report.true_heading = bearing<Bearing<True>>(fields.number(1));
}

void read_hdm(const Fields& fields, Report& report) {
  report.magnetic_heading = bearing<Bearing<Magnetic>>(fields.number(1));
}

// Sensor heading plus deviation (east positive) is the magnetic heading.
void read_hdg(const Fields& fields, Report& report) {
  report.magnetic_heading = bearing<Bearing<Magnetic>>(fields.number(1));
  if (const auto deviation = fields.east_deg(2); deviation && report.magnetic_heading) {
    report.magnetic_heading = *report.magnetic_heading + Turn::clockwise_deg(*deviation);
  }
  report.declination = declination(fields.east_deg(4));
}

struct Reader {
  std::string_view name;
  void (*read)(const Fields&, Report&);
};

// To read another sentence, write its function above and its line here.
constexpr Reader kReaders[] = {
    {"RMC", read_rmc}, {"GGA", read_gga}, {"GLL", read_gll}, {"GNS", read_gns},
    {"VTG", read_vtg}, {"ZDA", read_zda}, {"GSA", read_gsa}, {"GST", read_gst},
    {"HDT", read_hdt}, {"HDG", read_hdg}, {"HDM", read_hdm}, {"THS", read_ths},
};

}  // namespace

std::optional<Report> read_sentence(std::string_view sentence) {
  const std::string_view address = sentence.substr(0, sentence.find(','));
  const bool has_talker = address.size() == 6 && address[0] == '$' && address[1] != 'P';
  if (!has_talker) return std::nullopt;
  const auto* reader =
      std::find_if(std::begin(kReaders), std::end(kReaders),
                   [&](const Reader& candidate) { return candidate.name == address.substr(3); });
  if (reader == std::end(kReaders)) return std::nullopt;
  Report report;
  report.talker = address.substr(1, 2);
  reader->read(Fields(sentence), report);
  return report;
}

}  // namespace mastwise::nmea
