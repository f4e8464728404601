// The board of one shift, before anyone lays it out: each line of the shift file with its verdict and why, in
// the order in which the crane should take them. Output reads this and decides nothing.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "checks/report.hpp"
#include "clock/zone.hpp"
#include "record/source.hpp"
#include "units/print.hpp"

namespace firstpick::board {

using checks::Verdict;

// A prediction from the growth curve of the pour, or the calibration of its mix. It never makes a GO, and says what would have to be shown
// still.
struct Expected {
  enum class Kind {
    none,  // no prediction, or strength is not all that is missing
    at,    // the curve has the strength at that time
    due    // by the curve the strength is there already: specimens have to show it
  };
  Kind kind = Kind::none;
  long long utc_s = 0;  // of the time, in whole minutes; of the question where due
  std::optional<long long>
      slow_utc_s;  // of a mix like the slowest twentieth of those measured; absent: never
  bool has_band = true;  // false: by the calibration of the mix, of which no slow ones are known
  std::string curve;
};

// What one plan with the evidence of one pour comes to at the time of the board.
struct Judged {
  Verdict verdict = Verdict::hold;
  bool checked = false;                       // false: a file is faulty, nothing was evaluated
  std::string rule, subject, reason, remedy;  // what governs; empty where the verdict is GO
  std::size_t more = 0;                       // other rules that stop the lift too
  std::string evidence;                       // what shows the strength, in words
  std::vector<std::string> notes;             // what a reader must know of it, where it stops nothing
  std::string pour_report;                    // number of the test report
  std::optional<long long> counts_until_utc_s;  // end of valid_for of the specimens
  std::optional<Stress> usable, required;
  Expected expected;
  checks::SignOffState sign_off;              // of the file beside the plan
};

// Hashes (SHA-256, hexadecimal) of what a verdict rests on.
struct RestsOn {
  std::string plan, pour;  // of the whole files, pour with what it names; pour empty where there is none
  std::string answer;      // of program, rule set, tables, plan, pour and time together
  std::string rules;       // id of the rule set
};

struct Line {
  std::size_t position = 0;          // in the shift file, from 1
  std::string plan_file, pour_file;  // below the folder of the shift file, as it names them
  std::string mark, title, revision, form;
  std::vector<std::string> serials;
  std::size_t count = 0;
  std::optional<long long> priority;
  UnitSystem units = UnitSystem::si;
  Judged judged;
  RestsOn rests_on;
};

struct Board {
  std::string file, plant;
  clock::Zone zone;
  long long starts_utc_s = 0, ends_utc_s = 0, made_utc_s = 0;
  long long stale_after_s = 0;  // never past the end of the shift, or of the evidence of a line that is GO
  std::vector<Line> lines;          // in the order for the crane
  std::vector<Source> unconfirmed;  // values from memory that took part
  std::vector<std::string> choices, cautions, overridden, not_checked;
  std::string tables_fingerprint, shift_fingerprint;
};

std::size_t pieces_with(const Board& board, Verdict verdict);

// "until about 09:40", "specimens are due": always to be shown as a prediction. Empty where there is none.
std::string words_for(const Expected& expected, const clock::Zone& zone, long long made_utc_s);

// "a slow mix until about 14:20", "a slow mix not within a week": of the slowest twentieth of the mixes measured. Empty
// where there is no prediction of a time, or none is known of slow mixes.
std::string slow_words_for(const Expected& expected, const clock::Zone& zone, long long made_utc_s);

// What a line goes by: "BC-0211, BC-0212", or "4 pieces".
std::string pieces_in_words(const Line& line);

// Of one piece of a line, from 0: its serial, or "2 of 4".
std::string serial_of(const Line& line, std::size_t piece);

}  // namespace firstpick::board
