// Every insert is of a kind that a rule evaluates: headed (anchor formulas), rated (the supplier's declared load), loops of
// strand and bar, bolts with a plate on the far face.
//
// Loops of wire rope and threaded inserts stand on a rating; any insert with a rating is held to it besides its own rules.
// Any other kind is HOLD.

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

bool is_evaluated(const plan::Insert& insert) {
  const std::string& kind = insert.kind;
  if (kind == "loop-rope" || kind == "threaded") return insert.rating.has_value();
  return kind == "headed" || kind == "rated" || kind == "loop-strand" || kind == "loop-bar" || kind == "plate";
}

}  // namespace

std::vector<Finding> insert_kind(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "insert-kind";
  std::vector<Finding> findings;
  findings.reserve(facts.plan.inserts.size());
  for (const plan::Insert& insert : facts.plan.inserts) {
    if (is_evaluated(insert)) {
      findings.push_back(passed(id, insert.id));
      continue;
    }
    const bool by_rating = insert.kind == "loop-rope" || insert.kind == "threaded";
    findings.push_back(missing(
        id, insert.id,
        by_rating ? fmt::format("an insert of kind '{}' is evaluated by its supplier's rating only, and has none", insert.kind)
                  : fmt::format("no rule of this version evaluates an insert of kind '{}'", insert.kind),
        by_rating ? "rating = { ... }, from the supplier's declaration"
                  : "kind = \"rated\" with the supplier's declared rating, where there is one"));
  }
  return findings;
}

}  // namespace firstpick::checks
