// The least strength at which each rule passes, found on the rules themselves.
//
//   g(f) > 0 where the rule fails or is missing for any subject, < 0 where it passes for all
//
// g is the worst utilization over its limit, less 1, where there is one, so that the search is quick; its sign is always
// that of the judgement. Bracketed by `weakest` and `strongest`; rules that judge alike at both do not depend on strength.
//
// Source   TOMS 748: Alefeld, Potra, Shi, ACM Trans. Math. Software 21 (1995) 327, as Boost.Math has it. The upper end of the
//          last bracket counts: the rule was seen to pass there.

#include "checks/needed_strength.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include <boost/math/tools/toms748_solve.hpp>

#include "checks/cracked_inserts.hpp"
#include "checks/evaluate.hpp"
#include "checks/insert_modes.hpp"
#include "checks/rule.hpp"
#include "checks/verdict.hpp"
#include "strength/strength_at_lift.hpp"

namespace firstpick::checks {

namespace {

constexpr double weakest_MPa = 0.1, strongest_MPa = 200.0;  // beyond any concrete that is lifted
constexpr double within = 1e-3;                             // of the strength found
constexpr double least_sign = 1e-9;
constexpr double whole_within = 1e-9;                       // of a step: no step more for the noise of a product

bool of_the_test(const Rule& rule) { return rule.id == "strength-evidence" || rule.id == "evidence-age"; }

bool passes(const Finding& finding) { return finding.result == Result::pass || finding.result == Result::note; }

double miss(const Finding& finding) {
  const double over = finding.utilization.value_or(std::nan("")) / finding.limit.value_or(1.0) - 1.0;
  if (passes(finding)) return std::isfinite(over) ? std::clamp(over, -1.0, -least_sign) : -1.0;
  return std::isfinite(over) ? std::clamp(over, least_sign, 10.0) : 10.0;
}

struct Judged {
  double worst = -1.0;
  std::string subject;
};

std::vector<Finding> findings_at(const Rule& rule, const StageFacts& facts) {
  Trace silent;
  return judge(rule, facts, silent);
}

Judged worst_of(const std::vector<Finding>& findings) {
  Judged worst;
  for (const Finding& finding : findings)
    if (const double by = miss(finding); worst.subject.empty() || by > worst.worst) worst = {by, finding.subject};
  return worst;
}

std::optional<RuleNeed> need_of(const Rule& rule, const StageFacts& facts) {
  if (rule.at_any_strength) return {};
  StageFacts changed = facts;
  const auto at = [&](double f_MPa) {
    set_strength(changed, f_MPa * MPa);
    return worst_of(findings_at(rule, changed));
  };
  const Judged weak = at(weakest_MPa), strong = at(strongest_MPa);
  if (weak.worst < 0.0 || strong.worst > 0.0) return {};
  std::uintmax_t steps = 100;
  auto [low, high] = boost::math::tools::toms748_solve(
      [&](double f_MPa) { return at(f_MPa).worst; }, weakest_MPa, strongest_MPa, weak.worst, strong.worst,
      [](double low_MPa, double high_MPa) { return high_MPa - low_MPa <= within * high_MPa; }, steps);
  // A whole step of the drawing within the bracket, if it passes, spares the next one.
  const double step_MPa = in(MPa, facts.rules.strength_step.value);
  if (const double whole = std::floor(high / step_MPa) * step_MPa; whole >= low && whole < high && at(whole).worst < 0.0)
    high = whole;
  const Judged found = at(high);
  if (!(found.worst < 0.0)) return {};
  return RuleNeed{rule.id, high * MPa, at(high * (1.0 - 2.0 * within)).subject};
}

// With what the coverage guard finds; the test itself taken as good.
std::vector<Finding> all_findings(const StageFacts& facts) {
  std::vector<Finding> all;
  for (const Rule& rule : all_rules()) {
    if (of_the_test(rule)) all.push_back(passed(rule.id, facts.plan.piece.mark));
    else
      for (Finding& finding : findings_at(rule, facts)) all.push_back(std::move(finding));
  }
  for (Finding& gap : coverage_gaps(facts, all)) all.push_back(std::move(gap));
  return all;
}

Stress rounded_up(Stress strength, Stress step) {
  return std::ceil((strength / step).value() - whole_within) * step;
}

}  // namespace

void set_strength(StageFacts& facts, Stress strength) {
  Trace silent;
  facts.in_words = false;
  facts.usable_strength = strength;
  facts.formula_strength = strength::formula_strength(strength, facts.rules, silent);
  facts.modes = {};
  count_cracks(facts, facts.stage.kind != plan::StageKind::turn);
  facts.modes = mode_table(facts);
}

StageFacts with_strength(const StageFacts& facts, Stress strength) {
  StageFacts changed = facts;
  set_strength(changed, strength);
  return changed;
}

StageNeed needed_strength(const StageFacts& facts) {
  StageNeed need{.kind = facts.stage.kind, .rigging = facts.stage.rigging};
  for (const Rule& rule : all_rules())
    if (!of_the_test(rule))
      if (auto of_rule = need_of(rule, facts)) need.rules.push_back(std::move(*of_rule));
  std::ranges::stable_sort(need.rules, std::greater{}, &RuleNeed::strength);

  StageFacts strongest = with_strength(facts, strongest_MPa * MPa);
  strongest.in_words = true;
  for (Finding& finding : all_findings(strongest))
    if (!passes(finding)) need.not_mended.push_back(std::move(finding));

  if (need.rules.empty()) return need;
  const Stress step = facts.rules.strength_step.value;
  Stress print = rounded_up(need.rules.front().strength, step);
  if (!(print >= need.rules.front().strength)) print += step;
  need.to_print = print;
  need.verdict = verdict_of(all_findings(with_strength(facts, print)));
  return need;
}

}  // namespace firstpick::checks
