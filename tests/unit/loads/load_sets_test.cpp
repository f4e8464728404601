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

TEST_CASE(
    "without the parts that may be off there is a set of its own: at rest with no factor, hanging with the "
    "dynamic one") {
  loads::LoadParts some = parts();
  some.may_be_off = {0};
  const auto at_rest = loads::insert_sets(some, tables::InsertLoad::weight_only);
  REQUIRE(at_rest.size() == 2);
  CHECK(in(kN, at_rest[0].total) == Approx(104.0));
  CHECK(at_rest[1].name == "at rest without form parts");
  CHECK(in(kN, at_rest[1].total) == Approx(100.0));
  REQUIRE(at_rest[1].loads.size() == 2);
  CHECK(at_rest[1].loads[1].force == Force{});
  const auto moving = loads::moving_sets(some, Ratio{2.5});
  REQUIRE(moving.size() == 4);
  CHECK(moving[2].name == "least load");
  CHECK(in(kN, moving[2].total) == Approx(260.0));
  CHECK(moving[3].name == "hanging without form parts");
  CHECK(in(kN, moving[3].total) == Approx(150.0));
}

TEST_CASE("load factors multiply weights, parts and grip, each by its own, in every set") {
  const tables::LoadFactors factors{{Ratio{1.2}, {}}, {Ratio{1.5}, {}}};
  loads::LoadParts some = parts();
  some.may_be_off = {0};
  const auto rest = loads::insert_sets(some, tables::InsertLoad::weight_only, {}, factors);
  REQUIRE(rest.size() == 2);
  CHECK(in(kN, rest[0].total) == Approx(1.2 * 104.0));
  CHECK(rest[1].name == "at rest without form parts with load factors");
  CHECK(in(kN, rest[1].total) == Approx(1.2 * 100.0));
  const auto moving = loads::insert_sets(some, tables::InsertLoad::with_adhesion_and_dynamic, {}, factors);
  REQUIRE(moving.size() == 3);
  CHECK(in(kN, moving[0].total) == Approx(1.2 * 156.0));
  CHECK(in(kN, moving[1].total) == Approx(1.2 * 156.0 + 1.5 * 7.0));
  CHECK(in(kN, moving[2].total) == Approx(1.2 * 150.0));
}
