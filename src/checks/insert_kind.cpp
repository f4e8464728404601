// Every insert is of a kind that a rule evaluates: headed (anchor formulas) or rated (the supplier's declared load).
//
// A headed insert that also has a rating is held to both. Any other kind is HOLD.

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> insert_kind(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "insert-kind";
  std::vector<Finding> findings;
  findings.reserve(facts.plan.inserts.size());
  for (const plan::Insert& insert : facts.plan.inserts) {
    if (insert.kind == "headed" || insert.kind == "rated")
      findings.push_back(passed(id, insert.id));
    else
      findings.push_back(missing(id, insert.id,
                                 fmt::format("no rule of this version evaluates an insert of kind '{}'", insert.kind),
                                 "kind = \"rated\" with the supplier's declared rating, where there is one"));
  }
  return findings;
}

}  // namespace firstpick::checks
