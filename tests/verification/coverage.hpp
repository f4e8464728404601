// What is checked against what: each rule and each table file against the tests that hold an outside number, or the written
// reason why there is none. The tests themselves say what they check, in the comment at their top:
//
//   // Outside  us insert-breakout, tables/steels.toml      printed by a source, quoted from one, or by another program
//   // Computed us insert-breakout                          our own arithmetic, made beforehand: evidence of regression only
//
// "us" or "eu" in front: only what that rule set does is checked. A line may go on below, indented.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

namespace firstpick::verification {

using ByRuleSet = std::map<std::string, std::vector<std::string>>;  // names of tests; "" : whatever the rule set

struct Coverage {
  std::string what;             // "insert-breakout", "tables/steels.toml", "src/units"
  ByRuleSet outside, computed;
  std::string why_none;         // from outside
};

// Numbers of an outside source that nothing is held to, and why.
struct NotHeld {
  std::string source;
  std::vector<std::string> numbers;  // as printed there
  std::string unit, why;
};

// What there is: test name -> the comment at its top, and reasons -> what they are for.
struct Claims {
  std::map<std::string, std::string> comments;
  std::map<std::string, std::string> reasons;  // by what they are for
  std::vector<std::string> twice;              // that two reasons are given for
};

struct Covered {
  std::vector<Coverage> rules, tables, others;  // rules in their own order, tables by name
  std::vector<NotHeld> not_held;
  std::vector<std::string> faults;              // sentences: what has neither check nor reason, or both, or is not known
};

// `rules`, `tables`, `rule_sets`: what there is to be covered.
Covered covered(const Claims& claims, const std::vector<std::string>& rules, const std::vector<std::string>& tables,
                const std::set<std::string>& rule_sets);

// Of the source tree below the current folder.
Covered coverage_of_source_tree();

// As Markdown: one table of rules, one of tables, one of what else is held against outside numbers. Empty cells are "-".
std::string coverage_tables(const Covered& covered);

}  // namespace firstpick::verification
