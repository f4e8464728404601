// The record of decisions: appends that hold, and every way to change it that verify must find and name.

#include "decision_log/decision_log.hpp"

#include <filesystem>
#include <fstream>
#include <set>
#include <thread>

#include <catch2/catch.hpp>

#include "decision_log/database.hpp"
#include "decision_log/head_beside.hpp"
#include "decision_log/schema.hpp"
#include "unit/decision_log/made_decisions.hpp"

using namespace firstpick::decision_log;
using namespace firstpick::tests;

namespace {

std::vector<Row> appended(const std::string& file, const std::vector<Decision>& decisions) {
  const auto result = append(file, decisions);
  if (const auto* fault = std::get_if<Fault>(&result)) FAIL(fault->what);
  return std::get<std::vector<Row>>(result);
}

Verified verified(const std::string& file, const std::string& head = {}) {
  const auto result = verify(file, head);
  if (const auto* fault = std::get_if<Fault>(&result)) FAIL(fault->what);
  return std::get<Verified>(result);
}

std::set<long long> rows_named(const Verified& result) {
  std::set<long long> rows;
  for (const Problem& problem : result.problems) rows.insert(problem.number);
  return rows;
}

// Somebody with a database tool of his own: the guards are taken off, the change made, the guards put back.
void tamper(const std::string& file, const std::string& sql) {
  Database database(file, Access::append);
  std::vector<std::string> guards;
  {
    Statement all(database, "SELECT sql FROM sqlite_master WHERE type = 'trigger'");
    while (all.step()) guards.push_back(all.text(0));
  }
  for (const char* name : {"decision_is_not_changed", "decision_is_not_deleted", "decision_is_added_last"})
    database.run(std::string("DROP TRIGGER ") + name);
  database.run(sql);
  for (const std::string& guard : guards) database.run(guard);
}

std::string refusal(const std::string& file, const std::string& sql) {
  try {
    Database(file, Access::append).run(sql);
  } catch (const DatabaseFault& fault) {
    return fault.what();
  }
  return "not refused";
}

}  // namespace

TEST_CASE("rows come back as they were written, numbered from 1, each with the hash of the one before") {
  const RecordFile record;
  const auto first = appended(record.path, made_decisions(3));
  const auto second = appended(record.path, made_decisions(2, 3));
  CHECK(first.front().previous == std::string(64, '0'));
  CHECK(second.front().number == 4);
  CHECK(second.front().previous == first.back().hash);

  const auto rows = std::get<std::vector<Row>>(rows_of(record.path));
  REQUIRE(rows.size() == 5);
  for (std::size_t i = 0; i < rows.size(); ++i)
    for (const Field& field : fields)
      CHECK(rows[i].decision.*field.text == made_decision(static_cast<int>(i)).*field.text);
  const Verified result = verified(record.path, second.back().hash);
  CHECK(result.problems.empty());
  CHECK(result.rows == 5);
  CHECK(result.head == second.back().hash);
  CHECK(result.kept_head == 5);
}

TEST_CASE("the hash is SHA-256 of the bytes that docs/record.md describes") {
  Row row{.number = 1, .decision = {}, .previous = no_row_before, .hash = {}, .format = 1};
  row.decision.by = "A=1:\nB";
  const std::string bytes = canonical_bytes(row);
  CHECK(bytes.starts_with("firstpick decision 1\nnumber=1:1\nprevious=64:0000"));
  CHECK(bytes.find("\nby=6:A=1:\nB\nplant=0:\n") != std::string::npos);
  // sha256sum of those bytes, by coreutils.
  CHECK(hash_of(row) == "34082bf961f9101108cd85da5ccdf1623552b7de05bdf937a3c93c53ea160298");
  row.format = 2;
  CHECK(canonical_bytes(row) == "firstpick decision 2" + bytes.substr(20) + "recorded_at=0:\n");
}

TEST_CASE("no two different rows have the same bytes") {
  Row a{.number = 1, .decision = {}, .previous = no_row_before, .hash = {}}, b = a;
  a.decision.by = "x\nplant=1:y";
  b.decision.by = "x";
  b.decision.plant = "y";
  CHECK(canonical_bytes(a) != canonical_bytes(b));
  for (const Field& field : fields) {
    Row changed = a;
    changed.decision.*field.text += "1";
    CAPTURE(field.name);
    CHECK(hash_of(changed) != hash_of(a));
  }
}

TEST_CASE("SQL that changes, deletes, replaces or inserts out of turn is refused") {
  const RecordFile record;
  appended(record.path, made_decisions(3));
  CHECK(refusal(record.path, "UPDATE decision SET verdict = 'GO'") == "a decision is never changed");
  CHECK(refusal(record.path, "DELETE FROM decision WHERE number = 3") == "a decision is never deleted");
  CHECK(refusal(record.path, "INSERT OR REPLACE INTO decision SELECT * FROM decision WHERE number = 2") ==
        "a decision is only added behind the last one");
  CHECK(refusal(record.path, "REPLACE INTO decision SELECT * FROM decision WHERE number = 3") ==
        "a decision is only added behind the last one");
  CHECK(verified(record.path).problems.empty());
}

TEST_CASE("every changed field of every row is found and the row is named") {
  for (const Field& field : fields) {
    const RecordFile record;
    appended(record.path, made_decisions(4));
    tamper(record.path, "UPDATE decision SET \"" + std::string(field.name) + "\" = \"" +
                            std::string(field.name) + "\" || ' ' WHERE number = 3");
    CAPTURE(field.name);
    CHECK(rows_named(verified(record.path)) == std::set<long long>{3});
  }
}

TEST_CASE("deleted, moved, doubled and renumbered rows are found") {
  const auto after = [](const std::string& sql) {
    const RecordFile record;
    appended(record.path, made_decisions(6));
    tamper(record.path, sql);
    return rows_named(verified(record.path));
  };
  CHECK(after("DELETE FROM decision WHERE number = 1") == std::set<long long>{2});
  CHECK(after("DELETE FROM decision WHERE number IN (3, 4)") == std::set<long long>{5});
  CHECK(
      after("DELETE FROM decision WHERE number = 3; UPDATE decision SET number = number - 1 WHERE number > 3")
          .contains(3));
  CHECK(after("UPDATE decision SET number = 99 WHERE number = 2; UPDATE decision SET number = 2 WHERE number "
              "= 3; "
              "UPDATE decision SET number = 3 WHERE number = 99")
            .contains(2));
  CHECK(after("INSERT INTO decision SELECT 7, decided_at, \"by\", plant, shift_file, form, mark, serial, "
              "verdict, rule, reason, "
              "prediction, evidence, report, plan_file, pour_file, rules, shift_sha256, plan_sha256, "
              "pour_sha256, "
              "tables_sha256, answer_sha256, program, recorded_at, previous, hash FROM decision WHERE number = 6") ==
        std::set<long long>{7});
}

TEST_CASE("a row written anew with its right hash breaks the chain behind it") {
  const RecordFile record;
  appended(record.path, made_decisions(4));
  Row row = std::get<std::vector<Row>>(rows_of(record.path))[1];
  row.decision.verdict = "GO";
  tamper(record.path, "UPDATE decision SET verdict = 'GO', hash = '" + hash_of(row) + "' WHERE number = 2");
  CHECK(rows_named(verified(record.path)) == std::set<long long>{3});
}

TEST_CASE("rows missing at the end are found by the hash beside the record, and by one that was kept elsewhere") {
  const RecordFile record;
  const auto rows = appended(record.path, made_decisions(5));
  CHECK(verified(record.path).beside == 5);
  tamper(record.path, "DELETE FROM decision WHERE number > 3");
  CHECK(rows_named(verified(record.path)) == std::set<long long>{0});
  CHECK(verified(record.path).problems.front().what.find(head_file_of(record.path)) != std::string::npos);
  CHECK(verified(record.path, rows[4].hash).problems.size() == 2);

  // Somebody who takes away the hash too is found only by one that was kept elsewhere.
  std::filesystem::remove(head_file_of(record.path));
  CHECK(verified(record.path).problems.empty());
  CHECK_FALSE(verified(record.path).beside);
  CHECK(rows_named(verified(record.path, rows[4].hash)) == std::set<long long>{0});
  CHECK(verified(record.path, rows[2].hash).problems.empty());
  CHECK(verified(record.path, rows[1].hash).kept_head == 2);
}

TEST_CASE("a record without any row is no record that was ever written") {
  const RecordFile record;
  appended(record.path, made_decisions(2));
  tamper(record.path, "DELETE FROM decision");
  std::filesystem::remove(head_file_of(record.path));
  CHECK(rows_named(verified(record.path)) == std::set<long long>{0});
  CHECK(std::holds_alternative<Fault>(append(record.path, made_decisions(1))));
}

TEST_CASE("a hash beside the record that is none, and a record that is gone from beside its hash, are found") {
  const RecordFile record;
  const auto rows = appended(record.path, made_decisions(2));
  std::ofstream(head_file_of(record.path)) << "half of a ha";
  CHECK(rows_named(verified(record.path)) == std::set<long long>{0});
  CHECK(keep_head(record.path, rows[0]));  // a program that was killed before it wrote the last one
  CHECK(verified(record.path).problems.empty());
  CHECK(verified(record.path).beside == 1);
  std::filesystem::remove(record.path);
  CHECK(std::get<Fault>(append(record.path, made_decisions(1))).what.find("the record is gone") == 0);
}

TEST_CASE("nothing is added to a record with a changed row in its middle, or without one of its guards") {
  const RecordFile record, other;
  appended(record.path, made_decisions(5));
  tamper(record.path, "UPDATE decision SET verdict = 'GO ' WHERE number = 2");
  CHECK(std::get<Fault>(append(record.path, made_decisions(1))).what ==
        "nothing is added to a record that is damaged: row 2: it has been changed: its hash is not that of its content");
  appended(other.path, made_decisions(5));
  Database(other.path, Access::append).run("DROP TRIGGER decision_is_not_changed");
  CHECK(std::holds_alternative<Fault>(append(other.path, made_decisions(1))));
}

TEST_CASE("times that go back, or are not those of the clock, are told and the rows named, they are no change") {
  const auto at = [](const std::string& decided, const std::string& recorded) {
    Decision decision = made_decision(1);
    decision.decided_at = decided;
    decision.recorded_at = recorded;
    return decision;
  };
  const auto times_of = [&](const std::vector<Decision>& decisions) {
    const RecordFile record;
    appended(record.path, decisions);
    const Verified result = verified(record.path);
    CHECK(result.problems.empty());
    std::vector<std::string> told;
    for (const Problem& odd : result.times) told.push_back(std::to_string(odd.number) + " " + odd.what);
    return told;
  };
  using Texts = std::vector<std::string>;
  const Decision first = at("2026-03-03T08:45:00-05:00", "2026-03-03T08:45:02-05:00");
  CHECK(times_of({first, at("2026-03-03T13:50:00Z", "2026-03-03T08:55:00-05:00")}) == Texts{});
  CHECK(times_of({first, at("2026-03-03T07:00:00-05:00", "2026-03-03T08:50:00-05:00")}) ==
        Texts{"2 its board is of 2026-03-03T07:00:00-05:00, and it was recorded at 2026-03-03T08:50:00-05:00"});
  CHECK(times_of({at("2031-03-03T07:00:00-05:00", "2026-03-03T08:50:00-05:00")}).size() == 1);
  CHECK(times_of({first, at("2026-03-03T08:44:00-05:00", "2026-03-03T08:44:59-05:00")}) ==
        Texts{"2 it was recorded at 2026-03-03T08:44:59-05:00, before the row above it, 2026-03-03T08:45:02-05:00: the "
              "clock was put back"});
  CHECK(times_of({first, at("2026-03-03T08:44:59-05:00", "2026-03-03T08:46:00-05:00")}) ==
        Texts{"2 its board is of 2026-03-03T08:44:59-05:00, before that of the row above it, 2026-03-03T08:45:00-05:00"});
  CHECK(times_of({at("soon", "2026-03-03T08:46:00-05:00")}) == Texts{"1 its time cannot be read"});
}

TEST_CASE("a record of the first format is shown and verified as ever, and not added to") {
  const RecordFile record;
  Row row{.number = 1, .decision = made_decision(0), .previous = no_row_before, .hash = {}, .format = 1};
  row.decision.recorded_at.clear();
  row.hash = hash_of(row);
  {
    Database database(record.path, Access::append);
    database.run("PRAGMA application_id = " + std::to_string(application_id(1)));
    for (const auto& [name, sql] : schema(1)) database.run(sql);
    std::string marks = "?";
    for (int i = 0; i < 24; ++i) marks += ", ?";
    Statement insert(database, "INSERT INTO decision (" + columns(1) + ") VALUES (" + marks + ")");
    int at = 1;
    insert.bind(at++, row.number);
    for (const Field& field : fields)
      if (field.since == 1) insert.bind(at++, row.decision.*field.text);
    insert.bind(at++, row.previous);
    insert.bind(at, row.hash);
    insert.step();
  }
  CHECK(verified(record.path).problems.empty());
  CHECK(std::get<std::vector<Row>>(rows_of(record.path)).front().decision.by == row.decision.by);
  CHECK(std::get<Fault>(append(record.path, made_decisions(1))).what ==
        "this record was begun by an earlier version: begin a new one, and keep this one");
}

TEST_CASE("guards that are gone, and tables that do not belong there, are found") {
  const RecordFile record;
  appended(record.path, made_decisions(2));
  Database(record.path, Access::append).run("DROP TRIGGER decision_is_not_deleted");
  const Verified result = verified(record.path);
  REQUIRE_FALSE(result.problems.empty());
  CHECK(result.problems.front().what ==
        "'decision_is_not_deleted', which guards the record, is missing or has been changed");

  const RecordFile other;
  appended(other.path, made_decisions(2));
  Database(other.path, Access::append).run("CREATE TRIGGER x AFTER INSERT ON decision BEGIN SELECT 1; END");
  CHECK(rows_named(verified(other.path)) == std::set<long long>{0});
}

TEST_CASE("nothing is added to a record whose last row has been changed, nor to a file that is no record") {
  const RecordFile record;
  appended(record.path, made_decisions(2));
  tamper(record.path, "UPDATE decision SET verdict = 'GO ' WHERE number = 2");
  CHECK(std::holds_alternative<Fault>(append(record.path, made_decisions(1))));

  const RecordFile other;
  Database(other.path, Access::append).run("CREATE TABLE other (x)");
  CHECK(std::get<Fault>(append(other.path, made_decisions(1))).what == "this is no record of decisions");
  CHECK(std::get<Fault>(verify(other.path, "")).what == "this is no record of decisions");
  CHECK(std::get<Fault>(rows_of(other.path + "-absent")).what == "there is no such file");
}

TEST_CASE("writers at the same time take turns: one chain, nothing lost") {
  const RecordFile record;
  constexpr int writers = 4, times = 25;
  std::vector<std::thread> threads;
  std::vector<std::vector<Row>> written(writers);
  for (int writer = 0; writer < writers; ++writer)
    threads.emplace_back([&, writer] {
      for (int i = 0; i < times; ++i) {
        const auto result = append(record.path, made_decisions(2, 100 * writer + i));
        if (const auto* rows = std::get_if<std::vector<Row>>(&result))
          written[static_cast<std::size_t>(writer)].insert(written[static_cast<std::size_t>(writer)].end(),
                                                           rows->begin(), rows->end());
      }
    });
  for (std::thread& thread : threads) thread.join();
  const Verified result = verified(record.path);
  CHECK(result.problems.empty());
  CHECK(result.rows == writers * times * 2);
  const auto rows = std::get<std::vector<Row>>(rows_of(record.path));
  for (const auto& of_writer : written) {
    CHECK(of_writer.size() == times * 2);
    for (const Row& row : of_writer)
      CHECK(rows.at(static_cast<std::size_t>(row.number) - 1).hash == row.hash);
  }
}
