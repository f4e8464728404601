// Which inserts count as uncracked by EN 1992-4: at the edge distance and thickness at which splitting needs no check, and one
// step below; never where the piece may crack, turns, or its bending is not known.

#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

#include "checks/cracked_inserts.hpp"
#include "checks/stage_facts.hpp"
#include "support/plan_files.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

struct European {
  CheckedPlan checked = checked_plan("tests/plans/ok/slab-by-the-european-rules.toml");
  const tables::RuleSet& rules = real_tables().rule_sets.at("eu");
  Trace silent;
  checks::Anchorage prepared;
  European() {
    checked.plan.concrete.cracked = false;
    prepared = checks::anchorage(checked.plan, checked.body, rules, real_tables(), silent);
  }
  checks::StageFacts facts() {
    return checks::stage_facts(checked.plan, checked.plan.stages.front(), checked.body, prepared, rules,
                               real_tables(), silent);
  }
  resistances::HeadedInsert& drawn(std::size_t i) {
    return std::get<resistances::HeadedInsert>(prepared.headed.at(i));
  }
};

bool counts_as_cracked(const checks::StageFacts& facts, std::size_t i) {
  return std::get<resistances::HeadedInsert>(facts.as_cracked.at(i)).cracked;
}

}  // namespace

TEST_CASE("uncracked by EN 1992-4 at the edge distance and thickness of splitting, one step below cracked") {
  European slab;
  const auto& en = *slab.rules.headed.en;
  const std::size_t count = slab.prepared.headed.size();
  REQUIRE(count >= 3);
  std::vector<piece::InsertSite> sites;
  for (std::size_t i = 0; i < count; ++i) sites.push_back(*slab.drawn(i).site);
  for (std::size_t i = 0; i < count; ++i) {
    resistances::HeadedInsert& insert = slab.drawn(i);
    insert.site = &sites[i];
    insert.edges.nearest = en.split_edge.value * en.split_extent.value * insert.h_ef;
    sites[i].thickness = en.split_thickness.value * insert.h_ef;
  }
  checks::StageFacts facts = slab.facts();
  REQUIRE(facts.as_cracked.size() == count);
  for (std::size_t i = 0; i < count; ++i) CHECK_FALSE(counts_as_cracked(facts, i));

  Length& edge = slab.drawn(1).edges.nearest;
  edge = Length::from_value(std::nextafter(edge.value(), 0.0));
  sites[2].thickness = Length::from_value(std::nextafter(sites[2].thickness.value(), 0.0));
  checks::count_cracks(facts, true);
  CHECK_FALSE(counts_as_cracked(facts, 0));
  CHECK(counts_as_cracked(facts, 1));
  CHECK(counts_as_cracked(facts, 2));

  checks::count_cracks(facts, false);  // before the bending is known
  for (std::size_t i = 0; i < count; ++i) CHECK(counts_as_cracked(facts, i));
}

TEST_CASE("inserts that the plan puts in cracked concrete, or that are none, are left as drawn") {
  European slab;
  for (std::size_t i = 0; i < slab.prepared.headed.size(); ++i) slab.drawn(i).cracked = true;
  slab.prepared.headed[1] = NotAssessed{"not a headed insert", {}};
  slab.prepared.groups.clear(), slab.prepared.blowout_rows.clear(), slab.prepared.shear_rows.clear();
  checks::StageFacts facts = slab.facts();
  CHECK(facts.as_cracked.empty());
  slab.drawn(0).cracked = false;
  checks::count_cracks(facts, true);
  REQUIRE(facts.as_cracked.size() == slab.prepared.headed.size());
  CHECK_FALSE(is_assessed(facts.as_cracked[1]));
  CHECK(counts_as_cracked(facts, 2));
}
