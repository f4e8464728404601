// What is checked against what: no rule and no table without an outside check or a written reason, and no reason for what has a
// check. The table itself is written into docs/verification.md (record_reporter.cpp).

#include <catch2/catch.hpp>

#include <string>
#include <vector>

#include "verification/coverage.hpp"

using namespace firstpick::verification;

namespace {

using Faults = std::vector<std::string>;

Faults faults_of(const Claims& claims) { return covered(claims, {"rule-a", "rule-b"}, {"tables/t.toml"}, {"us", "eu"}).faults; }

Claims good() {
  return {{{"one", "Some source.\n\nOutside  us rule-a,\n         tables/t.toml\nComputed rule-b\n"}}, {{"rule-b", "no number"}}, {}};
}

}  // namespace

TEST_CASE("every rule and every table has a check from outside or a written reason, and not both") {
  const Covered all = coverage_of_source_tree();
  CHECK(all.faults == Faults{});
  CHECK(all.rules.size() > 60);
  CHECK(all.tables.size() > 12);
  CHECK(all.not_held.size() >= 5);
  CHECK(coverage_tables(all).find("27088.3, 32506.0, 24379.5, 18961.8 (MPa)") != std::string::npos);
}

TEST_CASE("a check is told under its rule set, with the line below it, the other rule set stays an empty cell") {
  const Covered all = covered(good(), {"rule-a", "rule-b"}, {"tables/t.toml"}, {"us", "eu"});
  CHECK(all.faults == Faults{});
  CHECK(all.rules[0].outside == ByRuleSet{{"us", {"one"}}});
  CHECK(all.tables[0].outside == ByRuleSet{{"", {"one"}}});
  CHECK(all.rules[1].computed == ByRuleSet{{"", {"one"}}});
  const std::string text = coverage_tables(all);
  CHECK(text.find("| rule-a | `us`: one | - | - |") != std::string::npos);
  CHECK(text.find("| rule-b | - | one | no number |") != std::string::npos);

  Claims both = good();
  both.comments["two"] = "Outside  eu rule-b\n";
  both.reasons.clear();
  const std::string with_both = coverage_tables(covered(both, {"rule-a", "rule-b"}, {"tables/t.toml"}, {"us", "eu"}));
  CHECK(with_both.find("| rule-a | `eu`: -; `us`: one | - | - |") != std::string::npos);
  CHECK(with_both.find("| rule-b | `eu`: two; `us`: - | one | - |") != std::string::npos);
}

TEST_CASE("neither check nor reason, or both, is a fault") {
  Claims neither = good();
  neither.reasons.clear();
  CHECK(faults_of(neither) == Faults{"rule-b has neither a check from outside nor a reason why there is none"});
  Claims both = good();
  both.reasons["rule-a"] = "none was found";
  CHECK(faults_of(both) == Faults{"rule-a has a reason why there is no check from outside, and a check"});
  Claims table = good();
  table.comments["one"] = "Outside  rule-a\nComputed rule-b\n";
  CHECK(faults_of(table) == Faults{"tables/t.toml has neither a check from outside nor a reason why there is none"});
}

TEST_CASE("what is not known, a test that does not say what it checks, and two reasons are faults") {
  Claims unknown = good();
  unknown.comments["two"] = "Outside  rule-c, jp rule-a\n";
  CHECK(faults_of(unknown) == Faults{"two checks 'rule-c', which is no rule, table or folder",
                                     "two speaks of a rule set 'jp', which there is not"});
  Claims silent = good();
  silent.comments["two"] = "Some source.\n";
  CHECK(faults_of(silent).size() == 1);
  CHECK(faults_of(silent).front().starts_with("two does not say what it checks"));
  Claims reasons = good();
  reasons.reasons["rule-c"] = "none";
  reasons.twice = {"rule-b"};
  CHECK(faults_of(reasons) == Faults{"rule-b is given two reasons", "a reason is given for 'rule-c', which is no rule or table"});
}
