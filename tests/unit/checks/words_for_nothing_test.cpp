// What the program says of a value that none of its lists has: the word that stops a lift, or none.

#include <catch2/catch.hpp>

#include "checks/evaluate_strength.hpp"
#include "checks/loaded_inserts.hpp"
#include "checks/mode_factor.hpp"
#include "checks/modes_alone.hpp"
#include "checks/modes_together.hpp"
#include "checks/piece_model.hpp"
#include "checks/sign_off_state.hpp"
#include "checks/verdict.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

// A value behind the last of its list.
template <class List>
List behind_the_list() {
  return static_cast<List>(99);
}

}  // namespace

TEST_CASE("a sign-off, a strength and a scope of no known kind are told as what stops") {
  CHECK(word_for(behind_the_list<SignOffState::Kind>()) == "faulty");
  SignOffState state;
  state.kind = behind_the_list<SignOffState::Kind>();
  CHECK(in_words(state) == "the sign-off cannot be read");
  CHECK(strength_word_for(behind_the_list<Verdict>()) == "HOLD");
  CHECK(word_for(behind_the_list<Scope>()) == "piece");
  SlabLift lift;
  CHECK(subjects_of(behind_the_list<Scope>(), lift.facts()).empty());
}

TEST_CASE("a model of bending of no known kind counts as none") {
  SlabLift lift;
  const auto facts = lift.facts();
  ModelChoice choice;
  choice.model = behind_the_list<plan::PieceModel>();
  // 4 x 2 x 0.3 m: V = 2.4 m3, S = 19.6 m2, t = 2 V / S = 245 mm, L / t = 16.33.
  CHECK_THAT(told(choice, facts.body, facts.rules.cracking, UnitSystem::si),
             Catch::StartsWith(
                 "bending of the piece: not computed, it is a block, derived from its shape: 4000 mm long, "
                 "16.4 mean thicknesses of 245 mm"));
}

TEST_CASE("a way to fail that is in no list has no strength, and so no pass") {
  SlabLift lift;
  lift.plan.inserts[1].at = {1.3 * m, 0.5 * m, 0.3 * m};  // one body of concrete with A1
  const auto facts = lift.facts();
  const auto mode = behind_the_list<Mode>();
  CHECK(clause_of(mode, facts.rules).empty());
  CHECK(number_of_sets(mode, facts) == 0);
  const auto& situations = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  Trace silent;
  CHECK(why_not(strength_alone(mode, facts, situations.front(), 0, silent)) ==
        "this way to fail is not evaluated");
  REQUIRE(number_of_sets(Mode::breakout, facts) >= 1);
  const LoadedInserts together = taking_part(Mode::breakout, facts, situations.front(), 0);
  REQUIRE(together.act_together());
  for (const Mode alone : {mode, Mode::steel_tension, Mode::pullout, Mode::steel_shear}) {
    const ModeCheck check = check_together(alone, facts, situations.front(), 0, together, silent);
    CHECK(check.comparison.result == Result::missing);
    CHECK(check.comparison.why == "inserts do not fail together in this way");
  }
  CHECK(strengths_alone(Mode::breakout, facts, {}, 0).empty());
  CHECK(strengths_alone(Mode::edge_breakout, facts, {}, 0).empty());
}

TEST_CASE(
    "inserts that have no layout in one face hold nothing together: missing, never the sum of what each "
    "holds") {
  SlabLift lift;
  lift.plan.inserts[1].at = {1.3 * m, 0.5 * m, 0.3 * m};
  auto facts = lift.facts();
  const auto& situation = std::get<std::vector<InsertSituation>>(facts.insert_situations).front();
  LoadedInserts none;
  CHECK_FALSE(held_by_bars(none));
  CHECK_FALSE(is_assessed(eccentricity(none, facts)));
  const LoadedInserts together = taking_part(Mode::breakout, facts, situation, 0);
  REQUIRE(together.act_together());
  // A site of another face than the rest of the group.
  lift.body.sites.at(together.indices.back()).face = 77;
  lift.prepared->areas = {};
  Trace silent;
  const Direction along_x{1.0, 0.0, 0.0};
  lift.prepared->blowout_rows = {{along_x, together.indices}};
  const Stress f_c = std::get<Stress>(facts.formula_strength);
  const ModeCheck checked[] = {
      check_together(Mode::breakout, facts, situation, 0, together, silent),
      check_together(Mode::side_blowout, facts, situation, 0, together, silent),
      check_edge_row(facts, situation, {along_x, together.indices}, together, f_c, silent)};
  for (const ModeCheck& check : checked) {
    CHECK(check.comparison.result == Result::missing);
    CHECK_THAT(check.comparison.why, Catch::Contains("are not in one face"));
  }
}

TEST_CASE("the strength of an edge that the insert is not described for is missing in every situation") {
  SlabLift lift;
  auto facts = lift.facts();
  const auto& situations = std::get<std::vector<InsertSituation>>(facts.insert_situations);
  facts.formula_strength = Stress::from_value(std::nan(""));
  const auto strengths = strengths_alone(Mode::edge_breakout, facts, situations, 0);
  REQUIRE(strengths.size() == situations.size());
  for (const NominalForce& strength : strengths) CHECK_FALSE(is_assessed(strength));
}
