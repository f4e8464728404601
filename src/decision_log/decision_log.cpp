#include "decision_log/decision_log.hpp"

#include <filesystem>

#include <fmt/format.h>

#include "decision_log/database.hpp"
#include "decision_log/head_beside.hpp"
#include "decision_log/row_times.hpp"
#include "decision_log/schema.hpp"

namespace firstpick::decision_log {

namespace {

constexpr const char* no_record = "this is no record of decisions";

Row row_at(const Statement& statement, int format) {
  Row row{.number = statement.number(0), .decision = {}, .previous = {}, .hash = {}, .format = format};
  int column = 1;
  for (const Field& field : fields)
    if (field.since <= format) row.decision.*field.text = statement.text(column++);
  row.previous = statement.text(column++);
  row.hash = statement.text(column);
  return row;
}

bool is_empty(Database& database) { return database.value("SELECT count(*) FROM sqlite_master") == "0"; }

int format_of(Database& database) {
  const std::string id = database.value("PRAGMA application_id");
  for (int format = 1; format <= this_format; ++format)
    if (id == std::to_string(application_id(format))) return format;
  throw DatabaseFault(no_record);
}

void make_schema(Database& database) {
  database.run(fmt::format("PRAGMA application_id = {}", application_id(this_format)));
  for (const auto& [name, sql] : schema(this_format)) database.run(sql);
}

std::vector<Row> add_rows(Database& database, const std::optional<Row>& last,
                          const std::vector<Decision>& decisions) {
  std::string marks = "?";
  for (std::size_t i = 0; i < fields.size() + 2; ++i) marks += ", ?";
  Statement insert(database, fmt::format("INSERT INTO decision ({}) VALUES ({})", columns(this_format), marks));
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

std::vector<Problem> guard_problems(Database& database, int format) {
  std::vector<Problem> problems;
  const auto all = schema(format);
  for (const auto& [name, sql] : all)
    if (database.value(fmt::format("SELECT sql FROM sqlite_master WHERE name = '{}'", name)) != sql)
      problems.push_back(
          {0, fmt::format("'{}', which guards the record, is missing or has been changed", name)});
  if (database.value("SELECT count(*) FROM sqlite_master") != std::to_string(all.size()))
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

struct Chain {
  Verified verified;
  std::optional<Row> last;
};

// Every row against the one before it, the guards, and the hash that is kept beside the file.
Chain chain_of(Database& database, const std::string& file, std::string_view head) {
  const int format = format_of(database);
  Chain chain{{.head = no_row_before, .problems = guard_problems(database, format)}, {}};
  Verified& verified = chain.verified;
  const auto beside = decision_log::kept_head(file);
  Statement all(database, fmt::format("SELECT {} FROM decision ORDER BY number", columns(format)));
  while (all.step()) {
    Row row = row_at(all, format);
    const Row* before = chain.last ? &*chain.last : nullptr;
    check_row(row, before, verified.problems);
    if (std::string odd = odd_times(row, before); !odd.empty()) verified.times.push_back({row.number, std::move(odd)});
    if (!head.empty() && row.hash == head) verified.kept_head = row.number;
    if (beside && row.hash == *beside) verified.beside = row.number;
    verified.head = row.hash;
    ++verified.rows;
    chain.last = std::move(row);
  }
  if (verified.rows == 0) verified.problems.push_back({0, "it has no row, and none is ever made without one"});
  if (beside && !verified.beside)
    verified.problems.push_back({0, fmt::format("no row has the hash that {} holds: rows have been removed at the end, "
                                                "or all of the record has been written anew",
                                                head_file_of(file))});
  if (!head.empty() && !verified.kept_head)
    verified.problems.push_back(
        {0,
         "no row has the hash that was kept: rows have been removed at the end, or all of the "
         "record has been written anew"});
  return chain;
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
    std::optional<Row> last;
    if (is_empty(database)) {
      if (decision_log::kept_head(file))
        throw DatabaseFault(fmt::format("the record is gone, and {} is still there", head_file_of(file)));
      make_schema(database);
    } else {
      if (format_of(database) != this_format)
        throw DatabaseFault("this record was begun by an earlier version: begin a new one, and keep this one");
      Chain chain = chain_of(database, file, {});
      if (!chain.verified.problems.empty()) {
        const Problem& first = chain.verified.problems.front();
        throw DatabaseFault(fmt::format("nothing is added to a record that is damaged: {}{}",
                                        first.number == 0 ? std::string() : fmt::format("row {}: ", first.number),
                                        first.what));
      }
      last = std::move(chain.last);
    }
    std::vector<Row> rows = add_rows(database, last, decisions);
    database.run("COMMIT");
    if (!rows.empty()) keep_head(file, rows.back());  // if it cannot be written, the one before stays true
    return rows;
  });
}

std::variant<std::vector<Row>, Fault> rows_of(const std::string& file) {
  if (auto fault = fault_of_file(file)) return *fault;
  return guarded([&] {
    Database database(file, Access::read);
    const int format = format_of(database);
    std::vector<Row> rows;
    Statement all(database, fmt::format("SELECT {} FROM decision ORDER BY number", columns(format)));
    while (all.step()) rows.push_back(row_at(all, format));
    return rows;
  });
}

std::variant<Verified, Fault> verify(const std::string& file, std::string_view head) {
  if (auto fault = fault_of_file(file)) return *fault;
  return guarded([&] {
    Database database(file, Access::read);
    Verified verified = chain_of(database, file, head).verified;
    const std::string integrity = database.value("PRAGMA integrity_check(1)");
    if (integrity != "ok") verified.problems.push_back({0, "the file is damaged: " + integrity});
    return verified;
  });
}

}  // namespace firstpick::decision_log
