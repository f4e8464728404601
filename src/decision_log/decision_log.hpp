// The record of decisions: rows that are only ever added, each holding the hash of the row before it.
//
// A local SQLite file. A row is on the disk before its number is given back; several writers take turns.
// Triggers refuse a change, a deletion and a row out of turn; the chain of hashes shows who went around them.
// docs/record.md says what it can find and what it cannot.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "decision_log/decision.hpp"

namespace firstpick::decision_log {

struct Fault {
  std::string what;  // in words: "this is no record of decisions", "database is locked"
};

// Adds all of the decisions in one step, or none of them. Makes the file where there is none, and keeps the hash of the
// last row in a file beside it.
// Refused: a file that is no record, a record of an earlier format, and one in which verify() finds a problem.
std::variant<std::vector<Row>, Fault> append(const std::string& file, const std::vector<Decision>& decisions);

// Every row in order, whether its hash is right or not.
std::variant<std::vector<Row>, Fault> rows_of(const std::string& file);

struct Problem {
  long long number = 0;  // of the row; 0: of the record as a whole
  std::string what;
};

struct Verified {
  long long rows = 0;
  std::string head;                    // hash of the last row; 64 zeros where there is none
  std::optional<long long> kept_head;  // number of the row that has the hash asked for
  std::optional<long long> beside;     // number of the row that has the hash kept beside the record
  std::vector<Problem> problems;       // empty: every row that is there is as it was written, in its order
  std::vector<Problem> times;          // rows as they were written, with times that somebody should look at
};

// `head`: a hash that was printed once and kept elsewhere, which some row must have; empty: none was kept, and rows
// missing at the end are found only by the hash that is kept beside the record.
std::variant<Verified, Fault> verify(const std::string& file, std::string_view head);

}  // namespace firstpick::decision_log
