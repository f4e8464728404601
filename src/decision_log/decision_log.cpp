#include "decision_log/decision_log.hpp"

#include <filesystem>

#include <fmt/format.h>

#include "decision_log/database.hpp"
#include "decision_log/schema.hpp"

namespace firstpick::decision_log {

namespace {

constexpr const char* no_record = "this is no record of decisions";

Row row_at(const Statement& statement) {
  Row row{.number = statement.number(0)};
  int column = 1;
  for (const Field& field : fields) row.decision.*field.text = statement.text(column++);
  row.previous = statement.text(column++);
  row.hash = statement.text(column);
  return row;
}

bool is_empty(Database& database) { return database.value("SELECT count(*) FROM sqlite_master") == "0"; }

bool is_record(Database& database) {
  return database.value("PRAGMA application_id") == std::to_string(application_id);
}

void make_schema(Database& database) {
  database.run(fmt::format("PRAGMA application_id = {}", application_id));
  for (const auto& [name, sql] : schema()) database.run(sql);
}

std::optional<Row> last_row(Database& database) {
  Statement last(database, fmt::format("SELECT {} FROM decision ORDER BY number DESC LIMIT 1", columns()));
  if (!last.step()) return {};
  return row_at(last);
}

std::vector<Row> add_rows(Database& database, const std::vector<Decision>& decisions) {
  const auto last = last_row(database);
  if (last && hash_of(*last) != last->hash)
    throw DatabaseFault(
        fmt::format("row {} has been changed: nothing is added to a record that is damaged", last->number));
  std::string marks = "?";
  for (std::size_t i = 0; i < fields.size() + 2; ++i) marks += ", ?";
  Statement insert(database, fmt::format("INSERT INTO decision ({}) VALUES ({})", columns(), marks));
  std::vector<Row> rows;
  for (const Decision& decision : decisions) {
    Row row{.number = (rows.empty() ? (last ? last->number : 0) : rows.back().number) + 1,
            .decision = decision,
            .previous = rows.empty() ? (last ? last->hash : no_row_before) : rows.back().hash};
    row.hash = hash_of(row);
    int at = 1;
    insert.reset();
    insert.bind(at++, row.number);
    for (const Field& field : fields) insert.bind(at++, row.decision.*field.text);
    insert.bind(at++, row.previous);
    insert.bind(at, row.hash);
    insert.step();
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<Problem> guard_problems(Database& database) {
  std::vector<Problem> problems;
  const std::string integrity = database.value("PRAGMA integrity_check(1)");
  if (integrity != "ok") problems.push_back({0, "the file is damaged: " + integrity});
  for (const auto& [name, sql] : schema())
    if (database.value(fmt::format("SELECT sql FROM sqlite_master WHERE name = '{}'", name)) != sql)
      problems.push_back(
          {0, fmt::format("'{}', which guards the record, is missing or has been changed", name)});
  if (database.value("SELECT count(*) FROM sqlite_master") != std::to_string(schema().size()))
    problems.push_back({0, "the record holds tables, triggers or views that are not its own"});
  return problems;
}

void check_row(const Row& row, const Row* before, std::vector<Problem>& problems) {
  const long long expected = before ? before->number + 1 : 1;
  if (row.number != expected)
    problems.push_back(
        {row.number, row.number == expected + 1
                         ? fmt::format("row {} before it is missing", expected)
                         : fmt::format("rows {} to {} before it are missing", expected, row.number - 1)});
  if (row.previous != (before ? before->hash : no_row_before))
    problems.push_back({row.number, "it was not written behind the row that now stands before it"});
  if (hash_of(row) != row.hash)
    problems.push_back({row.number, "it has been changed: its hash is not that of its content"});
}

template <class Work>
auto guarded(Work work) -> std::variant<decltype(work()), Fault> {
  try {
    return work();
  } catch (const DatabaseFault& fault) {
    return Fault{fault.what()};
  }
}

std::optional<Fault> fault_of_file(const std::string& file) {
  std::error_code error;
  if (!std::filesystem::is_regular_file(file, error)) return Fault{"there is no such file"};
  return {};
}

}  // namespace

std::variant<std::vector<Row>, Fault> append(const std::string& file,
                                             const std::vector<Decision>& decisions) {
  return guarded([&] {
    Database database(file, Access::append);
    database.run("BEGIN IMMEDIATE");
    if (is_empty(database))
      make_schema(database);
    else if (!is_record(database))
      throw DatabaseFault(no_record);
    std::vector<Row> rows = add_rows(database, decisions);
    database.run("COMMIT");
    return rows;
  });
}

std::variant<std::vector<Row>, Fault> rows_of(const std::string& file) {
  if (auto fault = fault_of_file(file)) return *fault;
  return guarded([&] {
    Database database(file, Access::read);
    if (!is_record(database)) throw DatabaseFault(no_record);
    std::vector<Row> rows;
    Statement all(database, fmt::format("SELECT {} FROM decision ORDER BY number", columns()));
    while (all.step()) rows.push_back(row_at(all));
    return rows;
  });
}

std::variant<Verified, Fault> verify(const std::string& file, std::string_view head) {
  if (auto fault = fault_of_file(file)) return *fault;
  return guarded([&] {
    Database database(file, Access::read);
    if (!is_record(database)) throw DatabaseFault(no_record);
    Verified verified{.head = no_row_before, .problems = guard_problems(database)};
    Statement all(database, fmt::format("SELECT {} FROM decision ORDER BY number", columns()));
    std::optional<Row> before;
    while (all.step()) {
      Row row = row_at(all);
      check_row(row, before ? &*before : nullptr, verified.problems);
      if (!head.empty() && row.hash == head) verified.kept_head = row.number;
      verified.head = row.hash;
      ++verified.rows;
      before = std::move(row);
    }
    if (!head.empty() && !verified.kept_head)
      verified.problems.push_back(
          {0,
           "no row has the hash that was kept: rows have been removed at the end, or all of the "
           "record has been written anew"});
    return verified;
  });
}

}  // namespace firstpick::decision_log
