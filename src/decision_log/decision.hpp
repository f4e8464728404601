// One decision as the record keeps it: who was told what of which piece, when, and what it rested on.
#pragma once

#include <array>
#include <string>
#include <string_view>

namespace firstpick::decision_log {

// All of it text, as it was shown. Hashes are SHA-256 in hexadecimal; empty where there is nothing of the
// kind.
struct Decision {
  std::string decided_at;  // "2026-03-03T07:20:00-06:00"
  std::string by;          // who asked for the board to be recorded
  std::string plant, shift_file, form;
  std::string mark, serial;      // serial: "2 of 4" where pieces have none
  std::string verdict;           // "GO", "HOLD", "NO-GO"
  std::string rule, reason;      // what governs; empty at GO
  std::string prediction;        // when the strength is expected; never a reason to lift
  std::string evidence, report;  // what shows the strength, and the number of the test report
  std::string plan_file, pour_file, rules;
  std::string shift_sha256, plan_sha256, pour_sha256, tables_sha256, answer_sha256;
  std::string program;      // "firstpick 0.1.0"
  std::string recorded_at;  // by the clock of the computer, whatever time the board was asked for; since format 2
};

struct Field {
  std::string_view name;  // column of the record, key of its JSON
  std::string Decision::*text;
  int since = 1;  // format
};

inline constexpr int this_format = 2;

// Every field, in the order of columns and of the bytes that are hashed. Never changed, only added to by a
// new format.
inline constexpr std::array<Field, 23> fields = {{
    {"decided_at", &Decision::decided_at},
    {"by", &Decision::by},
    {"plant", &Decision::plant},
    {"shift_file", &Decision::shift_file},
    {"form", &Decision::form},
    {"mark", &Decision::mark},
    {"serial", &Decision::serial},
    {"verdict", &Decision::verdict},
    {"rule", &Decision::rule},
    {"reason", &Decision::reason},
    {"prediction", &Decision::prediction},
    {"evidence", &Decision::evidence},
    {"report", &Decision::report},
    {"plan_file", &Decision::plan_file},
    {"pour_file", &Decision::pour_file},
    {"rules", &Decision::rules},
    {"shift_sha256", &Decision::shift_sha256},
    {"plan_sha256", &Decision::plan_sha256},
    {"pour_sha256", &Decision::pour_sha256},
    {"tables_sha256", &Decision::tables_sha256},
    {"answer_sha256", &Decision::answer_sha256},
    {"program", &Decision::program},
    {"recorded_at", &Decision::recorded_at, 2},
}};

struct Row {
  long long number = 0;  // 1, 2, 3, ...
  Decision decision;
  std::string previous;  // hash of the row before; of the first row 64 zeros
  std::string hash;
  int format = this_format;
};

// What is hashed: format, number, hash of the row before, then each field as name, length in bytes, bytes; so
// that no two different rows have the same bytes.
std::string canonical_bytes(const Row& row);

// Of canonical_bytes: 64 hexadecimal digits.
std::string hash_of(const Row& row);

inline const std::string no_row_before = std::string(64, '0');

}  // namespace firstpick::decision_log
