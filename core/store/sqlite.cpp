#include "core/store/sqlite.hpp"

#include <cerrno>
#include <utility>

#include <sqlite3.h>

namespace mastwise::store {
namespace {

std::string remedy_for(int code) {
  switch (code & 0xff) {
    case SQLITE_FULL:
      return "free some space on the disk and try again";
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return "another program is using the file; close it and try again";
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
    case SQLITE_READONLY:
      return "check that the folder exists and that you may write to it";
    case SQLITE_IOERR:
      return "the disk could not be read or written: check it and its permissions";
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return "the file is not a database or is damaged; if it is Mastwise's, start the window: it "
             "moves the file aside and keeps what can be read";
    default:
      return {};
  }
}

Error fault(sqlite3* database, int code) {
  const char* file = database == nullptr ? nullptr : sqlite3_db_filename(database, "main");
  const char* what = database == nullptr ? sqlite3_errstr(code) : sqlite3_errmsg(database);
  const int kind = code & 0xff;
  return Error{.what = what,
               .where = file == nullptr ? "" : file,
               .remedy = remedy_for(code),
               .damaged = kind == SQLITE_CORRUPT || kind == SQLITE_NOTADB};
}

}  // namespace

void Statement::Finalizer::operator()(sqlite3_stmt* statement) const {
  sqlite3_finalize(statement);
}

void Database::Closer::operator()(sqlite3* database) const {
  sqlite3_close_v2(database);
}

void Statement::keep(int code) {
  if (bind_fault_ == SQLITE_OK) bind_fault_ = code;
}

void Statement::bind_at(int place, std::int64_t value) {
  keep(sqlite3_bind_int64(statement_.get(), place, value));
}

void Statement::bind_at(int place, double value) {
  keep(sqlite3_bind_double(statement_.get(), place, value));
}

void Statement::bind_at(int place, std::string_view value) {
  // A null pointer would bind NULL instead of an empty text.
  const char* data = value.data() == nullptr ? "" : value.data();
  keep(sqlite3_bind_text64(statement_.get(), place, data, value.size(), SQLITE_TRANSIENT,
                           SQLITE_UTF8));
}

void Statement::bind_null(int place) {
  keep(sqlite3_bind_null(statement_.get(), place));
}

Result<bool> Statement::step() {
  int code = bind_fault_;
  if (code == SQLITE_OK) {
    code = sqlite3_step(statement_.get());
    if (code == SQLITE_ROW) return true;
  }
  if (code == SQLITE_DONE) {
    reset();
    return false;
  }
  Error error = fault(sqlite3_db_handle(statement_.get()), code);
  reset();
  return error;
}

Result<Done> Statement::run() {
  while (true) {
    const auto row = step();
    if (!row) return row.error();
    if (!*row) return Done{};
  }
}

void Statement::reset() {
  sqlite3_reset(statement_.get());
  bind_fault_ = SQLITE_OK;
}

std::int64_t Statement::integer(int column) const {
  return sqlite3_column_int64(statement_.get(), column);
}

double Statement::real(int column) const {
  return sqlite3_column_double(statement_.get(), column);
}

std::string_view Statement::text_view(int column) const {
  const auto* data = reinterpret_cast<const char*>(sqlite3_column_text(statement_.get(), column));
  if (data == nullptr) return {};
  return {data, static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column))};
}

std::string Statement::text(int column) const {
  return std::string(text_view(column));
}

bool Statement::is_null(int column) const {
  return sqlite3_column_type(statement_.get(), column) == SQLITE_NULL;
}

std::optional<double> Statement::optional_real(int column) const {
  if (is_null(column)) return std::nullopt;
  return real(column);
}

std::optional<std::int64_t> Statement::optional_integer(int column) const {
  if (is_null(column)) return std::nullopt;
  return integer(column);
}

Result<Database> Database::open(const std::string& path) {
  return open_with(path, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
}

Result<std::optional<Database>> Database::open_existing(const std::string& path) {
  bool missing = false;
  auto opened = open_with(path, SQLITE_OPEN_READWRITE, &missing);
  if (missing) return std::optional<Database>();
  if (!opened) return opened.error();
  return std::optional(*std::move(opened));
}

Result<Database> Database::open_reading(const std::string& path) {
  return open_with(path, SQLITE_OPEN_READONLY);
}

// Source: SQLite's documentation of URI file names.
Result<Database> Database::open_frozen(const std::string& path) {
  std::string uri = "file:";
  for (const char c : path) {
    constexpr std::string_view kHex = "0123456789ABCDEF";
    const auto byte = static_cast<unsigned char>(c);
    const bool special = c == '?' || c == '#' || c == '%';
    uri += special ? std::string{'%', kHex[byte >> 4], kHex[byte & 15]} : std::string(1, c);
  }
  auto opened = open_with(uri + "?immutable=1", SQLITE_OPEN_READONLY | SQLITE_OPEN_URI);
  if (opened) opened->path_ = path;
  return opened;
}

Result<Database> Database::open_with(const std::string& path, int flags, bool* missing) {
  sqlite3* opened = nullptr;
  const int code = sqlite3_open_v2(path.c_str(), &opened, flags | SQLITE_OPEN_NOMUTEX, nullptr);
  Database database(opened, path);
  if (code != SQLITE_OK) {
    if (missing != nullptr) *missing = opened != nullptr && sqlite3_system_errno(opened) == ENOENT;
    Error error = fault(opened, code);
    error.where = path;
    return error;
  }
  constexpr int kWaitMs = 5000;
  sqlite3_busy_timeout(opened, kWaitMs);
  // The file may be another's: its schema runs no functions, and no value fills the memory.
  constexpr int kLongestValue = 64 << 20;
  sqlite3_limit(opened, SQLITE_LIMIT_LENGTH, kLongestValue);
  const auto done = database.run("PRAGMA trusted_schema = OFF; PRAGMA foreign_keys = ON");
  if (!done) return done.error();
  return database;
}

Result<Database> Database::in_memory() const {
  auto copy = open(kInMemory);
  if (!copy) return copy;
  sqlite3_backup* backup =
      sqlite3_backup_init(copy->database_.get(), "main", database_.get(), "main");
  if (backup != nullptr) sqlite3_backup_step(backup, -1);
  // Reports what went wrong in the steps as well.
  const int code =
      backup == nullptr ? sqlite3_errcode(copy->database_.get()) : sqlite3_backup_finish(backup);
  if (code != SQLITE_OK) {
    Error error = fault(copy->database_.get(), code);
    error.where = path_;
    return error;
  }
  copy->path_ = path_;
  return copy;
}

Result<Done> Database::run(const std::string& script) {
  const int code = sqlite3_exec(database_.get(), script.c_str(), nullptr, nullptr, nullptr);
  if (code != SQLITE_OK) return fault(database_.get(), code);
  return Done{};
}

Result<Statement> Database::prepare(std::string_view sql) {
  sqlite3_stmt* statement = nullptr;
  const int code = sqlite3_prepare_v3(database_.get(), sql.data(), static_cast<int>(sql.size()),
                                      SQLITE_PREPARE_PERSISTENT, &statement, nullptr);
  if (code != SQLITE_OK) return fault(database_.get(), code);
  return Statement(statement);
}

Result<std::int64_t> Database::integer(std::string_view sql) {
  auto statement = prepare(sql);
  if (!statement) return statement.error();
  const auto row = statement->step();
  if (!row) return row.error();
  if (!*row) return Error{.what = "the query gave no value: " + std::string(sql), .where = path_};
  return statement->integer(0);
}

Result<std::string> Database::damage() {
  auto query = prepare("PRAGMA quick_check(1)");
  if (!query) return query.error();
  const auto row = query->step();
  if (!row) return row.error();
  const std::string found = *row ? query->text(0) : "no answer";
  if (found != "ok") return found;
  const auto pages = integer("PRAGMA page_count");
  if (!pages) return pages.error();
  return *pages == 0 && path_ != kInMemory ? std::string("the file is empty") : std::string();
}

bool Database::is_read_only() const {
  return sqlite3_db_readonly(database_.get(), "main") == 1;
}

std::int64_t Database::last_row() const {
  return sqlite3_last_insert_rowid(database_.get());
}

Result<Transaction> Transaction::begin(Database& database) {
  if (const auto begun = database.run("BEGIN IMMEDIATE"); !begun) return begun.error();
  return Transaction(database);
}

Result<Transaction> Transaction::begin_reading(Database& database) {
  if (const auto begun = database.run("BEGIN DEFERRED"); !begun) return begun.error();
  return Transaction(database);
}

Result<Done> Transaction::commit() {
  auto done = database_->run("COMMIT");
  if (done) database_ = nullptr;
  return done;
}

Transaction::~Transaction() {
  // After some faults SQLite has already rolled back, so a failure of this command is harmless.
  if (database_ != nullptr) static_cast<void>(database_->run("ROLLBACK"));
}

}  // namespace mastwise::store
