#include "core/import/suspicion.hpp"

#include "core/import/guess_columns.hpp"
#include "core/import/guess_mapping.hpp"
#include "core/import/import_table.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace mastwise {
namespace {

using SuspicionKind = Suspicion::Kind;
constexpr std::size_t kSample = 100;
constexpr std::size_t kFewest = 3;
// Free choices, no source: most towns of a country have one of 1,000 people within this distance of
// a transmitter, and most of a table's call signs show its country.
constexpr double kRight = 0.5, kExplained = 0.7, kMostCallSigns = 0.9;

bool turns_latitude(CoordinateReading reading) {
  return reading == CoordinateReading::latitude_turned || reading == CoordinateReading::both_turned;
}

bool turns_longitude(CoordinateReading reading) {
  return reading == CoordinateReading::longitude_turned ||
         reading == CoordinateReading::both_turned ||
         reading == CoordinateReading::swapped_longitude_turned;
}

void turn(AngleRule& rule) {
  if (rule.letter_in_cell || !rule.letter_column.empty()) return;
  rule.positive_is_south_or_west = !rule.positive_is_south_or_west;
}

// How the stations of a table lie by one reading.
struct Lying {
  std::size_t readable = 0;  // stations of the whole head
  double on_land = 0.0;      // share of the sample
  double in_country = 0.0;   // share of the sample: on land, and where its call sign is at home
};

class Looker {
 public:
  Looker(std::string_view head, const TableMapping& mapping, const CountriesNear& countries_near)
      : head_(guess::whole_lines(head)), mapping_(mapping), countries_near_(countries_near) {}

  Lying look(CoordinateReading reading) const {
    const auto table = read_station_table(head_, reread(mapping_, reading));
    Lying lying;
    if (!table || table->stations.empty()) return lying;
    lying.readable = table->stations.size();
    const auto sample = spread_over(table->stations, kSample);
    const auto at_home = [](const Station& one) {
      return !country_of_call_sign(one.call_sign).empty();
    };
    const auto counted = std::count_if(sample.begin(), sample.end(), at_home);
    const auto all = static_cast<double>(sample.size());
    const bool by_country = static_cast<double>(counted) >= kMostCallSigns * all;
    for (const Station& station : sample) {
      const auto countries = countries_near_(station.position);
      if (countries.empty()) continue;
      lying.on_land += 1.0 / all;
      const std::string_view home = country_of_call_sign(station.call_sign);
      const bool fits = !by_country || home.empty() ||
                        std::find(countries.begin(), countries.end(), home) != countries.end();
      if (fits) lying.in_country += 1.0 / all;
    }
    return lying;
  }

 private:
  std::string_view head_;
  const TableMapping& mapping_;
  const CountriesNear& countries_near_;
};

bool letters(std::string_view text) {
  return std::all_of(text.begin(), text.end(), words::is_letter);
}

bool digits(std::string_view text) {
  return std::all_of(text.begin(), text.end(), words::is_digit);
}

}  // namespace

TableMapping reread(const TableMapping& mapping, CoordinateReading reading) {
  TableMapping other = mapping;
  if (reading == CoordinateReading::swapped ||
      reading == CoordinateReading::swapped_longitude_turned) {
    // The way of writing goes with the columns, the sign stays with the axis.
    std::swap(other.latitude, other.longitude);
    std::swap(other.latitude.positive_is_south_or_west, other.longitude.positive_is_south_or_west);
  }
  if (turns_latitude(reading)) turn(other.latitude);
  if (turns_longitude(reading)) turn(other.longitude);
  return other;
}

std::string_view country_of_call_sign(std::string_view call_sign) {
  if (call_sign.size() < 4) return {};
  const char first = words::upper(call_sign[0]), second = words::upper(call_sign[1]);
  const bool four_letters = letters(call_sign.substr(0, 4));
  const bool translator =
      call_sign.size() >= 5 && digits(call_sign.substr(1, 2)) && letters(call_sign.substr(3, 2));
  if ((first == 'K' || first == 'W') && (four_letters || translator)) return "US";
  if (!four_letters) return {};
  if (first == 'C' && second >= 'F' && second <= 'K') return "CA";
  if (first == 'X' && second >= 'A' && second <= 'I') return "MX";
  return {};
}

std::optional<Suspicion> suspicion_of(std::string_view head, const TableMapping& mapping,
                                      const CountriesNear& countries_near) {
  const Looker looker(head, mapping, countries_near);
  const Lying as_read = looker.look(CoordinateReading::as_mapped);
  // Of a table whose rows can all be read, and lie well, nothing else is tried.
  const auto rows = [&] {
    const auto table = read_station_table(guess::whole_lines(head), mapping);
    return table ? table->rows_read : 0;
  }();
  const auto part = [&](const Lying& lying) {
    return rows == 0 ? 0.0 : static_cast<double>(lying.readable) / static_cast<double>(rows);
  };
  if (rows < kFewest || (part(as_read) >= kRight && as_read.in_country >= kRight)) {
    return std::nullopt;
  }
  Suspicion suspicion{.kind = part(as_read) < kRight     ? SuspicionKind::unreadable
                              : as_read.on_land < kRight ? SuspicionKind::no_land
                                                         : SuspicionKind::other_country,
                      .share = as_read.in_country * part(as_read)};
  for (const CoordinateReading reading :
       {CoordinateReading::longitude_turned, CoordinateReading::swapped,
        CoordinateReading::swapped_longitude_turned, CoordinateReading::latitude_turned,
        CoordinateReading::both_turned}) {
    if (reread(mapping, reading) == mapping) continue;
    const Lying lying = looker.look(reading);
    const double share = lying.in_country * part(lying);
    if (lying.readable < kFewest || share < kExplained || share <= suspicion.share_other) continue;
    suspicion.other = reading;
    suspicion.share_other = share;
  }
  // Rows that no reading of their coordinates explains have other faults, told row by row.
  if (suspicion.kind == SuspicionKind::unreadable && !suspicion.other) return std::nullopt;
  return suspicion;
}

}  // namespace mastwise
