// What rule sets assume, one thing at a time: named, told in words, and taken from one rule set into another.
//
// All of them taken from a rule set into another make the other judge as the first does: a test says so of every demo plan.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "tables/rule_set.hpp"

namespace firstpick::comparison {

struct Assumption {
  std::string_view name;  // "dynamic factor"
  bool (*differs)(const tables::RuleSet& first, const tables::RuleSet& other);
  // What each of the two has, in words, in a stage: "1.2" and "1.3". Of models of one kind the constants that differ.
  std::string (*told)(const tables::RuleSet& one, const tables::RuleSet& beside, std::string_view stage);
  void (*take)(tables::RuleSet& into, const tables::RuleSet& from);
  bool on_headed_inserts_by_one_factor_only = false;  // a model with partial factors does not use it for them
};

std::span<const Assumption> all_assumptions();

}  // namespace firstpick::comparison
