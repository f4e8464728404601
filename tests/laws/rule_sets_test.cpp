// The laws of every rule set but us, which has files of its own: more strength or less load never makes a lift worse, and a
// mirrored piece is judged alike.
//
// Looked for the rule that breaks them: what is not assessed in weak concrete (HOLD) may fail in stronger concrete, where it
// is. Declared loads are therefore held against their full value first (checks/insert_rating.cpp), and below the range of the
// formulas the least strength of the rule set stops the lift.

#include <catch2/catch.hpp>

#include "support/plan_files.hpp"
#include "support/report_numbers.hpp"
#include "support/slab_text.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

constexpr int plans = 40;

std::vector<std::string> other_rule_sets() {
  std::vector<std::string> ids;
  for (const auto& [id, rules] : real_tables().rule_sets)
    if (id != "us") ids.push_back(id);
  REQUIRE_FALSE(ids.empty());
  return ids;
}

// Whether these plans must put a law to the test under that rule set: one that is based on another moves a limit or two, and the
// slabs at random need not lie about them.
bool must_be_tried(const std::string& rules) { return real_tables().rule_sets.at(rules).based_on.empty(); }

SlabText slab_under(const std::string& rules, Chance& chance) {
  SlabText slab = random_slab(chance);
  slab.rules = rules;
  return slab;
}

}  // namespace

TEST_CASE("every rule set: more strength never worsens a verdict and never raises a utilization that both have") {
  for (const std::string& rules : other_rule_sets()) {
    Chance chance(31);
    std::size_t better = 0, compared = 0;
    for (int i = 0; i < plans; ++i) {
      const SlabText weak = slab_under(rules, chance);
      SlabText strong = weak;
      const double more = chance.between(1.0, 2.0);
      for (double& result : strong.results_MPa) result *= more;
      const auto before = report_on("weak.toml", plan_text(weak)), after = report_on("strong.toml", plan_text(strong));
      CAPTURE(rules, i, more, plan_text(weak));
      CHECK(after.verdict <= before.verdict);
      better += after.verdict < before.verdict ? 1U : 0U;
      const Numbers use_before = utilizations(before);
      for (const auto& [name, use] : utilizations(after)) {
        const auto known = use_before.find(name);
        if (known == use_before.end()) continue;
        ++compared;
        CAPTURE(name);
        CHECK(use <= known->second * (1.0 + 1e-12));
      }
    }
    CAPTURE(rules);
    CHECK((better > 0 || !must_be_tried(rules)));  // else the law was never put to the test
    CHECK(compared > plans);
  }
}

TEST_CASE("every rule set: more density never improves a verdict") {
  for (const std::string& rules : other_rule_sets()) {
    Chance chance(32);
    std::size_t worse = 0;
    for (int i = 0; i < plans; ++i) {
      const SlabText light = slab_under(rules, chance);
      SlabText heavy = light;
      const double factor = chance.between(1.0, 1.5);
      heavy.density_kg_per_m3 *= factor;
      heavy.stated_kN *= factor;
      const auto before = report_on("light.toml", plan_text(light)), after = report_on("heavy.toml", plan_text(heavy));
      CAPTURE(rules, i, factor, plan_text(light));
      CHECK(after.verdict >= before.verdict);
      worse += after.verdict > before.verdict ? 1U : 0U;
    }
    CAPTURE(rules);
    CHECK((worse > 0 || !must_be_tried(rules)));
  }
}

TEST_CASE("every rule set: a mirrored piece is judged alike") {
  for (const std::string& rules : other_rule_sets()) {
    Chance chance(33);
    for (int i = 0; i < plans / 2; ++i) {
      const SlabText slab = slab_under(rules, chance);
      SlabText mirrored = slab;
      for (SlabText::Box& box : mirrored.boxes) box.at_mm[0] = -box.at_mm[0] - box.size_mm[0];
      for (SlabText::Insert& insert : mirrored.inserts) insert.at_mm[0] = -insert.at_mm[0];
      const auto one = report_on("slab.toml", plan_text(slab)), other = report_on("mirrored.toml", plan_text(mirrored));
      CAPTURE(rules, i, plan_text(slab));
      CHECK(one.verdict == other.verdict);
      CHECK(difference(utilizations(one), utilizations(other), 1e-6) == "");
    }
  }
}

TEST_CASE("every rule set: the same plan in SI and US units") {
  for (const std::string& rules : other_rule_sets()) {
    Chance chance(34);
    for (int i = 0; i < 10; ++i) {
      const SlabText slab = slab_under(rules, chance);
      CAPTURE(rules, i);
      CHECK(difference(utilizations(report_on("si.toml", plan_text(slab, Written::si))),
                       utilizations(report_on("us.toml", plan_text(slab, Written::us))), 1e-9) == "");
    }
  }
}
