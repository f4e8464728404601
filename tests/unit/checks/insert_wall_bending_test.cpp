// Inserts that bend the walls they sit in, by hand-made rules: factor 1.5 behind 7.5 sqrt(f) psi, widths of the hand-made rules.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr std::string_view id = "insert-wall-bending";

plan::Insert in_the_top(const std::string& name, double x_m, double y_m, double z_m) {
  plan::Insert insert = headed_insert_at(name, x_m * m, y_m * m);
  insert.at.z = z_m * m;
  return insert;
}

void hang_freely(SlabLift& lift) {
  lift.plan.piece.stated_weight.reset();
  lift.plan.form->contacts.clear();
  lift.plan.form->nothing_grips = true;
  lift.plan.riggings[0].equalised.clear();
}

// Outside 2.2 x 1.5 x 1.2 m, open above, 0.16 m thick; legs of 2.5 m.
void make_tank(SlabLift& lift, double y_m = 0.08) {
  plan::Solid& outside = lift.plan.piece.solids[0];
  outside.size = {2.2 * m, 1.5 * m, 1.2 * m};
  plan::Solid inside = outside;
  inside.name = "inside", inside.cut = true;
  inside.at = {0.16 * m, 0.16 * m, 0.16 * m};
  inside.size = {1.88 * m, 1.18 * m, 1.04 * m};
  lift.plan.piece.solids.push_back(inside);
  lift.plan.inserts = {in_the_top("A1", 0.55, y_m, 1.2), in_the_top("A2", 1.65, y_m, 1.2),
                       in_the_top("A3", 1.65, 1.5 - y_m, 1.2), in_the_top("A4", 0.55, 1.5 - y_m, 1.2)};
  hang_freely(lift);
}

// Outside diameter 1.4, wall 0.1, 1.3 m high, three legs of 2.5 m.
void make_base(SlabLift& lift) {
  plan::Solid& barrel = lift.plan.piece.solids[0];
  barrel.shape = plan::Shape::cylinder;
  barrel.diameter = 1.4 * m, barrel.length = 1.3 * m;
  plan::Solid bore = barrel;
  bore.name = "bore", bore.cut = true;
  bore.at.z = 0.15 * m;
  bore.diameter = 1.2 * m, bore.length = 1.15 * m;
  lift.plan.piece.solids.push_back(bore);
  const double half = 0.325, side = 0.65 * std::sqrt(0.75);
  lift.plan.inserts = {in_the_top("A1", 0.65, 0.0, 1.3), in_the_top("A2", -half, side, 1.3), in_the_top("A3", -half, -side, 1.3)};
  lift.plan.riggings[0].legs = {leg_to("A1"), leg_to("A2"), leg_to("A3")};
  hang_freely(lift);
}

double tension_MPa(const Finding& finding) {
  CAPTURE(finding.text);
  REQUIRE(finding.demand);
  return in(MPa, std::get<Stress>(*finding.demand));
}

Finding finding_of(SlabLift& lift) { return finding_for(id, "A1", lift.facts()); }

}  // namespace

TEST_CASE("inserts in the top of the long walls of a tank: the strip of the wall's top, by hand") {
  SlabLift lift;
  make_tank(lift);
  const auto facts = lift.facts();
  const Finding finding = finding_for(id, "A1", facts);
  Trace trace = Trace::recording();
  rule_named(id)->judge(facts, trace);
  double raise = 1.0;  // these rules have no multiplier
  for (const auto& entry : trace.steps())
    if (entry.step.result.symbol == "r_bend") raise = entry.step.result.number;
  REQUIRE(raise >= 1.0);
  // Clear 0.39 and 1.49 m, a = 0.47, l = 2.04; at the wall beside 0.39 of 1.88. Half of the width lies below the top.
  const double t = 0.16, a = 0.47, l = 2.04, w = 0.5 * (t + 2.5 * a * (1.0 - a / l));
  const double w_end = 0.5 * (t + 0.5 * 0.39 * (2.0 - 0.39 / 1.88));
  double most = 0.0;
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
    const ForceVector &one = situation.legs[0].on_insert, &two = situation.legs[1].on_insert;
    const double F = std::abs(one.y.value()), H = std::abs(one.x.value());
    const double F_2 = one.y.value() * two.y.value() > 0.0 ? std::abs(two.y.value()) : 0.0;
    if (F == 0.0) continue;
    // The other insert of the wall stands 1.1 m farther along the strip.
    const double M = F * a * (l - a) / l + F_2 * a * (l - a - 1.1) / l;
    const double M_end = F * 0.39 * std::pow(1.49 / 1.88, 2) + F_2 * 1.49 * std::pow(0.39 / 1.88, 2);
    most = std::max({most, 6.0 * M / (w * t * t) + H / (w * t), 6.0 * M_end / (w_end * t * t) + H / (w_end * t)});
  }
  CHECK(tension_MPa(finding) == Approx(raise * most / 1e6).epsilon(0.005));
  CHECK(finding.clause == "ACI 318-25 19.2.3.1");
  CHECK(judged(id, facts).size() == 4);
}

TEST_CASE("a wall that an insert bends: at, below and above the limit, longer legs bend it less") {
  SlabLift lift;
  make_tank(lift);
  const double utilization = finding_of(lift).utilization.value();
  lift.rules.cracking.factor.value = Ratio::from_value(1.5 / utilization * (1.0 - 1e-9));
  CHECK(finding_of(lift).result == Result::pass);
  lift.rules.cracking.factor.value = Ratio::from_value(1.5 / utilization * (1.0 + 1e-9));
  const Finding failed = finding_of(lift);
  CHECK(failed.result == Result::fail);
  CHECK(failed.text.find("A1 bends the wall or slab it sits in, between what holds it: ") != std::string::npos);
  CHECK(failed.remedy.find("legs that hang upright") != std::string::npos);
  for (plan::Leg& leg : lift.plan.riggings[0].legs) leg.length = 5.0 * m;
  CHECK(finding_of(lift).utilization.value() < 0.7 * failed.utilization.value());
}

TEST_CASE("three legs pinch a round wall: 0.189 P R on a sixth of the arc") {
  SlabLift lift;
  make_base(lift);
  const auto facts = lift.facts();
  const auto& first = std::get<std::vector<Situation>>(facts.gear_situations).front();
  const double P = std::hypot(first.legs[0].on_insert.x.value(), first.legs[0].on_insert.y.value());
  Trace trace = Trace::recording();
  const auto findings = rule_named(id)->judge(facts, trace);
  double moment = 0.0, height = 0.0;
  for (const auto& entry : trace.steps()) {
    if (entry.step.result.symbol == "M_w") moment = entry.step.result.number;
    for (const Term& term : entry.step.given)
      if (term.symbol == "h_w") height = term.number;
  }
  REQUIRE(findings.size() == 3);
  CHECK(height == Approx(2.0 * M_PI * 0.65 / 3.0 / 6.0).epsilon(0.001));
  CHECK(1000.0 * moment >= 0.188 * P * 0.65);  // of three legs alike; a heavier sharing is more
  CHECK(1000.0 * moment <= 0.30 * P * 0.65);
}

TEST_CASE("a round wall that is bent too much is told of more legs round it, and no leg no wall") {
  SlabLift lift;
  make_base(lift);
  CHECK(finding_of(lift).result == Result::pass);
  lift.rules.cracking.factor.value = Ratio{1000.0};
  const Finding bent = finding_of(lift);
  CHECK(bent.result == Result::fail);
  CHECK(bent.remedy == "legs that hang upright under a beam or frame, more legs evenly round, or more strength");
  lift.plan.inserts.push_back(in_the_top("A4", -0.65, 0.0, 1.3));  // hung on nothing
  const Finding slack = finding_for(id, "A4", lift.facts());
  CHECK(slack.result == Result::pass);
  CHECK_FALSE(slack.demand);
}

TEST_CASE("a wall whose loads have no multiplier is not computed, and told which product there is") {
  SlabLift lift;
  make_tank(lift);
  lift.rules.bending_multiplier = {{"strip.flat.smooth", made_ratio("m", 1.5)}};
  lift.plan.form->product = "wall.smooth";
  const Finding unknown = finding_of(lift);
  CHECK(unknown.result == Result::missing);
  CHECK(unknown.text == "the rule set has no bending multiplier for product 'wall.smooth'");
  CHECK(unknown.remedy == "[form] product: 'flat.smooth'");
}

TEST_CASE("a panel, and an insert that nothing holds, pass without numbers") {
  SlabLift panel;
  CHECK(finding_of(panel).result == Result::pass);
  CHECK_FALSE(finding_of(panel).demand);
  SlabLift block;
  block.plan.piece.solids[0].size = {2.0 * m, 1.6 * m, 1.0 * m};
  block.plan.inserts = {in_the_top("A1", 0.5, 0.4, 1.0), in_the_top("A2", 1.5, 0.4, 1.0), in_the_top("A3", 1.5, 1.2, 1.0),
                        in_the_top("A4", 0.5, 1.2, 1.0)};
  hang_freely(block);
  CHECK(finding_of(block).result == Result::pass);
  CHECK_FALSE(finding_of(block).demand);
}

TEST_CASE("what is missing is HOLD, and a named check mends only what is not computed") {
  SlabLift lift;
  make_tank(lift);
  SECTION("strength") { lift.plan.concrete.evidence.reset(); }
  SECTION("the length of a leg") { lift.plan.riggings[0].legs[0].length.reset(); }
  for (const char* check : {"", "calculation 24-117"}) {
    lift.plan.piece.bending_check = check;
    const Finding finding = finding_of(lift);
    CHECK(finding.result == Result::missing);
    check_says_why(finding);
  }
}

TEST_CASE("an insert off the middle of its wall by more than a quarter of the thickness") {
  SlabLift lift;
  make_tank(lift, 0.1195);
  CHECK(finding_of(lift).demand);
  SlabLift farther;
  make_tank(farther, 0.1205);
  CHECK(finding_of(farther).result == Result::missing);
  check_says_why(finding_of(farther));
  farther.plan.piece.bending_check = "calculation 24-117";
  CHECK(finding_of(farther).result == Result::note);
}

TEST_CASE("inserts in the top slab of a box with a window, which is no frame: the slab from wall to wall, straight up") {
  SlabLift lift;
  plan::Solid& outside = lift.plan.piece.solids[0];
  outside.size = {2.0 * m, 1.6 * m, 1.4 * m};
  plan::Solid barrel = outside, window = outside;
  barrel.name = "barrel", barrel.cut = window.cut = true;
  barrel.at = {0.15 * m, 0.0 * m, 0.15 * m}, barrel.size = {1.7 * m, 1.6 * m, 1.1 * m};
  window.name = "window", window.at = {0.0 * m, 0.5 * m, 0.5 * m}, window.size = {0.15 * m, 0.5 * m, 0.5 * m};
  lift.plan.piece.solids.push_back(barrel);
  lift.plan.piece.solids.push_back(window);
  lift.plan.inserts = {in_the_top("A1", 0.5, 0.4, 1.4), in_the_top("A2", 1.5, 0.4, 1.4), in_the_top("A3", 1.5, 1.2, 1.4),
                       in_the_top("A4", 0.5, 1.2, 1.4)};
  hang_freely(lift);
  const auto facts = lift.facts();
  Trace trace = Trace::recording();
  rule_named(id)->judge(facts, trace);
  double a_m = 0.0, l_m = 0.0, t_m = 0.0, e_m = 0.0;
  for (const auto& entry : trace.steps())
    for (const Term& term : entry.step.given) {
      if (term.symbol == "t_w") t_m = term.number;
      if (term.symbol == "a_w") a_m = term.number;
      if (term.symbol == "l_w") l_m = term.number;
      if (term.symbol == "e_w") e_m = term.number;
    }
  CHECK(t_m == Approx(0.15).margin(1e-5));
  CHECK(e_m == Approx(0.075).margin(1e-5));
  // Clear 0.35 of 1.7 m; at the pull half a thickness more on either side.
  CHECK((l_m == Approx(1.85).margin(1e-4) || l_m == Approx(1.7).margin(1e-4)));
  CHECK((a_m == Approx(0.425).margin(1e-4) || a_m == Approx(0.35).margin(1e-4)));
  CHECK(finding_for(id, "A1", facts).demand);
}
