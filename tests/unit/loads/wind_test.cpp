// Wind on a hanging piece by hand: pressure, force, lean, pull in a gust; each number without which there is
// none.

#include "loads/wind.hpp"

#include <cmath>
#include <limits>

#include "piece/body.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_culvert.hpp"
#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

// A cube of 2 m at 2,400 kg/m3 and 3 %: 188.288 kN, 182.639 kN at least; at most 4 sqrt(2) m2 to the wind.
struct Given {
  plan::Plan plan;
  plan::Stage stage = stage_of(plan::StageKind::yard);
  piece::Body body;
  tables::Tables tables = hand_made_tables();  // 1.25 kg/m3, coefficient 2

  Given() {
    plan::Solid cube;
    cube.name = "cube";
    cube.size = {2.0 * m, 2.0 * m, 2.0 * m};
    plan.piece.solids = {cube};
    plan.concrete.density = 2400.0 * kg_per_m3;
    plan.concrete.density_tolerance = Ratio{0.03};
    const auto made = piece::make_body(plan);
    REQUIRE(std::holds_alternative<piece::Body>(made));
    body = std::get<piece::Body>(made);
    stage.wind_speed = 30.0 * m_per_s;
  }
  Outcome<loads::WindLoad> wind(Trace trace = {}) const {
    return loads::wind_load(plan, stage, body, Direction{0.0, 0.0, 1.0}, tables, trace);
  }
};

const double least_kN = 0.97 * 8.0 * 2400.0 * 9.80665 / 1000.0;

}  // namespace

TEST_CASE("wind on a cube: 562.5 Pa at 30 m/s, twice that on its diagonal side") {
  Given given;
  const loads::WindLoad wind = assessed(given.wind());
  const double force_kN = 2.0 * 0.5 * 1.25 * 900.0 / 1000.0 * 4.0 * std::sqrt(2.0),
               lean = std::atan(force_kN / least_kN);
  CHECK(in(kN, wind.force) == Approx(force_kN));
  CHECK(in(radian, wind.lean) == Approx(lean));
  CHECK(in(radian, wind.swing) == Approx(2.0 * lean));
  // From rest the pendulum swings to twice its lean: v^2 = 2 g l (1/cos - 1), pull 1/cos + 2 (1/cos - 1) of
  // the weight.
  CHECK(wind.factor.value() == Approx(1.0 / std::cos(lean) + 2.0 * (1.0 / std::cos(lean) - 1.0)));
  CHECK(in(m, wind.above) == Approx(0.0).margin(1e-9));
  given.body.centroid.z = 0.7 * m;
  CHECK(in(m, assessed(given.wind()).above) == Approx(0.3));
  given.stage.wind_coefficient = Ratio{1.0};
  CHECK(in(kN, assessed(given.wind()).force) == Approx(0.5 * force_kN));
  given.plan.piece.stated_weight = 100.0 * kN;
  CHECK(std::tan(in(radian, assessed(given.wind()).lean)) == Approx(0.5 * force_kN / 100.0));
}

TEST_CASE("wind: the steps show where the coefficient comes from") {
  Given given;
  Trace by_table = Trace::recording();
  assessed(loads::wind_load(given.plan, given.stage, given.body, Direction{0.0, 0.0, 1.0}, given.tables,
                            by_table));
  CHECK(source_ids(step_named(by_table, "F_w")) == std::vector<std::string>{"hand-made.coefficient"});
  CHECK(step_named(by_table, "q_w").result.number == Approx(0.5625));
  CHECK(step_named(by_table, "k_w").result.number == Approx(assessed(given.wind()).factor.value()));
  given.stage.wind_coefficient = Ratio{1.5};
  Trace by_plan = Trace::recording();
  assessed(
      loads::wind_load(given.plan, given.stage, given.body, Direction{0.0, 0.0, 1.0}, given.tables, by_plan));
  CHECK(step_named(by_plan, "F_w").sources.empty());
  CHECK(step_named(by_plan, "F_w").clause == "c_w of the plan");
}

TEST_CASE("wind: no wind is no force and no lean") {
  Given given;
  given.stage.wind_speed = 0.0 * m_per_s;
  const loads::WindLoad wind = assessed(given.wind());
  CHECK(wind.force == Force{});
  CHECK(wind.factor.value() == Approx(1.0));
}

TEST_CASE("wind: what is not there, or no number, is named") {
  const double nan = std::numeric_limits<double>::quiet_NaN(),
               infinite = std::numeric_limits<double>::infinity();
  const auto why = [](auto change) {
    Given given;
    change(given);
    return why_not(given.wind());
  };
  CHECK(why([](Given& g) { g.stage.wind_speed.reset(); }) == "no wind is known");
  CHECK(why([](Given& g) { g.tables.wind.reset(); }) == "no wind is known");
  const std::string no_number = "the speed of the wind or its coefficient is not a usable number";
  for (const double bad : {-0.001, nan, infinite}) {
    CHECK(why([&](Given& g) { g.stage.wind_speed = bad * m_per_s; }) == no_number);
    CHECK(why([&](Given& g) { g.stage.wind_coefficient = Ratio{bad}; }) == no_number);
  }
  CHECK(why([](Given& g) { g.stage.wind_coefficient = Ratio{0.0}; }) == no_number);
  CHECK(why([](Given& g) { g.tables.wind->coefficient.value = Ratio{0.0}; }) == no_number);
  for (const double bad : {0.0, -1.0, nan})
    CHECK(why([&](Given& g) { g.tables.wind->air_density.value = bad * kg_per_m3; }) == no_number);
  CHECK(why([](Given& g) { g.plan.concrete.density_tolerance.reset(); }) ==
        "the density has no tolerance, so the weight has no lower bound");
  for (const double bad : {1.0, 1.5, nan, -infinite})
    CHECK(why([&](Given& g) { g.plan.concrete.density_tolerance = Ratio{bad}; }) ==
          "the piece has no least weight");
  const std::string no_force = "the force of the wind is not a usable number";
  CHECK(why([](Given& g) { g.stage.wind_speed = 1e200 * m_per_s; }) == no_force);
  CHECK(why([&](Given& g) { g.body.centroid.z = nan * m; }) == no_force);
}

TEST_CASE("in wind every load is heavier by the factor, and acts higher by what the side area is above the centroid") {
  loads::WindLoad wind;
  wind.factor = Ratio{1.2};
  wind.above = 0.25 * m;
  const loads::LoadSet set{"hanging",
                           {{Position{1.0 * m, 2.0 * m, 3.0 * m}, 10.0 * kN}, {Position{}, 5.0 * kN}},
                           15.0 * kN};
  const loads::LoadSet blown = loads::in_wind(set, wind, Direction{0.6, 0.0, 0.8});
  CHECK(blown.name == "hanging in wind");
  CHECK(in(kN, blown.total) == Approx(18.0));
  REQUIRE(blown.loads.size() == 2);
  CHECK(in(kN, blown.loads[0].force) == Approx(12.0));
  CHECK(in(m, blown.loads[0].at.x) == Approx(1.15));
  CHECK(in(m, blown.loads[0].at.y) == Approx(2.0));
  CHECK(in(m, blown.loads[0].at.z) == Approx(3.2));
  CHECK(in(kN, blown.loads[1].force) == Approx(6.0));
  CHECK(in(m, blown.loads[1].at.z) == Approx(0.2));
}
