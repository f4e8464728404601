// What every output says whatever the plan.

#include <catch2/catch.hpp>

#include <algorithm>

#include "checks/standing_texts.hpp"
#include "support/hand_made_rules.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

TEST_CASE("the cautions of the program come first, those of the rule set behind them, none replaced") {
  tables::RuleSet rules = hand_made_rules();
  const auto own = cautions_of(rules);
  REQUIRE(own.size() >= 4);
  rules.cautions = {"a caution of the rule set"};
  const auto both = cautions_of(rules);
  REQUIRE(both.size() == own.size() + 1);
  CHECK(std::equal(own.begin(), own.end(), both.begin()));
  CHECK(both.back() == "a caution of the rule set");
}

TEST_CASE("the cautions say who decides and that nobody stands under the load") {
  std::string all;
  for (const std::string& caution : cautions_of(hand_made_rules())) all += caution + "\n";
  CHECK(all.find("not permission") != std::string::npos);
  CHECK(all.find("engineer of record") != std::string::npos);
  CHECK(all.find("competent person") != std::string::npos);
  CHECK(all.find("Nobody stands under") != std::string::npos);
}

TEST_CASE("the choices of the rule set are told in words that change with the choice") {
  tables::RuleSet rules = hand_made_rules();
  const auto before = choices_of(rules);
  const auto changed = [&] {
    const auto after = choices_of(rules);
    std::size_t count = after.size() == before.size() ? 0 : after.size();
    for (std::size_t i = 0; i < std::min(before.size(), after.size()); ++i) count += before[i] != after[i] ? 1 : 0;
    return count;
  };
  SECTION("load behind the insert factor") { rules.insert_load.value = tables::InsertLoad::weight_only; }
  SECTION("load on the crane") { rules.crane_load.value = tables::CraneLoad::weight_and_gear; }
  SECTION("sharing") { rules.sharing.value = tables::Sharing::elastic; }
  SECTION("strength") { rules.usable_strength.value = tables::UsableStrength::mean; }
  SECTION("insert factor") { rules.insert_factor.value = Ratio{3.0}; }
  CHECK(changed() == 1);
}

namespace {

bool says(const std::vector<std::string>& lines, const std::string& words) {
  return std::ranges::any_of(lines, [&](const std::string& line) { return line.find(words) != std::string::npos; });
}

}  // namespace

TEST_CASE("what the loss of a point and a plan without a signature lead to is told as the rule set has it") {
  tables::RuleSet rules = hand_made_rules();
  rules.loss_of_a_point.value = tables::LossOfAPoint::report;
  rules.no_sign_off.value = tables::NoSignOff::note;
  CHECK(says(choices_of(rules), "the loss of one point asks of the others is told and does not decide"));
  CHECK(says(choices_of(rules), "a plan that no engineer has signed is told as such"));
  rules.loss_of_a_point.value = tables::LossOfAPoint::hold;
  rules.no_sign_off.value = tables::NoSignOff::hold;
  CHECK(says(choices_of(rules), "would not survive the loss of one point is held"));
  CHECK(says(choices_of(rules), "a plan that no engineer has signed is held"));
  rules.loss_of_a_point.value = tables::LossOfAPoint::refuse;
  rules.no_sign_off.value = tables::NoSignOff::refuse;
  CHECK(says(choices_of(rules), "would not survive the loss of one point is refused"));
  CHECK(says(choices_of(rules), "a plan that no engineer has signed is refused"));
}

TEST_CASE("what is not checked of bending follows from how much of it was") {
  CHECK(says(not_checked(BendingChecked::none), "cracking, bending and shear of the piece, but of the walls"));
  CHECK(says(not_checked(BendingChecked::with_bars), "bars but those along it that carry it cracked"));
  CHECK(says(not_checked(BendingChecked::as_cast), "torsion of a ring is"));
  CHECK(says(not_checked(BendingChecked::turned), "torsion of a ring is"));
  for (const BendingChecked one : {BendingChecked::none, BendingChecked::as_cast, BendingChecked::with_bars})
    CHECK(says(not_checked(one), "bending of the piece while it is turned"));
  CHECK_FALSE(says(not_checked(BendingChecked::turned), "bending of the piece while it is turned"));
}

TEST_CASE("the list of what is not checked is not empty and repeats nothing") {
  auto list = not_checked(GENERATE(BendingChecked::none, BendingChecked::as_cast, BendingChecked::with_bars,
                                   BendingChecked::turned));
  REQUIRE_FALSE(list.empty());
  std::ranges::sort(list);
  CHECK(std::ranges::adjacent_find(list) == list.end());
}

TEST_CASE("stages without wind_speed are judged in still air, and a caution says so") {
  plan::Plan plan;
  plan::Stage strip, yard;
  yard.kind = plan::StageKind::yard;
  plan.stages = {strip, yard};
  REQUIRE(cautions_of(plan).size() == 1);
  CHECK(cautions_of(plan).front().find("still air:") != std::string::npos);
  plan.stages[0].wind_speed = 6.0 * m_per_s;
  REQUIRE(cautions_of(plan).size() == 1);
  CHECK(cautions_of(plan).front().find("still air (yard):") != std::string::npos);
  plan.stages[1].wind_speed = 0.0 * m_per_s;
  CHECK(cautions_of(plan).empty());
}

TEST_CASE("a speed of the wind and a coefficient that the plan states are told") {
  plan::Plan plan;
  plan.stages = {plan::Stage{}};
  plan.stages[0].wind_speed = 6.0 * m_per_s;
  plan.stages[0].wind_coefficient = Ratio{1.8};
  const auto told = stated_instead(plan, hand_made_rules(), hand_made_tables());
  REQUIRE(told.size() == 2);
  CHECK(told[0].find("gusts of up to 6.00 m/s") != std::string::npos);
  CHECK(told[1].find("wind coefficient 1.8") != std::string::npos);
  CHECK(told[1].find("; the table has none") == std::string::npos);
  tables::Tables without = hand_made_tables();
  without.wind.reset();
  CHECK_THAT(stated_instead(plan, hand_made_rules(), without)[1], Catch::EndsWith("; the table has none"));
}

TEST_CASE("a partial safety format tells its load factors, with the grip where it counts, without them the one factor") {
  tables::RuleSet rules = eu_rules();
  REQUIRE(rules.load_factors);
  rules.insert_load.value = tables::InsertLoad::with_adhesion_and_dynamic;
  CHECK(says(choices_of(rules), " with the dynamic factor, plus "));
  rules.insert_load.value = tables::InsertLoad::weight_only;
  CHECK(says(choices_of(rules), "times weight and form parts, against characteristic resistances over "));
  CHECK_FALSE(says(choices_of(rules), " with the dynamic factor, plus "));
  rules.load_factors.reset();
  CHECK(says(choices_of(rules), "multiplies the static weight and form parts only"));
}
