#include "decision_log/database.hpp"

#include <sqlite3.h>

namespace firstpick::decision_log {

namespace {

constexpr int patience_ms = 20000;  // of a writer that waits for another one

[[noreturn]] void fail(sqlite3* handle) {
  throw DatabaseFault(handle ? sqlite3_errmsg(handle) : "out of memory");
}

}  // namespace

Database::Database(const std::string& file, Access access) {
  const int flags =
      access == Access::append ? SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE : SQLITE_OPEN_READWRITE;
  int status = sqlite3_open_v2(file.c_str(), &handle_, flags, nullptr);
  if (status != SQLITE_OK && access == Access::read) {  // on a disk that may only be read
    sqlite3_close(handle_);
    status = sqlite3_open_v2(file.c_str(), &handle_, SQLITE_OPEN_READONLY, nullptr);
  }
  if (status != SQLITE_OK) {
    const std::string why = handle_ ? sqlite3_errmsg(handle_) : "out of memory";
    sqlite3_close(handle_);
    throw DatabaseFault(why);
  }
  sqlite3_extended_result_codes(handle_, 1);
  sqlite3_busy_timeout(handle_, patience_ms);
  try {
    if (access == Access::append) {
      run("PRAGMA journal_mode = DELETE");
      run("PRAGMA synchronous = EXTRA");
    }
    run("PRAGMA trusted_schema = OFF");
  } catch (...) {
    sqlite3_close(handle_);
    throw;
  }
}

Database::~Database() { sqlite3_close(handle_); }

void Database::run(const std::string& sql) {
  if (sqlite3_exec(handle_, sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK) fail(handle_);
}

std::string Database::value(const std::string& sql) {
  Statement statement(*this, sql);
  return statement.step() ? statement.text(0) : std::string();
}

Statement::Statement(const Database& database, const std::string& sql) : database_(database) {
  if (sqlite3_prepare_v2(database.handle(), sql.c_str(), -1, &handle_, nullptr) != SQLITE_OK)
    fail(database.handle());
}

Statement::~Statement() { sqlite3_finalize(handle_); }

void Statement::bind(int at, long long number) {
  if (sqlite3_bind_int64(handle_, at, number) != SQLITE_OK) fail(database_.handle());
}

void Statement::bind(int at, std::string_view text) {
  if (sqlite3_bind_text(handle_, at, text.data() ? text.data() : "", static_cast<int>(text.size()),
                        SQLITE_TRANSIENT) != SQLITE_OK)
    fail(database_.handle());
}

bool Statement::step() {
  const int status = sqlite3_step(handle_);
  if (status == SQLITE_ROW) return true;
  if (status != SQLITE_DONE) fail(database_.handle());
  return false;
}

void Statement::reset() { sqlite3_reset(handle_); }

std::string Statement::text(int column) const {
  const auto* bytes = reinterpret_cast<const char*>(sqlite3_column_text(handle_, column));
  return bytes ? std::string(bytes, static_cast<std::size_t>(sqlite3_column_bytes(handle_, column)))
               : std::string();
}

long long Statement::number(int column) const { return sqlite3_column_int64(handle_, column); }

}  // namespace firstpick::decision_log
