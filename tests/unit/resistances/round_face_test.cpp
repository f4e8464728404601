// Headed inserts in curved faces, by a body with a flat face inside the concrete.
#include "resistances/round_face.hpp"

#include <array>
#include <cmath>

#include "resistances/breakout.hpp"
#include "resistances/edge_breakout.hpp"
#include "resistances/pullout.hpp"
#include "resistances/side_blowout.hpp"
#include "resistances/steel_tension.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"
#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;
using namespace firstpick::pieces;

namespace {

const Stress f_c = 3000.0 * psi;

struct Placed {
  piece::Body body;
  plan::Insert one;
  tables::RuleSet rules = hand_made_rules();
  tables::Tables tables;
  plan::Concrete concrete;

  Placed(std::vector<Solid> solids, Position point, double embedment_mm, Length shank = 16.0 * mm) {
    one = insert("A1", point);
    one.kind = "headed";
    one.embedment = embedment_mm * mm;
    one.shank = shank;
    one.threaded = false;
    one.head_bearing_area = 600.0 * mm2;
    one.steel = "mild";
    body = body_of(plan_of(std::move(solids), {}, {one}));
    concrete.kind = "normalweight";
    concrete.cracked = true;
    tables.steels.emplace(
        "mild", tables::Steel{"mild", made("futa", Stress{58.0 * ksi}), made("fya", Stress{36.0 * ksi})});
    tables.concretes.emplace("normalweight", tables::ConcreteKind{"normalweight", made_ratio("lambda_a", 1.0),
                                                                  made("low", Density{135.0 * lb_per_ft3}),
                                                                  made("high", Density{160.0 * lb_per_ft3})});
  }
  Outcome<HeadedInsert> outcome(Trace& trace) const {
    return headed_insert(one, body.sites.at(0), concrete, rules, tables, trace);
  }
  HeadedInsert insert_in() const {
    Trace trace;
    return assessed(outcome(trace));
  }
  std::string refusal() const {
    Trace trace;
    return why_not(outcome(trace));
  }
};

double tension_lb(const Placed& placed) {
  const HeadedInsert insert = placed.insert_in();
  Trace trace;
  ProjectedAreas areas;
  const std::array<const HeadedInsert*, 1> one{&insert};
  return in(lbf, assessed(breakout(one, areas, Eccentricity::none(), f_c, placed.rules.headed, trace)).value);
}

double shear_lb(const Placed& placed, const Direction& shear) {
  Trace trace;
  return in(lbf, assessed(edge_breakout(placed.insert_in(), shear, f_c, placed.rules.headed, trace)).value);
}

Placed on_round(double radius_mm, double embedment_mm = 100.0, double angle_deg = 0.0) {
  const double angle = angle_deg * 3.14159265358979323846 / 180.0;
  return {{pipe("wall", {}, 2.0 * radius_mm * mm, (2.0 * radius_mm - 400.0) * mm, 1000.0 * mm)},
          at(radius_mm * std::cos(angle), radius_mm * std::sin(angle), 500),
          embedment_mm};
}
Placed on_flat(double embedment_mm, double half_mm = 1000.0, double thick_mm = 200.0) {
  return {{box("slab", at(-thick_mm, -half_mm, 0), at(thick_mm, 2.0 * half_mm, 1000))},
          at(0, 0, 500),
          embedment_mm};
}

}  // namespace

TEST_CASE("a round wall by hand: chord, embedment and breakout of the flat face that is taken") {
  // R = 750 mm, h_e = 100 mm, far from the ends. Of the depths 6.25, 9.375, 12.5 mm the last has the first chord that is
  // wider than the body: half of it is sqrt(2 x 750 x 12.5 - 12.5^2) = 136.36 mm, and 1.5 x 87.5 = 131.25 mm.
  const Placed round{{pipe("wall", {}, 1500.0 * mm, 1200.0 * mm, 1000.0 * mm)}, at(750, 0, 500), 100.0};
  const HeadedInsert insert = round.insert_in();
  CHECK(in(mm, insert.h_ef) == Approx(87.5));
  CHECK(in(mm, insert.edges.nearest) == Approx(136.359));
  CHECK(in(mm, insert.site->thickness) == Approx(137.485));
  // 24 sqrt(3000) (87.5 / 25.4)^1.5 = 8405 lb: nothing cuts its body off
  CHECK(tension_lb(round) == Approx(24.0 * std::sqrt(3000.0) * std::pow(87.5 / 25.4, 1.5)).epsilon(1e-9));
  CHECK(tension_lb(round) == Approx(8405.0).margin(1.0));
}

TEST_CASE("a tight curve: the chord is an edge on both sides") {
  // R = 300 mm, h_e = 100 mm, solid. At 3/16: 18.75 mm, half chord 104.396 mm, h_ef = 81.25 mm, reach 121.875 mm
  //   A/A0 = 104.396 / 121.875 = 0.85658   psi_ed = 0.7 + 0.3 x 0.85658 = 0.95697   N_b = 24 sqrt(3000) 3.19882^1.5 = 7520.7 lb
  //   N = 6165 lb.  At 1/4: 25 mm, 119.896 mm, 75 mm, reach 112.5: N = N_b = 6669.7 lb, more.  At 3/8: 62.5 mm: 5074 lb.
  const Placed round{{cylinder("post", {}, 600.0 * mm, 1000.0 * mm)}, at(300, 0, 500), 100.0};
  CHECK(in(mm, round.insert_in().h_ef) == Approx(75.0));
  CHECK(tension_lb(round) == Approx(24.0 * std::sqrt(3000.0) * std::pow(75.0 / 25.4, 1.5)).epsilon(1e-9));
  // a slab as wide as the chord, cut as deep, says the same, in tension and in shear both ways
  const Placed flat = on_flat(75.0, 119.8957881, in(mm, round.insert_in().site->thickness));
  CHECK(tension_lb(round) == Approx(tension_lb(flat)).epsilon(1e-7));
  for (const Direction& shear :
       {Direction{0, 1, 0}, Direction{0, -1, 0}, Direction{0, 0, 1}, Direction{0, 0.6, 0.8}})
    CHECK(shear_lb(round, shear) == Approx(shear_lb(flat, shear)).epsilon(1e-7));
}

TEST_CASE("a wall of a huge radius holds what a flat one holds, and no more") {
  const Placed round = on_round(50000.0, 25.0), flat = on_flat(25.0);
  CHECK(tension_lb(round) <= tension_lb(flat));
  CHECK(tension_lb(round) >= 0.999 * tension_lb(flat));
  const Placed inside{{pipe("wall", {}, 100000.0 * mm, 99600.0 * mm, 1000.0 * mm)}, at(-49800, 0, 500), 25.0};
  CHECK(tension_lb(inside) <= tension_lb(flat));
  CHECK(tension_lb(inside) >= 0.999 * tension_lb(flat));
}

TEST_CASE("a smaller radius never holds more in tension") {
  double more_lb = tension_lb(on_flat(100.0));
  for (const double radius_mm : {20000.0, 5000.0, 2000.0, 1000.0, 700.0, 500.0, 400.0, 300.0}) {
    CAPTURE(radius_mm);
    const double now_lb = tension_lb(on_round(radius_mm));
    CHECK(now_lb <= more_lb * (1.0 + 1e-9));
    CHECK(now_lb > 0.0);
    more_lb = now_lb;
  }
  CHECK(more_lb < 0.8 * tension_lb(on_flat(100.0)));
}

TEST_CASE("a turned wall and its mirror image hold the same") {
  const double tension = tension_lb(on_round(700.0));
  for (const double angle_deg : {30.0, 45.0, 90.0, 180.0, 210.0, -30.0}) {
    CAPTURE(angle_deg);
    CHECK(tension_lb(on_round(700.0, 100.0, angle_deg)) == Approx(tension).epsilon(1e-6));
    CHECK(shear_lb(on_round(700.0, 100.0, angle_deg), {0, 0, 1}) ==
          Approx(shear_lb(on_round(700.0), {0, 0, 1})).epsilon(1e-6));
  }
}

TEST_CASE("by EN 1992-4 the same flat face counts: 8.9 sqrt(20.684) 87.5^1.5 (0.5 + 87.5 / 200) = 31,059 N") {
  Placed round{{pipe("wall", {}, 1500.0 * mm, 1200.0 * mm, 1000.0 * mm)}, at(750, 0, 500), 100.0};
  round.rules = eu_rules();
  CHECK(in(mm, round.insert_in().h_ef) == Approx(87.5));
  CHECK(tension_lb(round) * 4.4482216 == Approx(31059.0).margin(1.0).epsilon(0.0));
}

TEST_CASE("steel and the bearing of the head are those of the insert, whatever the face") {
  const HeadedInsert round = on_round(500.0).insert_in(), flat = on_flat(100.0).insert_in();
  Trace trace;
  CHECK(assessed(steel_tension(round, trace)).value == assessed(steel_tension(flat, trace)).value);
  const auto model = hand_made_headed_model();
  CHECK(assessed(pullout(round, f_c, model, trace)).value ==
        assessed(pullout(flat, f_c, model, trace)).value);
}

TEST_CASE("the steps tell how far the flat face lies below the insert") {
  const Placed round{{pipe("wall", {}, 1500.0 * mm, 1200.0 * mm, 1000.0 * mm)}, at(750, 0, 500), 100.0};
  Trace trace = Trace::recording();
  (void)assessed(round.outcome(trace));
  CHECK(step_named(trace, "z_f").result.number == Approx(12.5 / 25.4));
  CHECK(step_named(trace, "z_f").words ==
        "insert A1 sits in a curved face: calculated in a flat face inside the concrete, below it by");
  CHECK(step_named(trace, "h_ef").result.number == Approx(87.5 / 25.4));
  CHECK(step_named(trace, "h_ef").formula == "h_e - z_f");
}

TEST_CASE("in a curved face without a flat one inside, or with bars about the insert, nothing is assessed") {
  Placed none = on_round(700.0);
  none.body.sites.at(0).within.clear();
  const std::string no_face =
      "insert A1 sits in a curved face; the formulas are for a flat face, and inside the concrete there is "
      "none above its head "
      "that is large enough and apart from other inserts";
  CHECK(none.refusal() == no_face);
  Placed deeper =
      on_round(700.0);  // an embedment that the flat faces were not looked for: the head is below every body
  deeper.one.embedment = 199.99 * mm;
  CHECK(deeper.refusal() == no_face);
  Placed shallower = on_round(700.0);  // above every flat face
  shallower.one.embedment = 0.01 * mm;
  CHECK(shallower.refusal() == no_face);
  Placed barred = on_round(700.0);
  barred.one.bars.emplace();
  CHECK(barred.refusal() ==
        "insert A1 sits in a curved face, and bars about it are counted in a flat one only");
}

TEST_CASE("a flat face narrower than half the least spacing of inserts does not count") {
  // 4 d_a / 2 = 2 d_a: at R = 300 mm edges of 119.90 mm at 25 mm below the insert, of 145.24 mm at 37.5 mm, and none wider
  const auto of = [](double shank_mm) {
    return Placed{{cylinder("post", {}, 600.0 * mm, 1000.0 * mm)}, at(300, 0, 500), 100.0, shank_mm * mm};
  };
  CHECK(in(mm, of(59.9).insert_in().h_ef) == Approx(75.0));
  CHECK(in(mm, of(60.0).insert_in().h_ef) == Approx(62.5));
  CHECK(in(mm, of(72.6).insert_in().h_ef) == Approx(62.5));
  Trace trace;
  CHECK_FALSE(is_assessed(of(72.7).outcome(trace)));
}
