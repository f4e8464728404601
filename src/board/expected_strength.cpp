#include "board/expected_strength.hpp"

#include <algorithm>

#include "board/calibrated_time.hpp"
#include "checks/evaluate.hpp"
#include "strength/strength_at_lift.hpp"

namespace firstpick::board {

namespace {

constexpr double just_above = 1.0 + 1e-9;  // past the rounding of the division below
const Stress near_enough = 0.05 * MPa;
constexpr long long a_day_s = 86400;  // the age of specimens that were never cast; nothing depends on it

std::optional<Stress> most_required(const plan::Plan& plan, const tables::RuleSet& rules) {
  std::optional<Stress> most;
  Trace silent;
  for (const plan::Stage& stage : plan.stages) {
    const auto required = strength::required_strength(stage.kind, plan.concrete, rules, silent);
    if (!is_assessed(required)) return {};
    const Stress value = std::get<Stress>(required);
    if (!most || value > *most) most = value;
  }
  return most;
}

// Specimens from which the rule set counts `wanted`, whatever kind the tables convert.
std::optional<plan::Evidence> specimens_that_show(Stress wanted, const plan::Plan& plan,
                                                  const tables::RuleSet& rules, const tables::Tables& tables,
                                                  const plan::Timestamp& now) {
  const std::size_t least = static_cast<std::size_t>(std::max(1.0, rules.minimum_results.value.value()));
  plan::Timestamp cast = now;
  cast.seconds -= a_day_s;
  Trace silent;
  for (const auto& [name, kind] : tables.specimens) {
    if (kind.shape != "cylinder") continue;
    plan::Evidence evidence{
        .specimen = plan::Specimen{plan::SpecimenShape::cylinder, kind.width, kind.height},
        .cure = plan::Cure::field,
        .cast = cast,
        .tested = now,
        .results = std::vector<Stress>(std::max<std::size_t>(least, 3), wanted)};
    plan::Concrete concrete = plan.concrete;
    concrete.evidence = evidence;
    const auto counted = strength::usable_strength(concrete, rules, tables, silent);
    const auto* usable = std::get_if<Stress>(&counted);
    if (!usable || !(*usable > Stress{})) continue;
    const double scale = just_above * (wanted / *usable).value();
    for (Stress& result : evidence.results) result *= scale;
    return evidence;
  }
  return {};
}

// Whether every stage would be GO with specimens that show `strength`.
bool goes_with(Stress strength, plan::Plan& plan, const piece::Body& body, const checks::Anchorage& anchorage,
               const tables::RuleSet& rules, const tables::Tables& tables, const plan::Timestamp& now,
               checks::KnownBending& bending) {
  plan.concrete.evidence = specimens_that_show(strength, plan, rules, tables, now);
  if (!plan.concrete.evidence || plan.stages.empty()) return false;
  Trace silent;
  for (std::size_t i = 0; i < plan.stages.size(); ++i) {
    auto facts = checks::stage_facts(plan, plan.stages[i], body, anchorage, rules, tables, silent, bending.of_stage(i));
    facts.in_words = false;
    if (checks::evaluate_stage(facts, silent).verdict != Verdict::go) return false;
  }
  return true;
}

}  // namespace

std::optional<Stress> strength_that_goes(const plan::Plan& plan, const piece::Body& body,
                                         const tables::RuleSet& rules, const tables::Tables& tables,
                                         const plan::Timestamp& now, Stress most, checks::KnownBending& bending) {
  const auto required = most_required(plan, rules);
  if (!required || !is_finite(most)) return {};
  plan::Plan imagined = plan;
  Trace silent;
  const checks::Anchorage anchorage = checks::anchorage(imagined, body, rules, tables, silent);  // of any strength
  const auto goes = [&](Stress strength) {
    return goes_with(strength, imagined, body, anchorage, rules, tables, now, bending);
  };
  if (goes(*required)) return required;
  Stress low = *required, high = most;
  if (!(high > low) || !goes(high)) return {};
  while (high - low > near_enough) {
    const Stress middle = 0.5 * (low + high);
    (goes(middle) ? high : low) = middle;
  }
  return high;
}

Expected expected_strength(const checks::StrengthQuestion& pour, Stress strength,
                           const tables::RuleSet& rules, const tables::Tables& tables,
                           const plan::Timestamp& now) {
  if (!pour.growth) return {};
  checks::StrengthQuestion question = pour;
  question.concrete.form_stripping_strength = strength;
  question.asked_at = {.local = now, .zoned = now};
  question.lifts = {
      {"strip", plan::Stage{.kind = plan::StageKind::strip, .rigging = {}, .crane = {}, .at = now}}};

  const auto report = checks::evaluate_strength(question, rules, tables, {});
  if (!report.prediction || !report.prediction->earliest_utc_s) return {};
  Expected expected{.kind = Expected::Kind::at,
                    .utc_s = *report.prediction->earliest_utc_s,
                    .slow_utc_s = report.prediction->slow_utc_s,
                    .curve = report.prediction->curve};
  if (const auto calibrated = calibrated_time(pour, strength, tables, now)) {
    if (!calibrated->utc_s) return {};
    if (*calibrated->utc_s > expected.utc_s) {
      expected.utc_s = *calibrated->utc_s;
      expected.slow_utc_s.reset();
      expected.has_band = false;
      expected.curve = "calibration of " + pour.calibration->mix;
    }
  }
  if (expected.utc_s > now.seconds) return expected;
  if (pour.concrete.evidence) return {};
  expected.kind = Expected::Kind::due;
  expected.utc_s = now.seconds;
  return expected;
}

}  // namespace firstpick::board
