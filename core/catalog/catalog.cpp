#include "core/catalog/catalog.hpp"

#include "core/catalog/catalog_connection.hpp"
#include "core/text/words.hpp"

namespace mastwise {
Catalog::Catalog(std::unique_ptr<Connection> connection) : connection_(std::move(connection)) {}
Catalog::Catalog(Catalog&&) noexcept = default;
Catalog& Catalog::operator=(Catalog&&) noexcept = default;
Catalog::~Catalog() = default;

Result<Catalog> Catalog::open(const std::string& path) {
  auto database = store::Database::open(path);
  if (!database) return database.error();
  auto connection = std::make_unique<Connection>(std::move(database).value());
  const auto ready = connection->set_up();
  if (ready) return Catalog(std::move(connection));
  connection.reset();
  // On a read-only medium the stations can still be read.
  auto frozen = store::Database::open_frozen(path);
  if (!frozen || ready.error().damaged) return ready.error();
  connection = std::make_unique<Connection>(*std::move(frozen));
  if (!connection->set_up_frozen()) return ready.error();
  return Catalog(std::move(connection));
}

Result<std::optional<Station>> Catalog::find(std::string_view source_name, std::string_view id) {
  const auto found = connection_->by_id.bind(source_name, id).step();
  if (!found) return found.error();
  if (!*found) return std::optional<Station>();
  const std::int64_t row = connection_->by_id.integer(0);
  connection_->by_id.reset();
  auto station = connection_->read(row);
  if (!station) return station.error();
  return std::optional<Station>(std::move(station).value());
}

Result<std::size_t> Catalog::remove_source(std::string_view name) {
  auto transaction = store::Transaction::begin(connection_->database);
  if (!transaction) return transaction.error();
  const auto removed = connection_->drop_source(name);
  if (!removed) return removed.error();
  if (const auto done = transaction->commit(); !done) return done.error();
  return *removed;
}

Result<std::vector<Station>> Catalog::with_call_sign(std::string_view call_sign) {
  const auto snapshot = store::Transaction::begin_reading(connection_->database);
  if (!snapshot) return snapshot.error();
  auto& statement = connection_->by_call_sign;
  statement.bind(words::trimmed(call_sign));
  std::vector<Station> stations;
  while (true) {
    const auto more = statement.step();
    if (!more) return more.error();
    if (!*more) return stations;
    auto station = connection_->read(statement.integer(0));
    if (!station) return station.error();
    stations.push_back(std::move(station).value());
  }
}

Result<std::size_t> Catalog::count() {
  const auto row = connection_->count_stations.bind().step();
  if (!row) return row.error();
  const auto count = static_cast<std::size_t>(connection_->count_stations.integer(0));
  connection_->count_stations.reset();
  return count;
}

Result<std::vector<SourceSummary>> read_summaries(store::Statement& statement) {
  statement.bind();
  std::vector<SourceSummary> all;
  while (true) {
    const auto more = statement.step();
    if (!more) return more.error();
    if (!*more) return all;
    all.push_back(
        {{statement.text(0), statement.text(1)}, static_cast<std::size_t>(statement.integer(2))});
  }
}

Result<std::vector<SourceSummary>> Catalog::sources() {
  return read_summaries(connection_->list_sources);
}

}  // namespace mastwise
