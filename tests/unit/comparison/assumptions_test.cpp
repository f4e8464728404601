// Assumptions of rule sets: found where two sets differ and only there, told with both values, taken one at a time.

#include <catch2/catch.hpp>

#include <set>
#include <string>

#include "comparison/assumptions.hpp"
#include "comparison/model_sources.hpp"
#include "support/hand_made_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using comparison::all_assumptions;
using comparison::Assumption;

namespace {

std::set<std::string_view> differing(const tables::RuleSet& a, const tables::RuleSet& b) {
  std::set<std::string_view> names;
  for (const Assumption& assumption : all_assumptions())
    if (assumption.differs(a, b)) names.insert(assumption.name);
  return names;
}

const Assumption& named(std::string_view name) {
  for (const Assumption& assumption : all_assumptions())
    if (assumption.name == name) return assumption;
  throw std::out_of_range("no such assumption");
}

}  // namespace

TEST_CASE("a rule set differs from itself in nothing, and names are told once") {
  CHECK(differing(hand_made_rules(), hand_made_rules()).empty());
  std::set<std::string_view> names;
  for (const Assumption& assumption : all_assumptions()) CHECK(names.insert(assumption.name).second);
}

TEST_CASE("one changed value is one assumption, with both values, taken over, the two are alike again") {
  const tables::RuleSet first = hand_made_rules();
  tables::RuleSet other = first;
  other.insert_factor.value = Ratio{3.0};
  other.insert_factor.source.value_text = "3";
  CHECK(differing(first, other) == std::set<std::string_view>{"factor on inserts"});
  CHECK(named("factor on inserts").told(other, first, "strip") == "3");
  tables::RuleSet mixed = first;
  named("factor on inserts").take(mixed, other);
  CHECK(differing(mixed, other).empty());
}

TEST_CASE("what one set has and the other has not is a difference, told as none") {
  const tables::RuleSet first = hand_made_rules();
  tables::RuleSet other = first;
  other.load_floor = made_ratio("load_floor", 2.0);
  other.load_floor->source.value_text = "2";
  CHECK(differing(first, other) == std::set<std::string_view>{"least load of a strip, over the weights"});
  CHECK(named("least load of a strip, over the weights").told(first, other, "strip") == "none");
  CHECK(named("least load of a strip, over the weights").told(other, first, "strip") == "2");
}

TEST_CASE("a constant of a model that a plant has changed is told by its symbol") {
  const tables::RuleSet first = hand_made_rules();
  tables::RuleSet other = first;
  other.headed.k_c.source.value_text = "20 lbf/(psi^0.5 in^1.5)";
  const std::string_view name = "resistance of headed inserts and its factors";
  CHECK(differing(first, other) == std::set<std::string_view>{name});
  CHECK(named(name).told(other, first, "strip") == "k_c 20 lbf/(psi^0.5 in^1.5)");
}

TEST_CASE("a dynamic factor is that of the stage") {
  const tables::RuleSet first = hand_made_rules();
  tables::RuleSet other = first;
  other.dynamic_factor.at("haul").value = Ratio{2.5};
  other.dynamic_factor.at("haul").source.value_text = "2.5";
  CHECK(differing(first, other) == std::set<std::string_view>{"dynamic factor"});
  CHECK(named("dynamic factor").told(other, first, "haul") == "2.5");
  CHECK(named("dynamic factor").told(other, first, "turn") == "none");
}

TEST_CASE("a rule that only one set demands is told") {
  const tables::RuleSet first = hand_made_rules();
  tables::RuleSet other = first;
  other.mandatory.push_back({"tag-line", "piece", {"haul"}});
  CHECK(differing(first, other) == std::set<std::string_view>{"rules that must answer"});
  CHECK(named("rules that must answer").told(other, first, "haul") == "also tag-line (piece; haul)");
  CHECK(named("rules that must answer").told(first, other, "haul") == "none of its own");
}

TEST_CASE("every constant of a model is looked at once") {
  const tables::RuleSet rules = hand_made_rules();
  std::set<const Source*> headed;
  for (const Source* source : comparison::sources_of(rules.headed)) CHECK(headed.insert(source).second);
  CHECK(headed.size() == 38);
  CHECK(comparison::sources_of(rules.cracking).size() == 17);
}
