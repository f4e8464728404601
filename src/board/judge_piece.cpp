#include "board/judge_piece.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "board/expected_strength.hpp"
#include "board/governing.hpp"
#include "board/pour_evidence.hpp"
#include "board/zoned_times.hpp"
#include "checks/evaluate.hpp"
#include "checks/words_on_bending.hpp"
#include "strength/break_statistics.hpp"
#include "strength/log_doubt.hpp"

namespace firstpick::board {

namespace {

constexpr const char* pour_reason = "pour-evidence";  // words of the board beside the ids of rules
constexpr const char* cast_reason = "cast-time";
constexpr const char* log_reason = "temperature-log";
constexpr const char* time_reason = "time-in-zone";
constexpr const char* shift_reason = "shift-hours";
constexpr const char* file_reason = "file-not-read";

// Why the piece cannot be checked with its evidence, and under which word.
struct Conflict {
  const char* rule;
  std::string reason, remedy;
};

std::optional<Conflict> take_evidence(plan::Plan& plan, checks::StrengthQuestion* pour, const PieceQuestion& question,
                                      const tables::Tables& tables) {
  if (const auto fault = put_into_zone(plan, question.zone))
    return Conflict{time_reason, "in the plan: " + fault->what, fault->help};
  if (pour)
    if (const auto fault = put_into_zone(*pour, question.zone))
      return Conflict{time_reason, "in the pour: " + fault->what, fault->help};
  const auto own = plan.concrete.evidence ? plan.concrete.evidence->cast : std::nullopt;
  if (const auto cast = pour && cast_of(*pour) ? cast_of(*pour) : own; cast && question.cast)
    if (const auto other = other_pour(*question.cast, *cast, question.rules))
      return Conflict{cast_reason, other->why, other->remedy};
  if (!pour) return {};
  auto concrete = concrete_of(plan.concrete, *pour);
  if (const auto* gap = std::get_if<NotAssessed>(&concrete))
    return Conflict{pour_reason, gap->why, gap->remedy};
  plan.concrete = std::move(std::get<plan::Concrete>(concrete));
  if (!pour->log || !tables.maturity || question.rules.log_doubts.value != tables::LogDoubts::hold) return {};
  if (const auto doubt = strength::doubt_about(*pour->log, cast_of(*pour), *tables.maturity))
    return Conflict{log_reason, doubt->why, doubt->remedy};
  return {};
}

// What a reader of the board must know of bending and evidence, where it stops nothing.
void tell_notes(const plan::Plan& plan, const checks::Report& report, const checks::StrengthQuestion* pour,
                const PieceQuestion& question, const tables::Tables& tables, Judged& judged) {
  for (std::string& words : checks::words_on_bending(plan, report.stages)) judged.notes.push_back(std::move(words));
  if (plan.concrete.evidence && judged.usable)
    if (std::string wide = strength::wide_range_text(*plan.concrete.evidence, tables); !wide.empty())
      judged.notes.push_back(std::move(wide));
  if (!pour || !pour->log || !tables.maturity) return;
  for (const Diagnostic& doubt : pour->log->doubts)
    judged.notes.push_back(fmt::format("{}:{}: {}", doubt.file, doubt.place.line, doubt.what));
  for (std::string& remark : strength::remarks_on(*pour->log, cast_of(*pour), *tables.maturity))
    judged.notes.push_back(std::move(remark));
  if (const auto colder =
          strength::colder_beside(*pour->log, cast_of(*pour), question.now.seconds, *tables.maturity))
    judged.notes.push_back(colder->why);
}

// What the check says of a plan alone, in the words of a board: the specimens belong into the file of the pour.
void tell_whose_specimens(const plan::Plan& plan, const checks::StrengthQuestion* pour, Judged& judged) {
  if (plan.concrete.evidence && pour && !pour->mark.empty()) judged.evidence += fmt::format(", of '{}'", pour->mark);
  if (plan.concrete.evidence && !plan.concrete.evidence->valid_for) judged.evidence += ", without a limit on its age";
  if (plan.concrete.evidence || !pour || judged.rule != "strength-evidence") return;
  judged.reason = "no specimens of this pour have been broken";
  judged.remedy = "break specimens cured with the piece and write [evidence] in the file of the pour";
}

// Concrete gains strength, so an old test of this pour would be on the safe side; but a form is poured again, and a file
// that nobody wrote anew still holds the test of the pour before. Without a limit nothing tells the two apart.
bool hold_without_limit(const std::optional<plan::Evidence>& evidence, const std::string& mark, Judged& judged) {
  if (judged.verdict != Verdict::go || (evidence && evidence->valid_for)) return false;
  judged.verdict = Verdict::hold;
  judged.rule = "evidence-age";
  judged.subject = mark;
  judged.reason = fmt::format("how long the test{} may be used is not stated: it may be of an earlier pour in this form",
                              evidence && evidence->tested ? " of " + evidence->tested->text : "");
  judged.remedy = fmt::format("make sure that the test is of this pour, and write valid_for in {}",
                              evidence ? evidence->section : std::string("[evidence]"));
  return true;
}

// A pour is named by somebody who may take the wrong papers: the time of casting on the piece tells.
void hold_without_cast(const std::optional<plan::Timestamp>& cast, const std::string& mark, Judged& judged) {
  if (judged.verdict != Verdict::go || cast) return;
  judged.verdict = Verdict::hold;
  judged.rule = cast_reason;
  judged.subject = mark;
  judged.reason = "when these pieces were cast is not stated: nothing ties them to the pour of the test";
  judged.remedy = "write cast in [[piece]], as it stands on the piece or in the casting book";
}

}  // namespace

PieceAnswer judge_piece(const PieceQuestion& question, const tables::Tables& tables,
                        std::string fingerprint) {
  plan::Plan plan = question.plan;
  std::optional<checks::StrengthQuestion> pour;
  if (question.pour) pour = *question.pour;
  const auto conflict = take_evidence(plan, pour ? &*pour : nullptr, question, tables);
  if (conflict) plan.concrete.evidence.reset();
  ask_at(plan, question.now);
  if (conflict)
    for (plan::Stage& stage : plan.stages) stage.at = question.now;

  checks::KnownBending of_this_answer;
  checks::KnownBending& bending = question.bending ? *question.bending : of_this_answer;
  PieceAnswer answer{
      {}, checks::evaluate_plan(plan, question.body, question.rules, tables, std::move(fingerprint),
                                question.sign_off, &bending)};
  const checks::Report& report = answer.report;
  Judged& judged = answer.judged;
  judged.checked = true;
  judged.verdict = report.verdict;
  judged.evidence = report.strength_basis;
  if (const auto& evidence = plan.concrete.evidence) {
    judged.pour_report = evidence->report;
    if (evidence->tested && evidence->valid_for)
      judged.counts_until_utc_s =
          evidence->tested->seconds + static_cast<long long>(std::floor(in(second, *evidence->valid_for)));
  }
  judged.usable = report.usable_strength;
  judged.required = report.required_strength;
  judged.sign_off = question.sign_off;
  tell_governing(report, judged);
  tell_whose_specimens(plan, question.pour, judged);
  tell_notes(plan, report, pour ? &*pour : nullptr, question, tables, judged);
  if (conflict && judged.verdict != Verdict::no_go) {
    judged.verdict = Verdict::hold;
    judged.rule = conflict->rule;
    judged.subject = plan.piece.mark;
    judged.reason = conflict->reason;
    std::erase_if(judged.notes, [&](const std::string& note) { return judged.reason.ends_with(note); });  // told already
    judged.remedy = conflict->remedy;
  }
  const bool may_be_stale = hold_without_limit(plan.concrete.evidence, plan.piece.mark, judged);
  hold_without_cast(question.cast, plan.piece.mark, judged);
  if (conflict || may_be_stale || judged.verdict == Verdict::go || judged.rule == cast_reason || !pour) return answer;
  if (!pour->growth || !pour->growth->strength_at_28_days) return answer;
  const auto needed = strength_that_goes(plan, question.body, question.rules, tables, question.now,
                                         *pour->growth->strength_at_28_days, bending);
  if (needed) judged.expected = expected_strength(*pour, *needed, question.rules, tables, question.now);
  return answer;
}

Judged not_checked(const std::string& first_fault) {
  return {.rule = file_reason,
          .reason = "not checked: " + first_fault,
          .remedy = "correct the file",
          .evidence = "none"};
}

void hold_outside_shift(Board& board) {
  const bool before = board.made_utc_s < board.starts_utc_s;
  if (!before && board.made_utc_s <= board.ends_utc_s) return;
  for (Line& line : board.lines) {
    if (line.judged.verdict != Verdict::go) continue;
    line.judged.verdict = Verdict::hold;
    line.judged.rule = shift_reason;
    line.judged.subject = line.mark;
    line.judged.reason = before ? fmt::format("the shift has not begun: it starts {}",
                                              clock::words_for_moment(board.zone, board.starts_utc_s))
                                : fmt::format("the shift is over: it ended {}",
                                              clock::words_for_moment(board.zone, board.ends_utc_s));
    line.judged.remedy = "write the hours of this shift in the shift file";
  }
}

void limit_age(Board& board) {
  long long until_s = std::max(board.ends_utc_s, board.made_utc_s);
  for (const Line& line : board.lines)
    if (line.judged.verdict == Verdict::go && line.judged.counts_until_utc_s)
      until_s = std::min(until_s, *line.judged.counts_until_utc_s);
  board.stale_after_s = std::min(board.stale_after_s, std::max(0LL, until_s - board.made_utc_s));
}

}  // namespace firstpick::board
