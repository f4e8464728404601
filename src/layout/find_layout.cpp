#include "layout/find_layout.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>

#include "layout/search.hpp"

namespace firstpick::layout {

namespace {

constexpr double same_within = 1e-9;             // of a use that position does not change
constexpr double barred_weight = 1e3, not_allowed = 1e6;
constexpr double next_rule = 0.01;               // weight of the next most used rule
constexpr int most_corrections = 3;              // of the estimate of cracking
constexpr std::size_t most_polished = 400;       // layouts on whole steps
constexpr std::string_view cracking = "piece-cracking";

using Steps = std::vector<long long>;            // of each freedom
using Tried = std::optional<JudgedLayout>;       // nothing: not allowed

class Search {
 public:
  Search(const Placement& placement, const piece::Body& body, const tables::RuleSet& rules, const tables::Tables& tables,
         const std::function<void(std::size_t)>& tell)
      : placement_(placement), body_(body), rules_(rules), tables_(tables), tell_(tell) {}

  LayoutSearch run(const JudgedLayout& drawn);

 private:
  Tried judged(const plan::Plan& plan, double& lack, bool in_full);
  double score(const Places& places);
  Merit estimated(const JudgedLayout& layout) const;
  const Tried& on_steps(const Steps& steps);
  const Tried& in_full(const Steps& steps);
  Steps polished(Steps from);
  Steps steps_of(const Places& places) const;
  Places places_of(const Steps& steps) const;
  void correct_by(const Steps& steps);

  const Placement& placement_;
  const piece::Body& body_;
  const tables::RuleSet& rules_;
  const tables::Tables& tables_;
  const std::function<void(std::size_t)>& tell_;
  std::shared_ptr<checks::BendingReuse> reuse_ = std::make_shared<checks::BendingReuse>();
  JudgedLayout drawn_estimated_;
  std::map<Steps, Tried> tried_, checked_;
  std::map<std::size_t, double> correction_;     // of each stage: cracking in full over its estimate
  LayoutSearch found_;
};

Tried Search::judged(const plan::Plan& plan, double& lack, bool full) {
  const auto moved = allowed_body(placement_, body_, plan);
  if (const auto* far = std::get_if<double>(&moved)) {
    lack = *far;
    return {};
  }
  ++(full ? found_.checked_in_full : found_.judged);
  if (!full) tell_(found_.judged);
  return judged_layout(plan, std::get<piece::Body>(moved), rules_, tables_, full ? nullptr : reuse_);
}

Merit Search::estimated(const JudgedLayout& layout) const {
  if (correction_.empty()) return found_.rules_of_position.merit(layout);
  JudgedLayout corrected = layout;
  for (Judged& finding : corrected.findings)
    if (const auto by = correction_.find(finding.stage); finding.rule == cracking && finding.use && by != correction_.end())
      *finding.use *= by->second;
  Merit merit = found_.rules_of_position.merit(corrected);
  merit.governs = nullptr;
  return merit;
}

double Search::score(const Places& places) {
  double lack = 0.0;
  const Tried tried = judged(placement_.placed(places, false), lack, false);
  if (!tried) return not_allowed * (1.0 + lack);
  found_.rules_of_position.learn(drawn_estimated_, *tried);
  const Merit merit = estimated(*tried);
  return barred_weight * static_cast<double>(merit.barred) + merit.all;
}

Steps Search::steps_of(const Places& places) const {
  Steps steps;
  for (const double at : placement_.rounded(places)) steps.push_back(std::llround(at / placement_.step_m()));
  return steps;
}

Places Search::places_of(const Steps& steps) const {
  Places places;
  for (const long long step : steps) places.push_back(static_cast<double>(step) * placement_.step_m());
  return places;
}

const Tried& Search::on_steps(const Steps& steps) {
  const auto [known, is_new] = tried_.try_emplace(steps);
  if (is_new) {
    double lack = 0.0;
    known->second = judged(placement_.placed(places_of(steps), true), lack, false);
    if (known->second) found_.rules_of_position.learn(drawn_estimated_, *known->second);
  }
  return known->second;
}

const Tried& Search::in_full(const Steps& steps) {
  const auto [known, is_new] = checked_.try_emplace(steps);
  double lack = 0.0;
  // Without an estimate both are the same judgement.
  if (is_new) known->second = reuse_->panel ? judged(placement_.placed(places_of(steps), true), lack, true) : on_steps(steps);
  return known->second;
}

// One and two freedoms a step this way and that, until none is better.
Steps Search::polished(Steps from) {
  const auto merit = [&](const Steps& steps) -> std::optional<Merit> {
    if (steps_of(places_of(steps)) != steps) return {};  // beyond its range
    const Tried& tried = on_steps(steps);
    if (!tried) return {};
    return estimated(*tried);
  };
  auto best = merit(from);
  for (bool better = true; better && tried_.size() < most_polished;) {
    better = false;
    const Steps centre = from;
    for (std::size_t i = 0; i < centre.size(); ++i)
      for (std::size_t j = i; j < centre.size(); ++j)
        for (const int by_i : {-1, 1})
          for (const int by_j : {-1, 1}) {
            if (i == j && by_i != by_j) continue;
            Steps next = centre;
            next[i] += by_i;
            if (j != i) next[j] += by_j;
            const auto there = merit(next);
            if (there && (!best || *there < *best)) best = there, from = next, better = true;
          }
  }
  return from;
}

void Search::correct_by(const Steps& steps) {
  const Tried &estimate = on_steps(steps), &full = in_full(steps);
  if (!estimate || !full) return;
  const auto most = [](const JudgedLayout& layout, std::size_t stage) {
    double use = 0.0;
    for (const Judged& finding : layout.findings)
      if (finding.stage == stage && finding.rule == cracking) use = std::max(use, finding.use.value_or(0.0));
    return use;
  };
  for (std::size_t stage = 0; stage < full->strengths.size(); ++stage)
    if (const double a = most(*estimate, stage), b = most(*full, stage); a > 0.0 && b > 0.0) correction_[stage] = b / a;
}

LayoutSearch Search::run(const JudgedLayout& drawn) {
  // What the estimate says of the plan as drawn, to see what position changes; and a third of the way along each freedom.
  drawn_estimated_ = judged_layout(placement_.plan(), body_, rules_, tables_, reuse_);
  if (reuse_->panel) {
    for (std::size_t stage = 0; stage < drawn.strengths.size(); ++stage)
      for (const Judged& finding : drawn_estimated_.findings)
        if (finding.stage == stage && finding.rule == cracking && finding.use)
          for (const Judged& same : drawn.findings)
            if (same.same_place(finding) && same.use && *finding.use > 0.0) correction_[stage] = *same.use / *finding.use;
  }
  for (std::size_t i = 0; i < placement_.size(); ++i)
    for (const double share : {1.0 / 3.0, 2.0 / 3.0}) {
      Places places = placement_.as_drawn();
      places[i] = placement_.low()[i] + share * (placement_.high()[i] - placement_.low()[i]);
      score(places);
    }
  const std::vector<Scored> candidates =
      search([&](const Places& places) { return score(places); },
             {placement_.low(), placement_.high(), placement_.as_drawn(), placement_.step_m()});

  std::optional<Steps> best;
  const auto look = [&](const Steps& steps) {
    const Tried& full = in_full(steps);
    if (!full) return;
    found_.rules_of_position.learn(drawn, *full);
    if (!best) return void(best = steps);
    const Merit given = found_.rules_of_position.merit(drawn), is = found_.rules_of_position.merit(*full),
                was = found_.rules_of_position.merit(*in_full(*best));
    if (is.improves(given) != was.improves(given) ? is.improves(given) : is < was) best = steps;
  };
  for (const Scored& candidate : candidates)
    if (candidate.score < not_allowed) {
      const Steps steps = polished(steps_of(candidate.places));
      if (on_steps(steps)) look(steps);
    }
  for (int i = 0; best && reuse_->panel && i < most_corrections; ++i) {
    correct_by(*best);
    const Steps next = polished(*best);
    if (checked_.contains(next)) break;
    look(next);
  }
  found_.drawn_is_allowed =
      placement_.drawn_in_range() &&
      std::holds_alternative<piece::Body>(allowed_body(placement_, body_, placement_.plan()));
  if (best && (!found_.drawn_is_allowed ||
               found_.rules_of_position.merit(*in_full(*best)).improves(found_.rules_of_position.merit(drawn))))
    found_.places = places_of(*best);
  return std::move(found_);
}

}  // namespace

void PositionRules::learn(const JudgedLayout& drawn, const JudgedLayout& other) {
  const auto add = [&](const Judged& finding) { depending_.insert({finding.stage, finding.rule, finding.subject}); };
  const bool alike = drawn.findings.size() == other.findings.size() &&
                     std::ranges::equal(drawn.findings, other.findings, &Judged::same_place);
  const auto differ = [](const Judged& a, const Judged& b) {
    if (a.use.has_value() != b.use.has_value() || a.result != b.result) return true;
    return a.use && !(std::abs(*a.use - *b.use) <= same_within * std::max(std::abs(*a.use), std::abs(*b.use)));
  };
  for (std::size_t i = 0; i < other.findings.size(); ++i) {
    const Judged& finding = other.findings[i];
    const auto same = alike ? drawn.findings.begin() + static_cast<std::ptrdiff_t>(i)
                            : std::ranges::find_if(drawn.findings, [&](const Judged& d) { return d.same_place(finding); });
    if (same == drawn.findings.end() || differ(*same, finding)) add(finding);
  }
}

bool PositionRules::depends(const Judged& finding) const {
  return depending_.contains({finding.stage, finding.rule, finding.subject});
}

Merit PositionRules::merit(const JudgedLayout& layout) const {
  Merit merit;
  std::map<std::string_view, double> of_rules;
  for (const Judged& finding : layout.findings) {
    if (finding.is_barred()) ++merit.barred;
    if (!finding.use || !depends(finding)) continue;
    double& most = of_rules.try_emplace(finding.rule, *finding.use).first->second;
    most = std::max(most, *finding.use);
    if (!merit.governs || *finding.use > merit.use) merit.use = *finding.use, merit.governs = &finding;
  }
  std::vector<double> uses;
  for (const auto& [rule, most] : of_rules) uses.push_back(most);
  std::ranges::sort(uses, std::greater{});
  double weight = 1.0;
  for (const double use : uses) merit.all += weight * use, weight *= next_rule;
  return merit;
}

LayoutSearch find_layout(const Placement& placement, const piece::Body& body, const JudgedLayout& drawn,
                         const tables::RuleSet& rules, const tables::Tables& tables,
                         const std::function<void(std::size_t)>& tell) {
  return Search(placement, body, rules, tables, tell).run(drawn);
}

}  // namespace firstpick::layout
