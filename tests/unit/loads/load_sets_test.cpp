#include "loads/load_sets.hpp"

#include <catch2/catch.hpp>

using namespace firstpick;

namespace {

loads::LoadParts parts() {
  const Position centre{1.0 * m, 2.0 * m, 3.0 * m}, pallet{1.0 * m, 2.0 * m, 0.0 * m},
      floor{0.0 * m, 0.0 * m, 0.0 * m};
  return {{centre, 100.0 * kN}, {{pallet, 4.0 * kN}}, {{floor, 7.0 * kN}}, Ratio::from_value(1.5)};
}

double sum_kN(const loads::LoadSet& set) {
  double sum = 0.0;
  for (const loads::AppliedLoad& load : set.loads) sum += in(kN, load.force);
  return sum;
}

}  // namespace

TEST_CASE("the moving sets carry the dynamic factor on weight and attached parts, and not on adhesion") {
  const auto sets = loads::moving_sets(parts());
  REQUIRE(sets.size() == 2);
  CHECK(sets[0].name == "hanging");
  CHECK(in(kN, sets[0].total) == Approx(156.0));
  CHECK(sets[1].name == "breaking free");
  CHECK(in(kN, sets[1].total) == Approx(163.0));
  REQUIRE(sets[1].loads.size() == 3);
  CHECK(in(kN, sets[1].loads[2].force) == Approx(7.0));
}

TEST_CASE("where nothing grips there is no breaking free") {
  loads::LoadParts free = parts();
  free.adhesion.clear();
  const auto sets = loads::moving_sets(free);
  REQUIRE(sets.size() == 1);
  CHECK(sets[0].name == "hanging");
}

TEST_CASE("what the insert factor multiplies is the rule set's choice") {
  const auto at_rest = loads::insert_sets(parts(), tables::InsertLoad::weight_only);
  REQUIRE(at_rest.size() == 1);
  CHECK(at_rest[0].name == "at rest");
  CHECK(in(kN, at_rest[0].total) == Approx(104.0));

  const auto moving = loads::insert_sets(parts(), tables::InsertLoad::with_adhesion_and_dynamic);
  REQUIRE(moving.size() == 2);
  CHECK(in(kN, moving[1].total) == Approx(163.0));
}

TEST_CASE("every load keeps its point and every total is the sum of its loads") {
  for (const auto& set : loads::moving_sets(parts())) {
    CAPTURE(set.name);
    CHECK(in(kN, set.total) == Approx(sum_kN(set)));
    CHECK(in(m, set.loads.at(0).at.z) == Approx(3.0));
    CHECK(in(m, set.loads.at(1).at.z) == Approx(0.0).margin(1e-15));
  }
}
