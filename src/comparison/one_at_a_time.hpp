// The same piece under the first rule set with one assumption of another, for every assumption in which they differ.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "checks/report.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "tables/tables.hpp"

namespace firstpick::comparison {

struct Swapped {
  std::string_view assumption;
  std::vector<std::string> first, other;     // what each has, in words, by stage
  std::vector<checks::StageReport> stages;   // of the first rule set with what the other has
  // Rules for which the other rule set does not use it: its factor on inserts, where it has partial factors on headed ones.
  std::vector<std::string_view> not_meant_for{};
};

// The stages of a plan under a rule set, without the sentences and steps that nobody will read.
std::vector<checks::StageReport> judged_stages(const plan::Plan& plan, const piece::Body& body, const tables::RuleSet& rules,
                                               const tables::Tables& tables, const checks::SignOffState& sign_off);

// Also "concrete at the inserts": counted as cracked or not, which a rule set decides from the bending of the piece.
std::vector<Swapped> one_at_a_time(const plan::Plan& plan, const piece::Body& body, const tables::RuleSet& first,
                                   const tables::RuleSet& other, const tables::Tables& tables,
                                   const checks::SignOffState& sign_off);

}  // namespace firstpick::comparison
