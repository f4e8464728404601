// Bolts through the concrete and the plates that hold them: the values by hand, each limit, and each thing
// that is not there.

#include "resistances/through_bolt.hpp"

#include <cmath>
#include <limits>

#include "support/assessed.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

constexpr double bad_numbers[] = {0.0, -1.0, std::numeric_limits<double>::quiet_NaN(),
                                  std::numeric_limits<double>::infinity()};
const double pi = std::acos(-1.0);

plan::Insert bolt() {
  plan::Insert insert;
  insert.id = "T1";
  insert.kind = "through-bolt";
  insert.shank = 20.0 * mm;
  insert.threaded = false;
  insert.steel = "mild";
  insert.washer = 120.0 * mm;
  return insert;
}

struct Given {
  plan::Insert insert = bolt();
  tables::RuleSet rules = hand_made_rules();
  tables::Tables tables;
  plan::Concrete concrete;
  piece::InsertSite site;
  Stress f_c = 16.0 * MPa;

  Given() {
    tables.steels.emplace(
        "mild", tables::Steel{"mild", made("futa", Stress{400.0 * MPa}), made("fya", Stress{250.0 * MPa})});
    tables.concretes.emplace("light", tables::ConcreteKind{"light", made_ratio("lambda_a", 0.75),
                                                           made("low", Density{1000.0 * kg_per_m3}),
                                                           made("high", Density{2000.0 * kg_per_m3})});
    tables.plates =
        tables::PlateModel{.bearing = made_ratio("bearing", 0.85),
                           .punching = made("punching", RootStress::from_value(220.0)),  // 0.22 MPa^0.5
                           .thread_engagement = made_ratio("thread_engagement", 1.5)};
    concrete.kind = "light";
    site = HeadedFace(rectangle(-1.0 * m, -1.0 * m, 2.0 * m, 2.0 * m), 150.0 * mm)
               .site_at("T1", Length{}, Length{}, Angle{});
  }
  Outcome<Resistance<Force>> steel(Trace trace = {}) const {
    return resistances::through_bolt_steel(insert, rules, tables, trace);
  }
  Outcome<Resistance<Force>> punching() const {
    Trace trace;
    return resistances::plate_punching(insert, site, concrete, f_c, tables, trace);
  }
};

}  // namespace

TEST_CASE("steel of a through-bolt: area times the strength that ACI 318 credits, or f_uk by EN 1992-4") {
  Given given;
  const double A_mm2 = pi / 4.0 * 400.0;
  CHECK(in(newton, assessed(given.steel()).value) == Approx(A_mm2 * 400.0).epsilon(1e-12));
  given.tables.steels.at("mild").fya.value = 200.0 * MPa;
  CHECK(in(newton, assessed(given.steel()).value) == Approx(A_mm2 * 380.0).epsilon(1e-12));  // 1.9 fya
  given.tables.steels.at("mild").fya.value = 900.0 * MPa;
  given.tables.steels.at("mild").futa.value = 1000.0 * MPa;
  CHECK(in(newton, assessed(given.steel()).value) == Approx(A_mm2 * 861.8447).epsilon(1e-6));  // 125 ksi
  Trace aci = Trace::recording();
  assessed(resistances::through_bolt_steel(given.insert, given.rules, given.tables, aci));
  CHECK(step_named(aci, "R").clause == "ACI 318-19 17.6.1.2");
  given.rules.headed = eu_rules().headed;
  CHECK(in(newton, assessed(given.steel()).value) == Approx(A_mm2 * 1000.0).epsilon(1e-12));
  Trace en = Trace::recording();
  assessed(resistances::through_bolt_steel(given.insert, given.rules, given.tables, en));
  CHECK(step_named(en, "R").formula == "A_s * f_uk / 1000");
  CHECK(step_named(en, "R").result.number == Approx(A_mm2 * 1000.0 / 1000.0).epsilon(1e-12));
}

TEST_CASE("steel of a through-bolt: what is not there is named") {
  Given given;
  given.insert.shank.reset();
  CHECK(why_not(given.steel()) == "diameter and steel of the bolt of insert T1 are not both in the plan");
  given = Given();
  given.insert.steel.clear();
  CHECK(why_not(given.steel()) == "diameter and steel of the bolt of insert T1 are not both in the plan");
  given.insert.steel = "miild";
  CHECK(why_not(given.steel()) == "the steel 'miild' of insert T1 is not in tables/steels.toml");
  given = Given();
  given.insert.threaded.reset();
  CHECK(why_not(given.steel()) ==
        "the plan does not say whether a thread lies in the stressed shank of insert T1");
  for (const double bad : bad_numbers) {
    CAPTURE(bad);
    given = Given();
    given.insert.shank = bad * mm;
    CHECK(why_not(given.steel()) == "the shank of insert T1 is not a number above zero");
    given = Given();
    given.tables.steels.at("mild").futa.value = bad * MPa;
    if (!std::isinf(bad))
      CHECK(why_not(given.steel()) == "the steel of insert T1 is not described by usable numbers");
  }
}

TEST_CASE("punching: 0.22 lambda sqrt(f_c) 4 (w + h) h") {
  const Given given;
  // 0.22 x 0.75 x 4 x 4 (120 + 150) 150 N
  CHECK(in(newton, assessed(given.punching()).value) ==
        Approx(0.22 * 0.75 * 4.0 * 1080.0 * 150.0).epsilon(1e-12));
  Trace trace = Trace::recording();
  assessed(
      resistances::plate_punching(given.insert, given.site, given.concrete, given.f_c, given.tables, trace));
  CHECK(step_named(trace, "b_o").result.number == Approx(1080.0 / 25.4).epsilon(1e-12));
}

TEST_CASE(
    "punching: the perimeter must lie inside the edges however the plate is turned, 0.7071 (w + h) from the "
    "bolt") {
  const double least_mm = 270.0 / std::sqrt(2.0);
  for (const auto& [nearest_mm, known] :
       {std::pair{least_mm + 0.001, true}, std::pair{least_mm - 0.001, false}}) {
    CAPTURE(nearest_mm);
    Given given;
    given.site = HeadedFace(rectangle(-nearest_mm * mm, -1.0 * m, 2.0 * m, 2.0 * m), 150.0 * mm)
                     .site_at("T1", Length{}, Length{}, Angle{});
    if (known)
      CHECK(in(newton, assessed(given.punching()).value) ==
            Approx(0.22 * 0.75 * 4.0 * 1080.0 * 150.0).epsilon(1e-12));
    else
      CHECK(why_not(given.punching()) == "an edge is nearer to insert T1 than the body that punches out");
  }
}

TEST_CASE("punching: what is not there is named") {
  Given given;
  given.tables.plates.reset();
  CHECK(why_not(given.punching()) == "the table of plates is not there");
  given = Given();
  given.insert.washer.reset();
  CHECK(why_not(given.punching()) == "the side of the plate of insert T1 is not in the plan");
  given = Given();
  given.concrete.kind = "unknown";
  CHECK(why_not(given.punching()) == "the concrete 'unknown' is not in tables/concretes.toml");
  given = Given();
  given.site.planar = false;
  CHECK(why_not(given.punching()) == "insert T1 sits in a curved face; the formula is for a flat one");
  given = Given();
  given.site.outline.outer.clear();
  CHECK(why_not(given.punching()) == "insert T1 does not lie inside the outline of its face");
  const std::string not_numbers = "the plate of insert T1 is not described by numbers above zero";
  for (const double bad : bad_numbers) {
    CAPTURE(bad);
    given = Given();
    given.insert.washer = bad * mm;
    CHECK(why_not(given.punching()) == not_numbers);
    given = Given();
    given.site.thickness = bad * mm;
    CHECK(why_not(given.punching()) == not_numbers);
    given = Given();
    given.f_c = bad * MPa;
    CHECK(why_not(given.punching()) == not_numbers);
    given = Given();
    given.tables.concretes.at("light").lambda_a.value = bad;
    CHECK(why_not(given.punching()) == "the punching of insert T1 is not described by usable numbers");
  }
}
