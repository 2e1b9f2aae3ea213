#pragma once

#include "core/result.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

// A thin, non-throwing wrapper of SQLite, shared by the stores. Only one thread at a time may use a
// database and its statements.
namespace mastwise::store {

inline constexpr const char* kInMemory = ":memory:";

// A prepared statement: bind, step until no row is left, then bind again.
class Statement {
 public:
  Statement() = default;  // no statement prepared
  // Binds 1, 2, ... in order: integers, doubles, texts, and optionals (std::nullopt is NULL).
  template <class... Values>
  Statement& bind(const Values&... values) {
    reset();
    int place = 0;
    (bind_at(++place, values), ...);
    return *this;
  }

  // Binds 1, 2, ... to texts.
  Statement& bind_texts(std::span<const std::string> texts) {
    reset();
    int place = 0;
    for (const std::string& text : texts) bind_at(++place, std::string_view(text));
    return *this;
  }

  // True if there is a row to read; false if the statement is done, which also resets it.
  Result<bool> step();
  // For statements that return no rows.
  Result<Done> run();
  void reset();

  // Columns of the row, counted from 0.
  std::int64_t integer(int column) const;
  double real(int column) const;
  std::string text(int column) const;
  std::string_view text_view(int column) const;  // valid until the next step
  bool is_null(int column) const;
  std::optional<double> optional_real(int column) const;
  std::optional<std::int64_t> optional_integer(int column) const;

 private:
  friend class Database;
  struct Finalizer {
    void operator()(sqlite3_stmt* statement) const;
  };
  explicit Statement(sqlite3_stmt* statement) : statement_(statement) {}

  void bind_at(int place, std::int64_t value);
  void bind_at(int place, double value);
  void bind_at(int place, std::string_view value);
  void bind_null(int place);
  void keep(int code);
  template <class Value>
  void bind_at(int place, const std::optional<Value>& value) {
    value ? bind_at(place, *value) : bind_null(place);
  }

  std::unique_ptr<sqlite3_stmt, Finalizer> statement_;
  int bind_fault_ = 0;
};

class Database {
 public:
  // Opens or creates the file ("" and ":memory:" make a temporary one) with foreign keys on. Waits
  // up to five seconds for another process's lock.
  static Result<Database> open(const std::string& path);
  // Opens an existing file for reading and writing; std::nullopt if there is none.
  static Result<std::optional<Database>> open_existing(const std::string& path);
  // Opens an existing file for reading only.
  static Result<Database> open_reading(const std::string& path);

  // A copy in memory, to be changed without touching the file.
  Result<Database> in_memory() const;

  // Opens an existing file that nobody can change, as on a read-only medium, where a file with a
  // write-ahead log cannot be opened otherwise. Changes in its log are not seen.
  static Result<Database> open_frozen(const std::string& path);

  // Statements without results, separated by semicolons.
  Result<Done> run(const std::string& script);
  Result<Statement> prepare(std::string_view sql);
  // The single integer that a query such as "PRAGMA user_version" returns.
  Result<std::int64_t> integer(std::string_view sql);
  std::int64_t last_row() const;
  bool is_read_only() const;  // as on a read-only medium
  // Reads every page. The fault that was found, or empty; an existing file without a page is one.
  // Source: SQLite's quick_check.
  Result<std::string> damage();
  const std::string& path() const { return path_; }

 private:
  struct Closer {
    void operator()(sqlite3* database) const;
  };
  static Result<Database> open_with(const std::string& path, int flags, bool* missing = nullptr);
  Database(sqlite3* database, std::string path) : database_(database), path_(std::move(path)) {}

  std::unique_ptr<sqlite3, Closer> database_;
  std::string path_;
};

// A write transaction; it rolls back when it goes out of scope without a commit.
class Transaction {
 public:
  static Result<Transaction> begin(Database& database);
  // A read transaction: several queries see one state, and the file is locked only once. Ends when
  // it goes out of scope.
  static Result<Transaction> begin_reading(Database& database);
  Result<Done> commit();

  Transaction(Transaction&& other) noexcept : database_(other.database_) {
    other.database_ = nullptr;
  }
  Transaction& operator=(Transaction&&) = delete;
  ~Transaction();

 private:
  explicit Transaction(Database& database) : database_(&database) {}
  Database* database_;
};

}  // namespace mastwise::store
