#include "core/import/guess_mapping.hpp"

#include "core/import/guess_columns.hpp"
#include "core/import/import_table.hpp"
#include "core/import/station_fields.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <array>
#include <set>

#include <fmt/format.h>

namespace mastwise {
namespace {

using guess::Column;
using Kind = Doubt::Kind;
constexpr double kMost = 0.9;
constexpr double kHalf = 0.5;  // of a column whose name fits: some rows may be bad

// Whether a call sign is of the series of North America [ITU Radio Regulations, appendix 42].
bool north_american(std::string_view cell) {
  const char first = words::upper(cell.front());
  const char second = cell.size() > 1 ? words::upper(cell[1]) : ' ';
  return first == 'K' || first == 'N' || first == 'W' ||
         (first == 'C' && second >= 'F' && second <= 'K') ||
         (first == 'V' && second >= 'A' && second <= 'G') ||
         (first == 'X' && second >= 'A' && second <= 'I');
}

class Guesser {
 public:
  Guesser(std::string_view head, const Source& source) {
    guess_.mapping.source = source;
    guess_.mapping.comment = '#';
    columns_ = guess::columns_of(head, guess_.mapping.separator);
  }
  GuessedMapping guess();
  // Why a guess lacks a column that no table can be read without.
  Error missing(const GuessedMapping& guess) const;

 private:
  void find_angles();
  std::optional<double> number(std::string_view cell) const {
    return guess::number(cell, decimal_comma_);
  }

  bool find_field(const std::string& field, bool (*fits)(std::string_view));
  void find_numbers();
  void find_words();
  void find_raster(const Column& call_signs);
  void doubt_signs(const guess::Angle& latitude, const guess::Angle& longitude);
  void doubt_units();
  void doubt_zeros();
  const Column* column_of(const std::string& field) const;
  std::vector<Column> columns_;
  GuessedMapping guess_;
  std::optional<guess::Angle> latitude_ = {}, longitude_ = {};
  bool north_america_ = false;
  bool decimal_comma_ = false;
};

Error Guesser::missing(const GuessedMapping& guess) const {
  if (columns_.empty()) {
    return Error{.what = "the table is empty",
                 .remedy = "choose a file with a header line and rows"};
  }
  std::vector<std::string> names;
  for (const Column& column : columns_) names.push_back(column.name);
  return Error{
      .what = fmt::format("no column looks like the {}", fmt::join(guess.missing, ", ")),
      .where = "the header line",
      .remedy = fmt::format("provide a mapping; the columns are: {}", fmt::join(names, ", "))};
}

const Column* Guesser::column_of(const std::string& field) const {
  const auto rule = guess_.mapping.fields.find(field);
  if (rule == guess_.mapping.fields.end()) return nullptr;
  for (const Column& column : columns_) {
    if (column.name == rule->second.column) return &column;
  }
  return nullptr;
}

// By the header's words, if the cells fit. If only one column's cells look like call signs, it is
// the call sign. Channels need the header: too many other columns contain small numbers.
bool Guesser::find_field(const std::string& field, bool (*fits)(std::string_view)) {
  auto candidates = guess::named(columns_, field);
  candidates.erase(std::remove_if(candidates.begin(), candidates.end(),
                                  [&](const Column* c) { return guess::share(*c, fits) < kHalf; }),
                   candidates.end());
  if (candidates.empty() && field == "call_sign") {
    for (const Column& column : columns_) {
      if (guess::share(column, fits) >= kMost) candidates.push_back(&column);
    }
    if (candidates.size() != 1) return false;
  }
  if (candidates.empty()) return false;
  guess_.mapping.fields[field].column = candidates.front()->name;
  if (candidates.size() == 1) return true;
  Doubt doubt{.kind = Kind::column, .field = field, .why = "more than one column could be it"};
  for (const Column* column : candidates) doubt.options.push_back(column->name);
  guess_.doubts.push_back(std::move(doubt));
  return true;
}

void Guesser::find_numbers() {
  for (const char* field : {"erp_kw", "antenna_amsl_m", "haat_m", "site_amsl_m"}) {
    for (const Column* column : guess::named(columns_, field)) {
      const auto is_number = [&](std::string_view cell) { return number(cell).has_value(); };
      if (guess::share(*column, is_number) < kHalf) continue;
      guess_.mapping.fields[field].column = column->name;
      break;
    }
  }
}

// Texts, and trade words with an obvious meaning.
void Guesser::find_words() {
  for (const char* field : {"facility_id", "site", "name", "network", "multiplex", "city", "state",
                            "virtual_channel"}) {
    const auto found = guess::named(columns_, field);
    const bool taken = !found.empty() && column_of("call_sign") == found.front();
    if (!found.empty() && !taken) guess_.mapping.fields[field].column = found.front()->name;
  }
  for (const char* field : {"directional", "polarization"}) {
    const auto found = guess::named(columns_, field);
    if (found.empty()) continue;
    const auto meanings = guess::usual_values(field);
    const auto known = [&](const std::string& cell) { return meanings.count(cell) > 0; };
    if (found.front()->cells.empty() || guess::share(*found.front(), known) < 1.0) continue;
    FieldRule rule{.column = found.front()->name};
    for (const std::string& cell : found.front()->cells) rule.values[cell] = meanings.at(cell);
    guess_.mapping.fields[field] = rule;
  }
}

void Guesser::find_raster(const Column& call_signs) {
  north_america_ = guess::share(call_signs, north_american) >= kMost;
  const Column* channels = column_of("rf_channel");
  std::vector<Raster> fitting;
  for (const Raster raster :
       {Raster::atsc, Raster::europe, Raster::australia, Raster::japan, Raster::brazil}) {
    const auto has = [&](const std::string& cell) {
      const auto channel = parse_rf_channel(cell);
      return channel && channel_slot(raster, *channel).has_value();
    };
    if (guess::share(*channels, has) >= kMost) fitting.push_back(raster);
  }
  guess_.mapping.raster = fitting.empty() ? Raster::atsc : fitting.front();
  if (north_america_ || fitting.size() == 1) return;
  Doubt doubt{.kind = Kind::raster,
              .field = "raster",
              .why = "the channel numbers fit more than one channel plan, or none"};
  if (fitting.empty()) fitting.push_back(Raster::atsc);
  for (const Raster raster : fitting) doubt.options.emplace_back(to_text(raster));
  guess_.doubts.push_back(std::move(doubt));
}

void Guesser::doubt_signs(const guess::Angle& latitude, const guess::Angle& longitude) {
  if (longitude.unsigned_all) {
    guess_.mapping.longitude.positive_is_south_or_west = north_america_;
    guess_.doubts.push_back({Kind::longitude_sign,
                             "longitude",
                             {"east", "west"},
                             north_america_ ? 1U : 0U,
                             north_america_
                                 ? "all are positive, and the call signs are North America's"
                                 : "all are positive and carry no letter"});
  }
  if (longitude.unsigned_all && latitude.unsigned_all) {
    guess_.doubts.push_back({Kind::latitude_sign,
                             "latitude",
                             {"north", "south"},
                             0,
                             "all are positive and carry no letter"});
  }
  guess_.mapping.datum = north_america_ ? Datum::nad83 : Datum::wgs84;
  guess_.doubts.push_back({Kind::datum,
                           "datum",
                           {"WGS84", "NAD83", "NAD27"},
                           north_america_ ? 1U : 0U,
                           "tables rarely name their datum; NAD27 can be "
                           "some 100 m off"});
}

void Guesser::doubt_units() {
  if (const Column* power = column_of("erp_kw")) {
    const auto ends = [&](std::string_view unit) {
      const std::string_view key = power->key;
      return key.size() > unit.size() && key.substr(key.size() - unit.size()) == unit;
    };
    const bool told = ends("KW") || ends("W");
    // No television station has more than 5 MW anywhere [common practice, no source].
    constexpr double kMostKilowatts = 5000.0;
    const bool large = guess::share(*power, [&](std::string_view cell) {
                         return number(cell).value_or(0.0) > kMostKilowatts;
                       }) > 0.02;
    const bool watts = told ? !ends("KW") : large;
    FieldRule& rule = guess_.mapping.fields["erp_kw"];
    const bool decibels = ends("DBW"), megawatts = ends("MW");
    rule.factor = decibels ? 1.0 : megawatts ? 1000.0 : watts ? 0.001 : 1.0;
    if (decibels) rule.scale = Scale::dbw;
    if (told) {
      const char* const unit = decibels ? "dBW" : megawatts ? "MW" : watts ? "W" : "kW";
      guess_.remarks.push_back(fmt::format("powers are in {}, by the header", unit));
    }
    if (!told) {
      guess_.doubts.push_back({Kind::power_unit,
                               "erp_kw",
                               {"kW", "W", "MW"},
                               watts ? 1U : 0U,
                               "the header does not name the unit; chosen by the largest value"});
    }
  }
  bool feet = false;
  bool told = true;
  for (const char* field : fields::kHeightFields) {
    const Column* column = column_of(field);
    if (column == nullptr) continue;
    const bool says_feet = column->key.find("FT") != std::string::npos ||
                           column->key.find("FEET") != std::string::npos;
    feet = feet || says_feet;
    // A unit behind the name that is not feet is meters.
    told = told && (says_feet || column->key != column->bare);
    if (says_feet) guess_.mapping.fields[field].factor = 0.3048;
  }
  const bool any = std::any_of(fields::kHeightFields.begin(), fields::kHeightFields.end(),
                               [&](const char* field) { return column_of(field) != nullptr; });
  if (feet) guess_.remarks.push_back("heights are in feet, by the header");
  if (any && !told) {
    guess_.doubts.push_back({Kind::height_unit,
                             "heights",
                             {"m", "ft"},
                             feet ? 1U : 0U,
                             "the header does not name the unit"});
  }
}

// A power of 0 is impossible; a height of exactly 0 is more often an unknown one.
void Guesser::doubt_zeros() {
  for (const char* field : {"erp_kw", "antenna_amsl_m", "haat_m", "site_amsl_m"}) {
    const Column* column = column_of(field);
    if (column == nullptr) continue;
    std::set<std::string> zeros;
    for (const std::string& cell : column->cells) {
      if (number(cell) == 0.0) zeros.insert(cell);
    }
    if (zeros.empty()) continue;
    guess_.mapping.fields[field].unknown.assign(zeros.begin(), zeros.end());
    if (std::string_view(field) == "erp_kw") continue;
    guess_.doubts.push_back({Kind::zero_is_unknown,
                             field,
                             {"not known", "as it is"},
                             0,
                             "a value of exactly 0 more often means unknown"});
  }
}

void Guesser::find_angles() {
  decimal_comma_ = guess_.mapping.separator != ',';
  latitude_ = guess::find_latitude(columns_, decimal_comma_);
  longitude_ = guess::find_longitude(columns_, decimal_comma_);
  if (!decimal_comma_ && !latitude_ && !longitude_) {
    latitude_ = guess::find_latitude(columns_, true);
    longitude_ = guess::find_longitude(columns_, true);
    decimal_comma_ = latitude_ && longitude_;
    guess_.mapping.decimal_comma = decimal_comma_;
  }
  const auto has_comma = [](const std::string& cell) {
    return cell.find(',') != std::string::npos;
  };
  const bool commas = std::any_of(columns_.begin(), columns_.end(), [&](const Column& column) {
    const bool angle = (latitude_ && column.name == latitude_->rule.column) ||
                       (longitude_ && column.name == longitude_->rule.column);
    return angle && guess::share(column, has_comma) >= kHalf;
  });
  if (decimal_comma_ && commas) guess_.remarks.push_back("numbers have decimal commas");
  if (!latitude_) {
    guess_.missing.push_back("latitude");
    guess_.mapping.latitude.column = guess::latitude_column(columns_);
  } else {
    guess_.mapping.latitude = latitude_->rule;
  }
  if (!longitude_) {
    guess_.missing.push_back("longitude");
    guess_.mapping.longitude.column = guess::longitude_column(columns_);
  } else {
    guess_.mapping.longitude = longitude_->rule;
  }
}

GuessedMapping Guesser::guess() {
  guess_.mapping.raster = Raster::atsc;
  find_angles();
  const bool called = find_field("call_sign", guess::looks_like_call_sign);
  const bool placed = find_field("rf_channel", guess::looks_like_channel);
  if (!called) guess_.missing.push_back("call sign");
  if (!placed) guess_.missing.push_back("RF channel");
  const std::vector<Doubt> of_columns = std::move(guess_.doubts);
  guess_.doubts.clear();
  if (called && placed) find_raster(*column_of("call_sign"));
  const std::vector<Doubt> of_raster = std::move(guess_.doubts);
  guess_.doubts.clear();
  if (latitude_ && longitude_) doubt_signs(*latitude_, *longitude_);
  for (const auto& more : {of_raster, of_columns}) {
    guess_.doubts.insert(guess_.doubts.end(), more.begin(), more.end());
  }
  find_numbers();
  find_words();
  doubt_units();
  doubt_zeros();
  return guess_;
}

void choose_power(TableMapping& mapping, const std::string& unit) {
  const auto factor = fields::unit_factor("erp_kw", unit);
  if (factor) mapping.fields["erp_kw"].factor = *factor;
}

void choose_heights(TableMapping& mapping, const std::string& unit) {
  for (const char* field : fields::kHeightFields) {
    const auto rule = mapping.fields.find(field);
    const auto factor = fields::unit_factor(field, unit);
    if (rule != mapping.fields.end() && factor) rule->second.factor = *factor;
  }
}

}  // namespace

Result<GuessedMapping> guess_mapping(std::string_view head, const Source& source) {
  Guesser guesser(head, source);
  auto guess = guesser.guess();
  if (!guess.missing.empty()) return guesser.missing(guess);
  return guess;
}

GuessedMapping recognized_columns(std::string_view head, const Source& source) {
  return Guesser(head, source).guess();
}

void choose(GuessedMapping& guess, std::size_t doubt, std::size_t option) {
  if (doubt >= guess.doubts.size() || option >= guess.doubts[doubt].options.size()) return;
  Doubt& changed = guess.doubts[doubt];
  changed.chosen = option;
  const std::string& word = changed.options[option];
  TableMapping& mapping = guess.mapping;
  switch (changed.kind) {
    case Kind::column:
      mapping.fields[changed.field].column = word;
      break;
    case Kind::latitude_sign:
      mapping.latitude.positive_is_south_or_west = word == "south";
      break;
    case Kind::longitude_sign:
      mapping.longitude.positive_is_south_or_west = word == "west";
      break;
    case Kind::datum:
      if (const auto datum = parse_datum(word)) mapping.datum = *datum;
      break;
    case Kind::power_unit:
      choose_power(mapping, word);
      break;
    case Kind::height_unit:
      choose_heights(mapping, word);
      break;
    case Kind::raster:
      if (const auto raster = parse_raster(word)) mapping.raster = *raster;
      break;
    case Kind::zero_is_unknown:
      mapping.fields[changed.field].unknown =
          option == 0 ? zero_cells() : std::vector<std::string>{};
      break;
  }
}

std::vector<Station> sample_stations(std::string_view head, const TableMapping& mapping,
                                     std::size_t count) {
  const auto table = read_station_table(guess::whole_lines(head), mapping);
  return table ? spread_over(table->stations, count) : std::vector<Station>();
}

std::vector<Station> spread_over(const std::vector<Station>& stations, std::size_t count) {
  std::vector<Station> sample;
  const std::size_t taken = std::min(count, stations.size());
  for (std::size_t i = 0; i < taken; ++i) sample.push_back(stations[i * stations.size() / taken]);
  return sample;
}

std::vector<std::string> zero_cells() {
  return {"0", "0.0", "0.00"};
}

}  // namespace mastwise
