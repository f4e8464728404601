// The demo plans by two rule sets: what the comparison says of each is what the single check says, and the assumptions told are
// all there are.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "compare_pipeline.hpp"
#include "comparison/assumptions.hpp"
#include "comparison/one_at_a_time.hpp"
#include "output/json.hpp"
#include "support/plan_files.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

comparison::Comparison compared(const std::string& file, const std::vector<std::string>& rules) {
  auto answer = compare_plan(file, contents_of(file), rules, real_tables());
  REQUIRE(std::holds_alternative<comparison::Comparison>(answer));
  return std::get<comparison::Comparison>(std::move(answer));
}

checks::Report by(const std::string& file, const std::string& rules) {
  auto answer = check_plan(file, contents_of(file), rules, real_tables());
  REQUIRE(std::holds_alternative<checks::Report>(answer));
  return std::get<checks::Report>(std::move(answer));
}

std::string what_is_wrong_with(std::string_view list) {
  const auto read = rule_sets_in(list, real_tables());
  const auto* fault = std::get_if<Diagnostic>(&read);
  return fault ? fault->what + "; " + fault->help : "";
}

const std::vector<std::string> some_plans = {"docs/demo/box-culvert.toml", "docs/demo/wall-panel.toml",
                                             "docs/demo/round-lid.toml", "tests/plans/ok/beam-on-strand-loops.toml"};

}  // namespace

TEST_CASE("each report of a comparison is that of a single check, byte for byte") {
  for (const std::string& file : some_plans) {
    CAPTURE(file);
    const auto all = compared(file, {"us", "eu"});
    REQUIRE(all.reports.size() == 2);
    for (const checks::Report& report : all.reports) {
      const checks::Report alone = by(file, report.rules);
      CHECK(output::json({{file, &report, nullptr}}) == output::json({{file, &alone, nullptr}}));
      CHECK(all.worst >= alone.verdict);
    }
    CHECK(all.named_by_plan == "us");
  }
}

TEST_CASE("all assumptions of a rule set taken into another: it judges as the first does") {
  for (const std::string& file : some_plans)
    for (const auto& [from, into] : {std::pair{"us", "eu"}, std::pair{"eu", "us"}, std::pair{"two-branch-stripping", "us"},
                                    std::pair{"strength-by-mass", "eu"}}) {
      CAPTURE(file, from, into);
      auto prepared = prepare_plan(file, contents_of(file), into, real_tables());
      REQUIRE(std::holds_alternative<PreparedPlan>(prepared));
      const auto& [plan, body, own] = std::get<PreparedPlan>(prepared);
      tables::RuleSet mixed = own;
      for (const comparison::Assumption& assumption : comparison::all_assumptions())
        assumption.take(mixed, real_tables().rule_sets.at(from));
      const auto stages = comparison::judged_stages(plan, body, mixed, real_tables(), {});
      const checks::Report wanted = by(file, from);
      REQUIRE(stages.size() == wanted.stages.size());
      for (std::size_t s = 0; s < stages.size(); ++s) {
        CHECK(stages[s].verdict == wanted.stages[s].verdict);
        REQUIRE(stages[s].findings.size() == wanted.stages[s].findings.size());
        for (std::size_t f = 0; f < stages[s].findings.size(); ++f) {
          const checks::Finding &got = stages[s].findings[f], &want = wanted.stages[s].findings[f];
          CAPTURE(want.rule, want.subject, want.text, got.text);
          CHECK(got.rule == want.rule);
          CHECK(got.result == want.result);
          CHECK(got.utilization == want.utilization);
        }
      }
    }
}

TEST_CASE("the split of every pair gives its ratio back") {
  std::size_t split = 0;
  for (const std::string& file : some_plans)
    for (const auto& contrast : compared(file, {"us", "eu"}).contrasts)
      for (const auto& stage : contrast.stages)
        for (const auto& pair : stage.pairs) {
          if (!pair.ratios) continue;
          CAPTURE(file, pair.rule, pair.subject);
          CHECK(pair.ratios->use == Approx(*pair.other->utilization / *pair.first->utilization).epsilon(1e-12));
          if (!pair.ratios->demand) continue;
          ++split;
          CHECK(*pair.ratios->demand * *pair.ratios->factor / *pair.ratios->nominal == Approx(pair.ratios->use).epsilon(1e-5));
        }
  CHECK(split > 20);
}

TEST_CASE("the culvert's cone by two codes: load factors raise what is asked, the partial factor lowers what stands over it") {
  const auto all = compared("docs/demo/box-culvert.toml", {"us", "eu"});
  const comparison::Explained* cone = nullptr;
  for (const auto& one : all.contrasts.front().stages.front().explained)
    if (one.pair.rule == "insert-breakout") cone = &one;
  REQUIRE(cone);
  REQUIRE(cone->pair.ratios);
  // 4 against 1.5, from the two tables
  CHECK(cone->pair.ratios->factor.value() == Approx(1.5 / 4.0).epsilon(1e-12));
  CHECK(cone->pair.ratios->largest == comparison::Part::factor);
  // (1.35 x 1.3 W + 1.5 F_adh) / (1.2 W + F_adh): between 1.35 x 1.3 / 1.2 and 1.5
  CHECK(cone->pair.ratios->demand.value() > 1.4625);
  CHECK(cone->pair.ratios->demand.value() < 1.5);
  std::vector<std::string_view> named;
  for (const auto& effect : cone->effects) named.push_back(effect.assumption);
  for (const std::string_view assumption :
       {"resistance of headed inserts and its factors", "load factors on headed inserts", "dynamic factor"}) {
    CAPTURE(assumption);
    CHECK(std::ranges::find(named, assumption) != named.end());
  }
  for (const auto& effect : cone->effects)  // 1.3 / 1.2 of the weight, nothing of the grip
    if (effect.assumption == "dynamic factor") {
      CHECK(effect.ratio > 1.0);
      CHECK(effect.ratio < 1.3 / 1.2);
    }
}

TEST_CASE("three rule sets may be asked for, in any order, and the first is the one that others are held against") {
  tables::Tables tables = real_tables();
  tables::RuleSet yard = tables.rule_sets.at("us");
  yard.id = "yard";
  yard.dynamic_factor.at("strip").value = Ratio{1.5};
  yard.dynamic_factor.at("strip").source.value_text = "1.5";
  tables.rule_sets.emplace("yard", yard);
  const std::string file = "docs/demo/box-culvert.toml";
  const auto answer = compare_plan(file, contents_of(file), {"yard", "us", "eu"}, tables);
  REQUIRE(std::holds_alternative<comparison::Comparison>(answer));
  const auto& all = std::get<comparison::Comparison>(answer);
  REQUIRE(all.contrasts.size() == 2);
  CHECK(all.contrasts[0].other == 1);
  const auto& effects = all.contrasts[0].stages.front().explained.front().effects;
  REQUIRE(effects.size() == 1);
  CHECK(effects.front().assumption == "dynamic factor");
  CHECK(effects.front().first == "1.5");
  CHECK(effects.front().other == "1.2");
}

TEST_CASE("a list of rule sets is refused for what is wrong with it") {
  CHECK(what_is_wrong_with("us,eu").empty());
  CHECK(what_is_wrong_with("eu").empty());
  CHECK(what_is_wrong_with("us,eux") == "there is no rule set 'eux'; did you mean 'eu'?");
  CHECK(what_is_wrong_with("us,mars") == "there is no rule set 'mars'; there are: 'eu', 'strength-by-mass', 'two-branch-stripping', 'us'");
  CHECK(what_is_wrong_with("us,us") == "'us' is named twice; a rule set against itself says nothing: name another");
  for (const char* list : {"", ",", "us,", ",us", "us,,eu"}) {
    CAPTURE(list);
    CHECK(what_is_wrong_with(list) == "a rule set without a name; names with one comma between each two: --rules us,eu");
  }
  CHECK(what_is_wrong_with("us, eu").starts_with("there is no rule set ' eu'"));
}
