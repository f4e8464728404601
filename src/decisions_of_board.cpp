#include "decisions_of_board.hpp"

#include "version.hpp"

namespace firstpick {

std::vector<decision_log::Decision> decisions_of(const board::Board& board, const std::string& by,
                                                 long long clock_utc_s) {
  std::vector<decision_log::Decision> decisions;
  for (const board::Line& line : board.lines)
    for (std::size_t piece = 0; piece < line.count; ++piece)
      decisions.push_back({.decided_at = clock::iso_text(board.zone, board.made_utc_s),
                           .by = by,
                           .plant = board.plant,
                           .shift_file = board.file,
                           .form = line.form,
                           .mark = line.mark,
                           .serial = serial_of(line, piece),
                           .verdict = std::string(checks::word_for(line.judged.verdict)),
                           .rule = line.judged.rule,
                           .reason = line.judged.reason,
                           .prediction = words_for(line.judged.expected, board.zone, board.made_utc_s),
                           .evidence = line.judged.evidence,
                           .report = line.judged.pour_report,
                           .plan_file = line.plan_file,
                           .pour_file = line.pour_file,
                           .rules = line.rests_on.rules,
                           .shift_sha256 = board.shift_fingerprint,
                           .plan_sha256 = line.rests_on.plan,
                           .pour_sha256 = line.rests_on.pour,
                           .tables_sha256 = board.tables_fingerprint,
                           .answer_sha256 = line.rests_on.answer,
                           .program = "firstpick " + std::string(program_version),
                           .recorded_at = clock::iso_text(board.zone, clock_utc_s)});
  return decisions;
}

}  // namespace firstpick
