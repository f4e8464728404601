// The evidence behind the strength in one line, for reports: what was tested, how many, how cured, when.
// Words only; nothing here decides whether the evidence is enough.

#include <fmt/format.h>

#include "strength/counted_strength.hpp"
#include "strength/specimen.hpp"
#include "strength/strength_at_lift.hpp"

namespace firstpick::strength {

namespace {

std::string cure_in_words(plan::Cure cure) {
  switch (cure) {
    case plan::Cure::field: return "field-cured ";
    case plan::Cure::match: return "match-cured ";
    case plan::Cure::standard: return "standard-cured ";
  }
  return "";
}

std::string specimens_in_words(const plan::Evidence& evidence) {
  const std::size_t n = evidence.results.size();
  std::string kind = n == 1 ? "specimen" : "specimens";
  if (evidence.specimen) kind = n == 1 ? words_for(*evidence.specimen) : plural_words_for(*evidence.specimen);
  return fmt::format("{} {}{}{}", n, evidence.cure ? cure_in_words(*evidence.cure) : "", kind,
                     evidence.cure ? "" : " of unstated cure");
}

}  // namespace

std::string basis_of(const plan::Concrete& concrete, const tables::RuleSet& rules) {
  if (!concrete.evidence || concrete.evidence->results.empty()) return "no strength test in the plan";
  const plan::Evidence& evidence = *concrete.evidence;
  return fmt::format("{} of {}, {}", words_for_choice(rules), specimens_in_words(evidence),
                     evidence.tested ? "tested " + evidence.tested->text : "time of test not stated");
}

}  // namespace firstpick::strength
