// From findings to a verdict; and the guard that a rule which said nothing is never a pass.

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <set>

#include "checks/verdict.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

Finding with(Result result) { return {.rule = "insert-rating", .subject = "A1", .result = result}; }

// Every finding of every rule, as the list of rules gives them.
std::vector<Finding> all_findings(const StageFacts& facts) {
  std::vector<Finding> all;
  for (const Rule& rule : all_rules())
    for (Finding& finding : judged(rule.id, facts)) all.push_back(std::move(finding));
  return all;
}

// One rated insert among the headed ones, so that every rule has a subject.
void add_rated_insert(SlabLift& lift) { lift.plan.inserts[3] = rated_insert_at("A4", 1.0 * m, 1.5 * m); }

}  // namespace

TEST_CASE("the verdict is that of the worst finding, for every combination") {
  constexpr std::array results{Result::pass, Result::note, Result::missing, Result::fail};
  for (const Result a : results)
    for (const Result b : results)
      for (const Result c : results) {
        const std::array findings{with(a), with(b), with(c)};
        const bool failed = a == Result::fail || b == Result::fail || c == Result::fail;
        const bool gap = a == Result::missing || b == Result::missing || c == Result::missing;
        const Verdict expected = failed ? Verdict::no_go : gap ? Verdict::hold : Verdict::go;
        CAPTURE(word_for(a), word_for(b), word_for(c));
        CHECK(verdict_of(findings) == expected);
      }
}

TEST_CASE("one finding alone gives its verdict") {
  CHECK(verdict_of(std::array{with(Result::pass)}) == Verdict::go);
  CHECK(verdict_of(std::array{with(Result::note)}) == Verdict::go);
  CHECK(verdict_of(std::array{with(Result::missing)}) == Verdict::hold);
  CHECK(verdict_of(std::array{with(Result::fail)}) == Verdict::no_go);
}

TEST_CASE("no findings at all are HOLD") { CHECK(verdict_of({}) == Verdict::hold); }

TEST_CASE("a result or a verdict that does not exist is never GO") {
  CHECK(verdict_of(std::array{with(static_cast<Result>(17))}) != Verdict::go);
  CHECK(word_for(static_cast<Verdict>(17)) != "GO");
  CHECK(word_for(static_cast<Result>(17)) != "pass");
}

TEST_CASE("verdicts have their words") {
  CHECK(word_for(Verdict::go) == "GO");
  CHECK(word_for(Verdict::hold) == "HOLD");
  CHECK(word_for(Verdict::no_go) == "NO-GO");
}

TEST_CASE("every rule has a name of its own, a source and something that it guards against") {
  std::set<std::string_view> ids;
  for (const Rule& rule : all_rules()) {
    CAPTURE(rule.id);
    CHECK(ids.insert(rule.id).second);
    CHECK_FALSE(rule.guards.empty());
    CHECK_FALSE(rule.source.empty());
    CHECK(rule.judge != nullptr);
    CHECK(rule_named(rule.id) == &rule);
  }
  CHECK(ids.size() >= 24);
  CHECK(rule_named("no-such-rule") == nullptr);
}

TEST_CASE("a complete set of findings has no gap, and is GO") {
  SlabLift lift;
  add_rated_insert(lift);
  const StageFacts facts = lift.facts();
  const auto findings = all_findings(facts);
  for (const Finding& finding : findings) {
    CAPTURE(finding.rule, finding.subject, finding.text);
    CHECK(finding.result == Result::pass);
  }
  CHECK(coverage_gaps(facts, findings).empty());
  CHECK(verdict_of(findings) == Verdict::go);
}

TEST_CASE("each rule that says nothing about its subjects leaves a gap for each of them, and HOLD") {
  SlabLift lift;
  add_rated_insert(lift);
  lift.plan.inserts[1].kind = "loop-bar";
  lift.plan.inserts[2].kind = "plate";
  // Through a sheave and a beam, so that every scope has a subject.
  plan::Rigging& rigging = lift.plan.riggings.front();
  rigging.sheaves = {{.id = "block", .weight = 0.2 * kN, .rated = 500.0 * kN, .inspected = {}, .place = {}}};
  rigging.beams = {{.id = "frame", .weight = 1.0 * kN, .centre = {}, .rated = 500.0 * kN, .inspected = {},
                    .points = {{"eye", {}, {}}}, .place = {}}};
  const StageFacts facts = lift.facts();
  const auto complete = all_findings(facts);
  for (const Rule& rule : all_rules()) {
    CAPTURE(rule.id);
    std::vector<Finding> findings = complete;
    std::erase_if(findings, [&](const Finding& finding) { return finding.rule == rule.id; });
    REQUIRE(findings.size() < complete.size());

    const auto gaps = coverage_gaps(facts, findings);
    const auto subjects = subjects_of(rule.scope, facts);
    REQUIRE_FALSE(subjects.empty());
    REQUIRE(gaps.size() == subjects.size());
    for (std::size_t i = 0; i < gaps.size(); ++i) {
      CHECK(gaps[i].rule == "rule-coverage");
      CHECK(gaps[i].result == Result::missing);
      CHECK(gaps[i].subject == subjects[i]);
      CHECK(gaps[i].text.find(rule.id) != std::string::npos);
      check_says_why(gaps[i]);
    }
    findings.insert(findings.end(), gaps.begin(), gaps.end());
    CHECK(verdict_of(gaps) == Verdict::hold);
    CHECK(verdict_of(findings) != Verdict::go);
  }
}

TEST_CASE("a rule that forgets one subject of several leaves a gap for that one") {
  SlabLift lift;
  add_rated_insert(lift);
  const StageFacts facts = lift.facts();
  const auto complete = all_findings(facts);
  for (std::size_t forgotten = 0; forgotten < complete.size(); ++forgotten) {
    std::vector<Finding> findings = complete;
    findings.erase(findings.begin() + static_cast<std::ptrdiff_t>(forgotten));
    CAPTURE(complete[forgotten].rule, complete[forgotten].subject);
    const auto gaps = coverage_gaps(facts, findings);
    REQUIRE(gaps.size() == 1);
    CHECK(gaps.front().subject == complete[forgotten].subject);
  }
}

TEST_CASE("a finding under another rule's name fills no gap") {
  SlabLift lift;
  const StageFacts facts = lift.facts();
  auto findings = all_findings(facts);
  for (Finding& finding : findings)
    if (finding.rule == "sling-overload") finding.rule = "sling-angle";
  CHECK(coverage_gaps(facts, findings).size() == lift.plan.riggings.front().legs.size());
}

TEST_CASE("a rule that the rule set demands and nobody has is a gap") {
  SlabLift lift;
  lift.rules.mandatory.push_back({"piece-cracking-that-nobody-wrote", "piece", {}});
  const StageFacts facts = lift.facts();
  const auto gaps = coverage_gaps(facts, all_findings(facts));
  REQUIRE(gaps.size() == 1);
  CHECK(gaps.front().result == Result::missing);
  CHECK(gaps.front().text.find("piece-cracking-that-nobody-wrote") != std::string::npos);
  check_says_why(gaps.front());
}

TEST_CASE("a rule set that demands nothing is a gap: HOLD") {
  SlabLift lift;
  lift.rules.mandatory.clear();
  const StageFacts facts = lift.facts();
  const auto gaps = coverage_gaps(facts, all_findings(facts));
  REQUIRE(gaps.size() == 1);
  CHECK(gaps.front().result == Result::missing);
  check_says_why(gaps.front());
  Trace silent;
  CHECK(evaluate_stage(facts, silent).verdict == Verdict::hold);
}

TEST_CASE("a rule set that demands rules in other stages only is a gap in this one") {
  SlabLift lift;
  for (tables::Mandatory& mandatory : lift.rules.mandatory) mandatory.stages = {"yard", "haul"};
  const StageFacts facts = lift.facts();
  const auto gaps = coverage_gaps(facts, all_findings(facts));
  REQUIRE(gaps.size() == 1);
  CHECK(gaps.front().text.find("strip") != std::string::npos);
  Trace silent;
  CHECK(evaluate_stage(facts, silent).verdict == Verdict::hold);
}

TEST_CASE("a rule is mandatory in the stages that the rule set names, or in all where it names none") {
  SlabLift lift;
  lift.rules.mandatory = {{"sling-angle", "leg", {"yard", "strip"}}, {"sling-overload", "leg", {"haul"}},
                          {"crane-overload", "crane", {}}};
  const StageFacts facts = lift.facts();
  CHECK(is_mandatory("sling-angle", facts));
  CHECK_FALSE(is_mandatory("sling-overload", facts));
  CHECK(is_mandatory("crane-overload", facts));
  CHECK_FALSE(is_mandatory("insert-breakout", facts));
}

TEST_CASE("the subjects of each scope") {
  SlabLift lift;
  lift.plan.inserts[3].kind = "rated";
  lift.plan.inserts[1].rating = rated_insert_at("A2", 3.0 * m, 0.5 * m).rating;  // headed and rated: held to both
  lift.plan.inserts[2].kind = "loop-bar";
  const StageFacts facts = lift.facts();
  using Names = std::vector<std::string>;
  CHECK(subjects_of(Scope::piece, facts) == Names{"SL-1"});
  CHECK(subjects_of(Scope::rigging, facts) == Names{"four legs"});
  CHECK(subjects_of(Scope::crane, facts) == Names{"bay"});
  CHECK(subjects_of(Scope::leg, facts) == Names{"A1", "A2", "A3", "A4"});
  CHECK(subjects_of(Scope::gear, facts) == Names{"chain", "clutch", "the sheaves at the hook", "bay"});
  CHECK(subjects_of(Scope::sheave, facts) == Names{"over A1 and A2"});
  CHECK(subjects_of(Scope::insert, facts) == Names{"A1", "A2", "A3", "A4"});
  CHECK(subjects_of(Scope::headed_insert, facts) == Names{"A1", "A2"});
  CHECK(subjects_of(Scope::rated_insert, facts) == Names{"A2", "A4"});
}

TEST_CASE("a stage without rigging or crane still has them as subjects") {
  SlabLift lift;
  lift.stage().rigging = "";
  lift.stage().crane = "";
  const StageFacts facts = lift.facts();
  CHECK(subjects_of(Scope::rigging, facts).size() == 1);
  CHECK(subjects_of(Scope::crane, facts).size() == 1);
  CHECK(subjects_of(Scope::leg, facts).empty());
}
