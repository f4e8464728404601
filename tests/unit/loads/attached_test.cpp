#include "loads/attached.hpp"

#include <cmath>
#include <limits>

#include "support/assessed.hpp"
#include "support/hand_made_culvert.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

plan::Plan plan_with_pallet_and_core() {
  plan::Plan plan = culvert_plan();
  plan::Attached pallet;
  pallet.what = "pallet";
  pallet.weight = 350.0 * lbf;
  plan::Attached core;
  core.what = "core";
  core.weight = 80.0 * lbf;
  core.at = Position{1.0 * ft, 2.0 * ft, 3.0 * ft};
  plan.form->attached = {pallet, core};
  return plan;
}

loads::AttachedParts parts_of_culvert(Trace& trace) {
  return assessed(loads::attached_parts(plan_with_pallet_and_core(), culvert_body(), trace));
}

}  // namespace

TEST_CASE("each attached part acts at its point, or at the centre of gravity") {
  Trace trace;
  const loads::AttachedParts parts = parts_of_culvert(trace);
  REQUIRE(parts.loads.size() == 2);
  CHECK(in(lbf, parts.loads[0].force) == Approx(350.0));
  CHECK(in(m, parts.loads[0].at.z) == Approx(in(m, culvert_body().centroid.z)));
  CHECK(in(lbf, parts.loads[1].force) == Approx(80.0));
  CHECK(in(ft, parts.loads[1].at.x) == Approx(1.0));
  CHECK(in(lbf, parts.total) == Approx(430.0));
}

TEST_CASE("a plan without a form, or a form without parts, has nothing attached") {
  plan::Plan plan = culvert_plan();
  Trace trace;
  CHECK(assessed(loads::attached_parts(plan, culvert_body(), trace))
            .loads.empty());
  plan.form.reset();
  CHECK(assessed(loads::attached_parts(plan, culvert_body(), trace))
            .loads.empty());
}

TEST_CASE("the steps of attached parts say where each acts and add them up") {
  Trace trace = Trace::recording();
  parts_of_culvert(trace);
  CHECK(step_named(trace, "W_att_1").words ==
        "attached part pallet, no point given, taken at the centre of gravity (1.422, 0.914, 1.118) m");
  CHECK(step_named(trace, "W_att_2").words == "attached part core, at (0.305, 0.610, 0.914) m");
  const Step sum = step_named(trace, "W_att");
  CHECK(sum.formula == "W_att_1 + W_att_2");
  REQUIRE(sum.given.size() == 2);
  CHECK(sum.result.number == Approx(sum.given[0].number + sum.given[1].number));
}

TEST_CASE("a part of no weight or at no point is named") {
  const double nan = std::numeric_limits<double>::quiet_NaN(),
               infinite = std::numeric_limits<double>::infinity();
  Trace trace;
  for (const double bad : {0.0, -1.0, nan, infinite}) {
    CAPTURE(bad);
    plan::Plan plan = plan_with_pallet_and_core();
    plan.form->attached[1].weight = bad * lbf;
    CHECK(why_not(loads::attached_parts(plan, culvert_body(), trace)) ==
          "the weight of attached part 'core' is not a usable number");
    if (std::isfinite(bad)) continue;
    for (Length Position::*const axis : {&Position::x, &Position::y, &Position::z}) {
      plan = plan_with_pallet_and_core();
      (*plan.form->attached[1].at).*axis = bad * m;
      CHECK(why_not(loads::attached_parts(plan, culvert_body(), trace)) ==
            "the point of attached part 'core' is not a usable number");
    }
  }
}

TEST_CASE("a part that is taken off before the stage weighs nothing, one of which nobody says so may be off") {
  plan::Plan plan = plan_with_pallet_and_core();
  plan.stages = {stage_of(plan::StageKind::strip), stage_of(plan::StageKind::yard)};
  plan.form->attached[1].until = plan::StageKind::strip;
  Trace strip = Trace::recording(), yard = Trace::recording();
  const auto first = assessed(loads::attached_parts(plan, culvert_body(), strip, &plan.stages[0]));
  CHECK(in(lbf, first.total) == Approx(430.0));
  const auto later = assessed(loads::attached_parts(plan, culvert_body(), yard, &plan.stages[1]));
  CHECK(in(lbf, later.total) == Approx(350.0));
  REQUIRE(later.loads.size() == 2);
  CHECK(later.loads[1].force == Force{});
  CHECK(later.may_be_off == std::vector<std::size_t>{0});
  CHECK(step_named(yard, "W_att_2").words.ends_with(": taken off before this stage"));
  CHECK(step_named(yard, "W_att_1").words.ends_with(": it may be off, and the loads without it are judged too"));
}
