#include "app/model/stations.hpp"

namespace mastwise {

StationKey key_of(const Station& station) {
  return {station.provenance.source.name, station.id};
}

const StationRow* find_row(const StationsAnswer& answer, const StationKey& key) {
  for (const StationRow& row : answer.rows) {
    if (key_of(row.station) == key) return &row;
  }
  return nullptr;
}

}  // namespace mastwise
