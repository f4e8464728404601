// In every situation the legs carry the whole load and nothing turns: forces and moments balance to 1e-9 of the weight.
//
//   sum F_i = F up        sum a_i x F_i = sum c_j x F_j up        F_i: leg on insert at a_i; F_j: load at c_j
//
// `up` is not taken from the program: it is the direction of the sum of the legs, and must be the same for the moments.

#include <catch2/catch.hpp>

#include <cmath>

#include "checks/stage_facts.hpp"
#include "output/json.hpp"
#include "plan/read_plan.hpp"
#include "support/plan_files.hpp"
#include "support/slab_text.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

// What is left over in newtons and newton metres, over the load and load x 1 m.
double unbalanced(const plan::Plan& plan, const checks::Situation& situation, const loads::LoadSet& set) {
  ForceVector sum{};
  for (const demands::LegForce& leg : situation.legs) sum = sum + leg.on_insert;
  const double total_N = in(newton, set.total);
  const double carried_N = in(newton, norm(sum));
  const Direction up{in(newton, sum.x) / carried_N, in(newton, sum.y) / carried_N, in(newton, sum.z) / carried_N};

  Direction turning{};  // N m
  const auto add = [&](const Position& at, const Direction& force_N, double sign) {
    const Direction arm{in(m, at.x), in(m, at.y), in(m, at.z)};
    turning = turning + sign * cross(arm, force_N);
  };
  for (std::size_t i = 0; i < situation.legs.size(); ++i) {
    const auto& rigging = plan.riggings.front();
    const auto insert = std::ranges::find(plan.inserts, rigging.legs[i].to, &plan::Insert::id);
    const ForceVector& f = situation.legs[i].on_insert;
    add(insert->at, {in(newton, f.x), in(newton, f.y), in(newton, f.z)}, 1.0);
  }
  for (const loads::AppliedLoad& load : set.loads) add(load.at, in(newton, load.force) * up, -1.0);
  return std::max(std::abs(carried_N - total_N) / total_N, norm(turning) / total_N);
}

}  // namespace

TEST_CASE("forces and moments balance in every situation of every stage") {
  Chance chance(31);
  std::size_t situations = 0;
  for (int i = 0; i < 300; ++i) {
    const std::string text = plan_text(random_slab(chance));
    const auto read = plan::read_plan("plan.toml", text, real_tables());
    REQUIRE(std::holds_alternative<plan::Plan>(read));
    const auto& plan = std::get<plan::Plan>(read);
    const auto made = piece::make_body(plan);
    REQUIRE(std::holds_alternative<piece::Body>(made));
    const auto& body = std::get<piece::Body>(made);
    const auto& rules = real_tables().rule_sets.at("us");
    Trace silent;
    const auto anchorage = checks::anchorage(plan, body, rules, real_tables(), silent);
    const auto facts = checks::stage_facts(plan, plan.stages.front(), body, anchorage, rules, real_tables(), silent);
    const auto* known = std::get_if<std::vector<checks::Situation>>(&facts.gear_situations);
    if (!known) continue;
    for (const checks::Situation& situation : *known) {
      const auto& sets = std::get<loads::StageLoad>(facts.load).gear_loads;
      const auto set = std::ranges::find_if(sets, [&](const loads::LoadSet& s) { return situation.name.starts_with(s.name); });
      REQUIRE(set != sets.end());
      CAPTURE(i, situation.name, text);
      CHECK(unbalanced(plan, situation, *set) <= 1e-9);
      for (const demands::LegForce& leg : situation.legs) CHECK(leg.tension >= Force{});
      ++situations;
    }
  }
  CHECK(situations > 500);
}

TEST_CASE("two runs of the same plan give the same bytes") {
  Chance chance(32);
  std::vector<std::string> texts;
  for (int i = 0; i < 60; ++i) texts.push_back(plan_text(random_slab(chance)));
  for (const std::string& file : all_plans()) texts.push_back(contents_of(file));
  for (const std::string& text : texts) {
    const auto one = report_on("plan.toml", text), two = report_on("plan.toml", text);
    CAPTURE(text);
    CHECK(output::json({{one.file, &one, nullptr}}) == output::json({{two.file, &two, nullptr}}));
  }
}
