#include "checks/evaluate_strength.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "checks/standing_texts.hpp"
#include "checks/strength_parts.hpp"
#include "checks/unconfirmed_values.hpp"
#include "strength/evidence_age.hpp"
#include "strength/log_doubt.hpp"
#include "strength/moment_text.hpp"
#include "strength/strength_at_lift.hpp"

namespace firstpick::checks {

namespace {

struct Credit {
  Outcome<Stress> strength = NotAssessed{};
  std::string rests_on;
};

// The clock on the wall where the question was asked, from its moment with an offset.
AskedAt with_wall_clock(AskedAt asked) {
  if (!asked.local && asked.zoned) {
    plan::Timestamp wall{.seconds = asked.zoned->seconds + asked.zoned->offset_seconds};
    wall.text = strength::words_for_moment(wall.seconds, 0);
    wall.text.resize(wall.text.size() - 7);  // without the offset that is not there
    asked.local = wall;
  }
  return asked;
}

const std::optional<plan::Timestamp>& now_beside(const plan::Timestamp& moment, const AskedAt& asked) {
  return moment.has_offset ? asked.zoned : asked.local;
}

// A lift whose time has passed is asked for now, as on the board of a shift.
void ask_not_before_now(plan::Stage& stage, const std::string& what, const StrengthQuestion& question,
                        StrengthReport& report) {
  const auto& evidence = question.concrete.evidence;
  const bool zoned = evidence && evidence->tested && evidence->tested->has_offset;
  if (!stage.at) {
    stage.at = zoned ? question.asked_at.zoned : question.asked_at.local;
    return;
  }
  const auto& now = now_beside(*stage.at, question.asked_at);
  if (!now || stage.at->seconds >= now->seconds) return;
  report.notes.push_back(fmt::format("{} was to be at {}, which has passed: it is asked for now", what, stage.at->text));
  stage.at = now;
}

// What the clock says against the test, whatever it shows.
std::optional<NotAssessed> against_the_clock(const plan::Evidence& evidence, const AskedAt& asked) {
  if (!evidence.tested) return {};
  const auto& now = now_beside(*evidence.tested, asked);
  if (!now)
    return NotAssessed{"the time of the question has no zone, and the test has one",
                       "ask with its offset, as --now 2026-03-03T07:20:00-05:00"};
  if (evidence.tested->seconds <= now->seconds) return {};
  return NotAssessed{fmt::format("the test of {} is after the time of the question, {}", evidence.tested->text, now->text),
                     fmt::format("correct tested in {}, or ask again when it is made", evidence.section)};
}

// What else of the pour stands against its specimens.
std::optional<NotAssessed> against_the_pour(const plan::Evidence& evidence, const StrengthQuestion& question,
                                            const tables::RuleSet& rules, const tables::Tables& tables) {
  const auto cast_of_log = question.log_file ? question.log_file->cast : std::nullopt;
  if (const auto conflict = strength::cast_conflict(evidence, cast_of_log)) return conflict;
  if (!question.log || !tables.maturity || rules.log_doubts.value != tables::LogDoubts::hold) return {};
  return strength::doubt_about(*question.log, cast_of_log ? cast_of_log : evidence.cast, *tables.maturity);
}

// Evidence without its age is no evidence.
Outcome<Stress> by_specimens(const Outcome<Stress>& usable, const StrengthQuestion& question, const plan::Stage& stage,
                             const tables::RuleSet& rules, const tables::Tables& tables, StrengthReport& report) {
  if (!is_assessed(usable)) return usable;
  const plan::Evidence& evidence = question.concrete.evidence.value();  // which is what is usable
  if (const auto fault = against_the_clock(evidence, question.asked_at)) return *fault;
  const auto age = strength::evidence_age(question.concrete, stage, rules, report.trace);
  if (const auto* gap = std::get_if<NotAssessed>(&age)) return *gap;
  if (const auto doubt = against_the_pour(evidence, question, rules, tables)) return *doubt;
  if (const std::string& note = std::get<strength::EvidenceAge>(age).note;
      !note.empty() && std::ranges::find(report.notes, note) == report.notes.end())
    report.notes.push_back(note);
  return usable;
}

// Maturity stands in for specimens only where none of this pour have been broken: those that do not count may be the
// ones that know better.
Credit credit_of(const Outcome<Stress>& specimens, const Outcome<Stress>& maturity, bool has_specimens,
                 bool has_maturity) {
  if (is_assessed(specimens)) return {specimens, "specimens"};
  if (has_specimens) {
    const auto& gap = std::get<NotAssessed>(specimens);
    return {is_assessed(maturity)
                ? NotAssessed{gap.why + "; maturity does not stand in for specimens that were broken", gap.remedy}
                : gap,
            ""};
  }
  if (is_assessed(maturity)) return {maturity, "maturity"};
  const auto& first = std::get<NotAssessed>(specimens);
  if (!has_maturity) return {first, ""};
  const auto& second = std::get<NotAssessed>(maturity);
  return {NotAssessed{fmt::format("{}; {}", first.why, second.why),
                      second.remedy.empty() ? first.remedy : second.remedy},
          ""};
}

StrengthNeeded judged(const StrengthQuestion::Lift& lift, const Outcome<Stress>& required, const Credit& credit) {
  StrengthNeeded needed{.what = lift.what, .rests_on = credit.rests_on};
  Outcome<Demand<Stress>> demand = NotAssessed{};
  Outcome<Resistance<Stress>> resistance = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&required)) demand = *gap;
  else demand = Demand<Stress>{std::get<Stress>(required)};
  if (const auto* gap = std::get_if<NotAssessed>(&credit.strength)) resistance = *gap;
  else resistance = Resistance<Stress>{std::get<Stress>(credit.strength)};

  const Comparison comparison = compare(demand, resistance);
  needed.result = comparison.result;
  needed.utilization = comparison.utilization;
  needed.why = comparison.why;
  needed.remedy = comparison.remedy;
  if (const auto* value = std::get_if<Stress>(&required)) needed.required = *value;
  if (const auto* value = std::get_if<Stress>(&credit.strength)) needed.credited = *value;
  if (comparison.result == Result::fail) {
    needed.why = "the strength shown is below the strength needed";
    needed.remedy = "let the concrete gain strength and test again";
  }
  return needed;
}

std::vector<std::string> cautions_for(const tables::RuleSet& rules) {
  std::vector<std::string> cautions = {
      "This is the strength alone, and no verdict on a lift: firstpick check looks at the rest of it.",
      "Specimens tell the piece only as far as they were cast, cured and broken with it.",
      "A strength from maturity or from a growth curve is an estimate, and says nothing of badly placed, frozen or "
      "dried-out concrete.",
  };
  for (std::string& caution : cautions_of(rules)) cautions.push_back(std::move(caution));
  return cautions;
}

Verdict verdict_on(const std::vector<StrengthNeeded>& needed) {
  if (needed.empty()) return Verdict::hold;
  Verdict worst = Verdict::go;
  for (const StrengthNeeded& each : needed)
    worst = std::max(worst, each.result == Result::fail   ? Verdict::no_go
                            : each.result == Result::pass ? Verdict::go
                                                          : Verdict::hold);
  return worst;
}

}  // namespace

std::string_view strength_word_for(Verdict verdict) {
  switch (verdict) {
    case Verdict::go: return "reached";
    case Verdict::hold: return "HOLD";
    case Verdict::no_go: return "below";
  }
  return "HOLD";
}

StrengthReport evaluate_strength(const StrengthQuestion& asked, const tables::RuleSet& rules,
                                 const tables::Tables& tables, std::string fingerprint) {
  StrengthQuestion question = asked;
  question.asked_at = with_wall_clock(asked.asked_at);
  StrengthReport report{.file = question.file,
                        .mark = question.mark,
                        .units = question.units,
                        .fingerprint = std::move(fingerprint),
                        .rules = rules.id,
                        .rules_title = rules.title,
                        .basis = strength::basis_of(question.concrete, rules),
                        .choices = strength_choices_of(rules),
                        .cautions = cautions_for(rules),
                        .overridden = tables.overridden,
                        .trace = Trace::recording()};
  const auto& at = question.asked_at.zoned ? question.asked_at.zoned : question.asked_at.local;
  report.asked_at = at ? at->text : "no time stated";

  auto usable = strength::usable_strength(question.concrete, rules, tables, report.trace);
  if (!question.is_plan && !question.concrete.evidence) {
    report.basis = "no broken specimens in the file";
    usable = NotAssessed{"no broken specimens are in the file",
                         "break field-cured specimens and write [evidence] with specimen, cure, cast, tested and results"};
  }
  if (const auto* value = std::get_if<Stress>(&usable)) report.usable = *value;
  tell_specimens(question, tables, report);
  const Outcome<Stress> maturity = tell_maturity(question, rules, tables, report);

  for (const StrengthQuestion::Lift& lift : question.lifts) {
    plan::Stage stage = lift.stage;
    ask_not_before_now(stage, lift.what, question, report);
    const auto required = strength::required_strength(stage.kind, question.concrete, rules, report.trace);
    const auto specimens = by_specimens(usable, question, stage, rules, tables, report);
    report.needed.push_back(judged(lift, required,
                                   credit_of(specimens, maturity, question.concrete.evidence.has_value(),
                                             question.log.has_value())));
  }
  report.verdict = verdict_on(report.needed);
  tell_prediction(question, tables, report);
  tell_season(question, tables, report);
  report.unconfirmed = unconfirmed_in(report.trace);
  return report;
}

}  // namespace firstpick::checks
