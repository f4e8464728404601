// wind-side-load, scale-reading and the stiffness of legs by their size: each limit at, below and above, and what they add.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

#include "checks/crane_hook_load.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

double next(double value, double towards) { return std::nextafter(value, towards); }

loads::WindLoad wind_of(SlabLift& lift) {
  const auto facts = lift.facts();
  REQUIRE(facts.wind);
  if (const auto* gap = std::get_if<NotAssessed>(&*facts.wind)) FAIL(gap->why);
  return std::get<loads::WindLoad>(*facts.wind);
}

Finding wind_finding(SlabLift& lift) { return finding_for("wind-side-load", "SL-1", lift.facts()); }
Finding scale_finding(SlabLift& lift) { return finding_for("scale-reading", "SL-1", lift.facts()); }

Force most_pull(const StageFacts& facts, bool in_wind) {
  Force most{};
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
    if ((situation.name.find("in wind") != std::string::npos) != in_wind) continue;
    if (situation.name.starts_with(loads::breaking_free)) continue;
    for (const auto& leg : situation.legs) most = std::max(most, leg.tension);
  }
  return most;
}

plan::ScaleReading reading(Force shows, plan::ScaleState state) {
  plan::ScaleReading scale;
  scale.shows = shows;
  scale.state = state;
  scale.rigging = scale.block = true;
  return scale;
}

}  // namespace

TEST_CASE("wind by hand: slab 4.0 x 2.0 x 0.3 m at 20 m/s") {
  SlabLift lift;
  lift.stage().wind_speed = 20.0 * m_per_s;
  const auto wind = wind_of(lift);
  // 1.25 x 400 / 2 = 250 Pa, x 2.0 x 0.3 sqrt(20) m2 = 0.6708 kN; W_least 0.97 x 56.486 = 54.79 kN
  CHECK(in(kN, wind.force) == Approx(0.250 * 2.0 * 0.3 * std::sqrt(20.0)).epsilon(1e-12));
  CHECK(std::tan(wind.lean.value()) ==
        Approx(in(kN, wind.force) / (0.97 * 2.4 * 2400.0 * 9.80665 / 1000.0)).epsilon(1e-12));
  CHECK(wind.swing.value() == Approx(2.0 * wind.lean.value()));
  CHECK(in(m, wind.above) == Approx(0.0).margin(1e-12));
}

TEST_CASE("wind: the factor is the peak pull of a pendulum that a gust takes from plumb, followed step by step") {
  SlabLift lift;
  lift.stage().wind_speed = 150.0 * m_per_s;  // of no lift: so that there is something to see
  const auto wind = wind_of(lift);
  const double phi = wind.lean.value();
  REQUIRE(phi > 0.5);
  // Unit mass on a unit rope, weight 1 and wind tan(phi): pull = cos a + tan(phi) sin a + speed^2
  double angle = 0.0, speed = 0.0, most = 0.0, farthest = 0.0;
  for (int i = 0; i < 200000; ++i) {
    speed += (std::tan(phi) * std::cos(angle) - std::sin(angle)) * 5e-5;
    angle += speed * 5e-5;
    farthest = std::max(farthest, angle);
    most = std::max(most, std::cos(angle) + std::tan(phi) * std::sin(angle) + speed * speed);
  }
  CHECK(wind.factor.value() == Approx(most).epsilon(1e-3));
  CHECK(wind.swing.value() == Approx(farthest).epsilon(1e-3));
}

TEST_CASE("wind: legs and inserts are judged in it, heavier by its factor, the hook is not") {
  SlabLift calm, windy;
  windy.stage().wind_speed = 60.0 * m_per_s;
  const double factor = wind_of(windy).factor.value();
  REQUIRE(factor > 1.01);
  const auto still = calm.facts(), blown = windy.facts();
  CHECK(most_pull(still, true) == Force{});
  CHECK((most_pull(blown, true) / most_pull(blown, false)).value() == Approx(factor).epsilon(1e-6));
  const auto& felt = std::get<std::vector<InsertSituation>>(blown.insert_situations);
  CHECK(std::ranges::any_of(felt, [](const auto& s) { return s.name.starts_with("hanging in wind"); }));
  CHECK(std::get<Force>(hook_load_of(windy)) == std::get<Force>(hook_load_of(calm)));
}

TEST_CASE("wind-side-load: no speed is still air and passes, no wind at all too") {
  SlabLift lift;
  CHECK(wind_finding(lift).result == Result::pass);
  CHECK_FALSE(lift.facts().wind);
  lift.stage().wind_speed = 0.0 * m_per_s;
  CHECK(wind_finding(lift).result == Result::pass);
  CHECK(wind_of(lift).factor.value() == 1.0);
}

TEST_CASE("wind-side-load at the caution speed, one step above") {
  SlabLift lift;
  lift.stage().wind_speed = 9.0 * m_per_s;
  CHECK(wind_finding(lift).result == Result::pass);
  lift.stage().wind_speed = next(9.0, 10.0) * m_per_s;
  CHECK(wind_finding(lift).result == Result::missing);
  check_says_why(wind_finding(lift));
}

TEST_CASE("wind-side-load at the swing, one step below the limit") {
  SlabLift lift;
  lift.rules.wind_caution.value = 100.0 * m_per_s;
  lift.stage().wind_speed = 30.0 * m_per_s;
  const double swing = wind_of(lift).swing.value();
  lift.rules.maximum_swing.value = Angle::from_value(swing);
  CHECK(wind_finding(lift).result == Result::pass);
  lift.rules.maximum_swing.value = Angle::from_value(next(swing, 0.0));
  CHECK(wind_finding(lift).result == Result::fail);
  check_says_why(wind_finding(lift));
  for (const double none : {0.0, std::nan("")}) {
    lift.rules.maximum_swing.value = Angle::from_value(none);
    CHECK(wind_finding(lift).result == Result::missing);
  }
}

TEST_CASE("wind-side-load: what cannot be computed is missing, with its reason") {
  SlabLift lift;
  lift.stage().wind_speed = 5.0 * m_per_s;
  SECTION("speed") { lift.stage().wind_speed = std::nan("") * m_per_s; }
  SECTION("negative speed") { lift.stage().wind_speed = -1.0 * m_per_s; }
  SECTION("coefficient") { lift.stage().wind_coefficient = Ratio{0.0}; }
  SECTION("table") { lift.tables.wind.reset(); }
  SECTION("density tolerance") { lift.plan.concrete.density_tolerance.reset(); }
  SECTION("two hooks") {
    plan::Hook north, south;
    north.id = "north";
    south.id = "south";
    lift.plan.riggings.front().hooks = {north, south};
  }
  SECTION("turn") { lift.stage().kind = plan::StageKind::turn; }
  CHECK(wind_finding(lift).result == Result::missing);
  check_says_why(wind_finding(lift));
}

TEST_CASE("wind: each number it stands on, at its limit and past it, leaves no wind load at all") {
  SlabLift lift;
  lift.stage().wind_speed = 9.0 * m_per_s;
  const double inf = std::numeric_limits<double>::infinity();
  const auto load = [&] {
    const auto facts = lift.facts();
    Trace silent;
    return loads::wind_load(lift.plan, lift.stage(), lift.body, Direction{0.0, 0.0, 1.0}, lift.tables, silent);
  };
  REQUIRE(std::holds_alternative<loads::WindLoad>(load()));
  SECTION("no speed") { lift.stage().wind_speed.reset(); }
  SECTION("no table") { lift.tables.wind.reset(); }
  SECTION("speed below zero") { lift.stage().wind_speed = next(0.0, -1.0) * m_per_s; }
  SECTION("no number for a speed") { lift.stage().wind_speed = std::nan("") * m_per_s; }
  SECTION("endless speed") { lift.stage().wind_speed = inf * m_per_s; }
  SECTION("coefficient of zero") { lift.stage().wind_coefficient = Ratio{0.0}; }
  SECTION("endless coefficient") { lift.stage().wind_coefficient = Ratio{inf}; }
  SECTION("air without weight") { lift.tables.wind->air_density.value = Density{}; }
  // What may be 100 % lighter weighs nothing: any wind takes it away.
  SECTION("no least weight") { lift.plan.concrete.density_tolerance = Ratio{1.0}; }
  SECTION("endless least weight") {
    lift.plan.concrete.density_tolerance = Ratio{-inf};
    lift.plan.piece.stated_weight.reset();
  }
  // The square of the speed is past every number: the hook line is level, its cosine a last bit, its factor still a number.
  SECTION("endless force of a speed that is a number") { lift.stage().wind_speed = 1e200 * m_per_s; }
  CHECK(std::holds_alternative<NotAssessed>(load()));
}

TEST_CASE("wind: every load of a set is heavier by the factor and moves up to the middle of the side area") {
  loads::LoadSet set{"hanging", {{Position{1.0 * m, 2.0 * m, 3.0 * m}, 10.0 * kN},
                                 {Position{0.0 * m, 0.0 * m, 1.0 * m}, 4.0 * kN}}, 14.0 * kN};
  loads::WindLoad wind;
  wind.factor = Ratio{1.25};
  wind.above = 0.5 * m;
  const loads::LoadSet blown = loads::in_wind(set, wind, Direction{0.0, 0.6, 0.8});  // 0.5 m along it: 0.3 and 0.4 m
  CHECK(blown.name == "hanging in wind");
  REQUIRE(blown.loads.size() == 2);
  CHECK(in(kN, blown.total) == Approx(17.5));
  CHECK(in(kN, blown.loads[0].force) == Approx(12.5));
  CHECK(in(kN, blown.loads[1].force) == Approx(5.0));
  CHECK(in(m, blown.loads[0].at.x) == Approx(1.0));
  CHECK(in(m, blown.loads[0].at.y) == Approx(2.3));
  CHECK(in(m, blown.loads[0].at.z) == Approx(3.4));
  CHECK(in(m, blown.loads[1].at.z) == Approx(1.4));
}

TEST_CASE("wind: the engineer's coefficient stands instead of the table's") {
  SlabLift lift;
  lift.stage().wind_speed = 9.0 * m_per_s;
  const Force by_table = wind_of(lift).force;
  lift.stage().wind_coefficient = Ratio{1.0};
  CHECK((by_table / wind_of(lift).force).value() == Approx(2.0).epsilon(1e-12));
}

TEST_CASE("scale-reading as it hung: at each limit and one step off it") {
  SlabLift lift;
  lift.rules.scale_disagreement.value = Ratio{0.0625};  // 1.0625 and 0.9375 are exact
  lift.plan.piece.stated_weight.reset();
  const auto facts = lift.facts();
  const double weight = std::get<loads::StageLoad>(facts.load).weight.value();
  const double least = std::get<Force>(loads::least_weight(lift.plan, lift.body)).value();
  // Nothing else on the scale, so that limits are met to the last bit.
  const auto found = [&](double shows) {
    lift.stage().scale_reading = reading(Force::from_value(shows), plan::ScaleState::hanging);
    lift.stage().scale_reading->rigging = lift.stage().scale_reading->block = false;
    return scale_finding(lift);
  };
  CHECK(found(weight).result == Result::pass);
  CHECK(found(next(weight, 1e9)).result == Result::missing);
  CHECK(found(1.0625 * weight).result == Result::missing);
  CHECK(found(next(1.0625 * weight, 1e9)).result == Result::fail);
  CHECK(found(0.9375 * least).result == Result::pass);
  CHECK(found(next(0.9375 * least, 0.0)).result == Result::missing);
  for (const double shows : {next(weight, 1e9), 2.0 * weight, 0.5 * least, std::nan(""), -1.0}) {
    CAPTURE(shows);
    CHECK(found(shows).result != Result::pass);
    check_says_why(found(shows));
  }
}

TEST_CASE("scale-reading: rigging, block and form parts are taken off as far as they were on it") {
  SlabLift lift;
  const double weight_kN = in(kN, std::get<loads::StageLoad>(lift.facts().load).weight);
  lift.stage().scale_reading = reading((weight_kN + 1.9) * kN, plan::ScaleState::hanging);
  CHECK(scale_finding(lift).result == Result::pass);  // 1 kN of rigging, 1 kN of block
  lift.stage().scale_reading->block = false;
  CHECK(scale_finding(lift).result == Result::missing);
  lift.stage().scale_reading->block = true;
  plan::Attached pallet;
  pallet.what = "pallet";
  pallet.weight = 3.0 * kN;
  lift.plan.form->attached = {pallet};
  CHECK(scale_finding(lift).result == Result::missing);  // was it on?
  lift.stage().scale_reading->attached = true;
  lift.stage().scale_reading->shows = (weight_kN + 4.9) * kN;
  CHECK(scale_finding(lift).result == Result::pass);
}

TEST_CASE("scale-reading as it broke free: at the pull not to exceed, one step above") {
  SlabLift lift;
  const double hook = std::get<Force>(hook_load_of(lift)).value();
  lift.stage().scale_reading = reading(Force::from_value(hook), plan::ScaleState::breaking_free);
  CHECK(scale_finding(lift).result == Result::pass);
  lift.stage().scale_reading->shows = Force::from_value(next(hook, 1e9));
  CHECK(scale_finding(lift).result == Result::fail);
  check_says_why(scale_finding(lift));
  lift.stage().scale_reading->shows = Force::from_value(hook);
  lift.stage().scale_reading->block = false;  // 1 kN that the scale did not see
  CHECK(scale_finding(lift).result == Result::fail);
}

TEST_CASE("scale-reading: nothing without one, HOLD where it cannot be compared") {
  SlabLift lift;
  CHECK(scale_finding(lift).result == Result::pass);
  lift.stage().scale_reading = reading(58.0 * kN, plan::ScaleState::hanging);
  SECTION("rigging not said") { lift.stage().scale_reading->rigging.reset(); }
  SECTION("block not said") { lift.stage().scale_reading->block.reset(); }
  SECTION("nothing shown") { lift.stage().scale_reading->shows.reset(); }
  SECTION("no weight of the block") { lift.plan.cranes.front().block.reset(); }
  SECTION("turn") { lift.stage().kind = plan::StageKind::turn; }
  CHECK(scale_finding(lift).result == Result::missing);
  check_says_why(scale_finding(lift));
}

TEST_CASE("stiffness of legs: stated, by size, nearly rigid, by size nearly rigid legs are judged beside it") {
  SlabLift lift;
  lift.rules.sharing.value = tables::Sharing::elastic;
  const auto stiffness_kN = [](const StageFacts& facts) {
    return in(kN, std::get<demands::HungPiece>(facts.hung).legs.front().axial_stiffness);
  };
  const auto rigid_beside = [](const StageFacts& facts) {
    return std::ranges::any_of(std::get<std::vector<Situation>>(facts.gear_situations),
                               [](const Situation& s) { return s.name == "hanging, legs nearly rigid"; });
  };
  const auto plain = lift.facts();
  CHECK(stiffness_kN(plain) == Approx(1000.0 * in(kN, std::get<loads::StageLoad>(plain.load).gear_loads.front().total)));
  CHECK_FALSE(rigid_beside(plain));

  lift.plan.slings.front().size = 10.0 * mm;  // a kind without an entry: nothing changes
  CHECK(stiffness_kN(lift.facts()) == stiffness_kN(plain));
  lift.tables.slings.at("chain").axial_modulus = made("k_EA", Stress{85.4e3 * MPa});
  const auto by_size = lift.facts();
  CHECK(stiffness_kN(by_size) == Approx(8540.0).epsilon(1e-12));  // 85.4 GPa x (10 mm)^2
  CHECK(rigid_beside(by_size));

  lift.plan.slings.front().axial_stiffness = 5000.0 * kN;
  const auto stated = lift.facts();
  CHECK(stiffness_kN(stated) == Approx(5000.0));
  CHECK_FALSE(rigid_beside(stated));
}
