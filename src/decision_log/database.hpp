// The little of SQLite that the record needs. Included by decision_log's own source files only.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace firstpick::decision_log {

// What SQLite says is wrong, in words. Never leaves decision_log: its functions give the words back.
struct DatabaseFault : std::runtime_error {
  using std::runtime_error::runtime_error;
};

enum class Access { read, append };  // append: the file is made where there is none

class Database {
 public:
  // Waits for other writers for `patience`, and syncs every commit, and the folder, to the disk.
  Database(const std::string& file, Access access);
  ~Database();
  Database(const Database&) = delete;
  Database& operator=(const Database&) = delete;

  void run(const std::string& sql);
  std::string value(const std::string& sql);  // of one column of one row; empty where there is none
  sqlite3* handle() const { return handle_; }

 private:
  sqlite3* handle_ = nullptr;
};

class Statement {
 public:
  Statement(const Database& database, const std::string& sql);
  ~Statement();
  Statement(const Statement&) = delete;
  Statement& operator=(const Statement&) = delete;

  void bind(int at, long long number);  // from 1
  void bind(int at, std::string_view text);
  bool step();  // whether there is a row
  void reset();
  std::string text(int column) const;  // from 0
  long long number(int column) const;

 private:
  const Database& database_;
  sqlite3_stmt* handle_ = nullptr;
};

}  // namespace firstpick::decision_log
