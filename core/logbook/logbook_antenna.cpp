#include "core/logbook/logbook.hpp"
#include "core/text/iso_time.hpp"

namespace mastwise {
namespace {

constexpr const char* kAntenna = "antenna";
constexpr std::string_view kRaised = "raised";
constexpr std::string_view kDown = "down";

// Anything but an explicit "down" counts as raised: that mistake is harmless.
safety::Antenna parse_antenna(std::string_view text) {
  return text == kDown ? safety::Antenna::Down : safety::Antenna::Raised;
}
std::string_view to_text(safety::Antenna antenna) {
  return antenna == safety::Antenna::Raised ? kRaised : kDown;
}

}  // namespace

Result<safety::Antenna> Logbook::antenna() {
  const auto value = kept(kAntenna);
  if (!value) return value.error();
  return *value ? parse_antenna(**value) : safety::Antenna::Down;
}

Result<Done> Logbook::keep_antenna(const AntennaChange& change) {
  auto transaction = store::Transaction::begin(database_);
  if (!transaction) return transaction.error();
  if (const auto done = keep(kAntenna, std::string(to_text(change.antenna))); !done) return done;
  auto insert = database_.prepare(
      "INSERT INTO antenna_changes (antenna, changed, latitude_deg, longitude_deg, confirmed)"
      " VALUES (?, ?, ?, ?, ?)");
  if (!insert) return insert.error();
  std::optional<double> latitude_deg, longitude_deg;
  if (change.place) {
    latitude_deg = change.place->latitude_deg();
    longitude_deg = change.place->longitude_deg();
  }
  const std::string when = iso_utc(change.when);
  const auto written = insert
                           ->bind(to_text(change.antenna), std::string_view(when), latitude_deg,
                                  longitude_deg, std::string_view(change.confirmed))
                           .run();
  if (!written) return written;
  return transaction->commit();
}

Result<std::vector<AntennaChange>> Logbook::antenna_changes() {
  auto select = database_.prepare(
      "SELECT antenna, changed, latitude_deg, longitude_deg, confirmed FROM antenna_changes"
      " ORDER BY step DESC");
  if (!select) return select.error();
  std::vector<AntennaChange> changes;
  while (true) {
    const auto row = select->step();
    if (!row) return row.error();
    if (!*row) return changes;
    AntennaChange change{.antenna = parse_antenna(select->text_view(0)),
                         .confirmed = select->text(4)};
    if (const auto when = parse_iso_utc(select->text_view(1))) change.when = *when;
    const auto latitude_deg = select->optional_real(2), longitude_deg = select->optional_real(3);
    if (latitude_deg && longitude_deg) {
      if (const auto place = Position::at_deg(*latitude_deg, *longitude_deg)) change.place = *place;
    }
    changes.push_back(std::move(change));
  }
}

}  // namespace mastwise
