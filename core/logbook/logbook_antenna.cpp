#include "core/logbook/logbook.hpp"
#include "core/logbook/logbook_file.hpp"
#include "core/logbook/salvage.hpp"
#include "core/text/iso_time.hpp"

namespace mastwise {
namespace {

constexpr const char* kAntenna = SalvagedLogbook::kAntenna;
constexpr std::string_view kRaised = "raised";
constexpr std::string_view kDown = "down";

// Anything but an explicit "down" counts as raised: that mistake is harmless.
safety::Antenna parse_antenna(std::string_view text) {
  return text == kDown ? safety::Antenna::Down : safety::Antenna::Raised;
}
std::string_view to_text(safety::Antenna antenna) {
  return antenna == safety::Antenna::Raised ? kRaised : kDown;
}

Result<Done> write_change(store::Database& database, const AntennaChange& change) {
  auto insert =
      database.prepare("INSERT INTO antenna_changes (" + std::string(logbook_file::kChangeColumns) +
                       ") VALUES (?, ?, ?, ?, ?)");
  if (!insert) return insert.error();
  std::optional<double> latitude_deg, longitude_deg;
  if (change.place) {
    latitude_deg = change.place->latitude_deg();
    longitude_deg = change.place->longitude_deg();
  }
  const std::string when = iso_utc(change.when);
  return insert
      ->bind(to_text(change.antenna), std::string_view(when), latitude_deg, longitude_deg,
             std::string_view(change.confirmed))
      .run();
}

template <class Record>
Result<Done> write_all(store::Database& database, const std::vector<Record>& records) {
  for (const Record& record : records) {
    if (const auto done = logbook_file::write(database, record); !done) return done;
  }
  return Done{};
}

}  // namespace

AntennaChange logbook_file::read_change(const store::Statement& row) {
  AntennaChange change{.antenna = parse_antenna(row.text_view(0)), .confirmed = row.text(4)};
  if (const auto when = parse_iso_utc(row.text_view(1))) change.when = *when;
  const auto latitude_deg = row.optional_real(2), longitude_deg = row.optional_real(3);
  if (latitude_deg && longitude_deg) {
    if (const auto place = Position::at_deg(*latitude_deg, *longitude_deg)) change.place = *place;
  }
  return change;
}

Result<safety::Antenna> Logbook::antenna() {
  const auto value = kept(kAntenna);
  if (!value) return value.error();
  return *value ? parse_antenna(**value) : safety::Antenna::Down;
}

Result<Done> Logbook::keep_antenna(const AntennaChange& change) {
  auto transaction = store::Transaction::begin(database_);
  if (!transaction) return transaction.error();
  if (const auto done = keep(kAntenna, std::string(to_text(change.antenna))); !done) return done;
  if (const auto done = write_change(database_, change); !done) return done;
  return transaction->commit();
}

Result<std::vector<AntennaChange>> Logbook::antenna_changes() {
  auto select = database_.prepare("SELECT " + std::string(logbook_file::kChangeColumns) +
                                  " FROM antenna_changes ORDER BY step DESC");
  if (!select) return select.error();
  std::vector<AntennaChange> changes;
  while (true) {
    const auto row = select->step();
    if (!row) return row.error();
    if (!*row) return changes;
    changes.push_back(logbook_file::read_change(*select));
  }
}

Result<Done> Logbook::restore(const SalvagedLogbook& salvaged) {
  auto transaction = store::Transaction::begin(database_);
  if (!transaction) return transaction.error();
  const std::string if_lost(to_text(salvaged.antenna_if_lost));
  if (const auto done = keep(kAntenna, if_lost); !done) return done;
  for (const auto& [name, value] : salvaged.kept) {
    if (const auto done = keep(name.c_str(), value); !done) return done;
  }
  for (const AntennaChange& change : salvaged.changes) {
    if (const auto done = write_change(database_, change); !done) return done;
  }
  const LogbookContent& content = salvaged.content;
  for (const auto& done :
       {write_all(database_, content.stops), write_all(database_, content.outcomes),
        write_all(database_, content.sweeps)}) {
    if (!done) return done;
  }
  return transaction->commit();
}

}  // namespace mastwise
