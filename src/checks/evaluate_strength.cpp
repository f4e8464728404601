#include "checks/evaluate_strength.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "checks/standing_texts.hpp"
#include "checks/strength_parts.hpp"
#include "checks/unconfirmed_values.hpp"
#include "strength/evidence_age.hpp"
#include "strength/strength_at_lift.hpp"

namespace firstpick::checks {

namespace {

struct Credit {
  Outcome<Stress> strength = NotAssessed{};
  std::string rests_on;
};

// Evidence without its age is no evidence.
Outcome<Stress> by_specimens(const Outcome<Stress>& usable, const plan::Concrete& concrete, const plan::Stage& stage,
                             StrengthReport& report) {
  if (!is_assessed(usable)) return usable;
  const auto age = strength::evidence_age(concrete, stage, report.trace);
  if (const auto* gap = std::get_if<NotAssessed>(&age)) return *gap;
  if (const std::string& note = std::get<strength::EvidenceAge>(age).note;
      !note.empty() && std::ranges::find(report.notes, note) == report.notes.end())
    report.notes.push_back(note);
  return usable;
}

Credit credit_of(const Outcome<Stress>& specimens, const Outcome<Stress>& maturity, bool has_maturity) {
  if (is_assessed(specimens)) return {specimens, "specimens"};
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

StrengthReport evaluate_strength(const StrengthQuestion& question, const tables::RuleSet& rules,
                                 const tables::Tables& tables, std::string fingerprint) {
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
    const bool zoned = question.concrete.evidence && question.concrete.evidence->tested &&
                       question.concrete.evidence->tested->has_offset;
    if (!stage.at) stage.at = zoned ? question.asked_at.zoned : question.asked_at.local;
    const auto required = strength::required_strength(stage.kind, question.concrete, rules, report.trace);
    const auto specimens = by_specimens(usable, question.concrete, stage, report);
    report.needed.push_back(judged(lift, required, credit_of(specimens, maturity, question.log.has_value())));
  }
  report.verdict = verdict_on(report.needed);
  tell_prediction(question, tables, report);
  tell_season(question, tables, report);
  report.unconfirmed = unconfirmed_in(report.trace);
  return report;
}

}  // namespace firstpick::checks
