#include "strength/strength_at_lift.hpp"
#include "support/hand_made_evidence.hpp"
#include "support/hand_made_rules.hpp"

#include <catch2/catch.hpp>

using namespace firstpick;
using namespace firstpick::tests;

namespace {

std::string basis(const plan::Concrete& concrete) { return strength::basis_of(concrete, hand_made_rules()); }

}  // namespace

TEST_CASE("the basis of the strength in one line") {
  CHECK(basis(concrete_with_evidence()) ==
        "lowest of 3 field-cured cylinders 4x8 in, tested 2026-03-03 07:10");
}

TEST_CASE("the basis names one specimen in the singular, and how it was cured") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->results = {2600.0 * psi};
  concrete.evidence->cure = plan::Cure::match;
  CHECK(basis(concrete) == "lowest of 1 match-cured cylinder 4x8 in, tested 2026-03-03 07:10");
  concrete.evidence->cure = plan::Cure::standard;
  CHECK(basis(concrete) == "lowest of 1 standard-cured cylinder 4x8 in, tested 2026-03-03 07:10");
}

TEST_CASE("the basis says what the plan does not state") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->specimen.reset();
  concrete.evidence->cure.reset();
  concrete.evidence->tested.reset();
  CHECK(basis(concrete) == "lowest of 3 specimens of unstated cure, time of test not stated");
  concrete.evidence->results.clear();
  CHECK(basis(concrete) == "no strength test in the plan");
  concrete.evidence.reset();
  CHECK(basis(concrete) == "no strength test in the plan");
}
