// The cone of a loop alone in its concrete, which borrows the formula of a headed insert as deep as the loop.

#include "resistances/loop_breakout.hpp"

#include <cmath>
#include <limits>

#include "support/assessed.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

struct Given {
  plan::Insert insert;
  piece::InsertSite site;
  plan::Concrete concrete;
  tables::RuleSet rules = hand_made_rules();
  tables::Tables tables;

  Given() {
    insert.id = "L1";
    insert.kind = "loop-bar";
    insert.embedment = 8.0 * inch;
    insert.loop = plan::Loop{};
    insert.loop->diameter = 0.5 * inch;
    // 9 in to the left, elsewhere far: r = 12 in
    site = HeadedFace(rectangle(-9.0 * inch, -500.0 * inch, 1000.0 * inch, 1000.0 * inch), 10.0 * inch)
               .site_at("L1", Length{}, Length{}, Angle{});
    concrete.kind = "light";
    concrete.cracked = true;
    tables.concretes.emplace("light", tables::ConcreteKind{"light", made_ratio("lambda_a", 0.75),
                                                           made("low", Density{1000.0 * kg_per_m3}),
                                                           made("high", Density{2000.0 * kg_per_m3})});
  }
  Outcome<Resistance<Force>> cone() const {
    Trace trace;
    resistances::ProjectedAreas areas;
    return resistances::loop_breakout(insert, site, concrete, 2500.0 * psi, rules, tables, areas, trace);
  }
};

}  // namespace

TEST_CASE("cone of a loop: 24 lambda sqrt(f_c) h^1.5, cut off at the edge, 1.25 times where not cracked") {
  Given given;
  // (9 + 12) 24 over 24^2; 0.7 + 0.3 x 9 / 12
  const double N_lb = 24.0 * 0.75 * 50.0 * std::pow(8.0, 1.5) * (21.0 / 24.0) * 0.925;
  CHECK(in(lbf, assessed(given.cone()).value) == Approx(N_lb).epsilon(1e-9));
  given.concrete.cracked = false;
  CHECK(in(lbf, assessed(given.cone()).value) == Approx(1.25 * N_lb).epsilon(1e-9));
}

TEST_CASE("cone of a loop: what is not there is named") {
  const std::string not_both = "depth and diameter of loop L1 are not both in the plan";
  Given given;
  given.insert.embedment.reset();
  CHECK(why_not(given.cone()) == not_both);
  given = Given();
  given.insert.loop.reset();
  CHECK(why_not(given.cone()) == not_both);
  given = Given();
  given.insert.loop->diameter.reset();
  CHECK(why_not(given.cone()) == not_both);
  given = Given();
  given.concrete.cracked.reset();
  CHECK(why_not(given.cone()) == "the plan does not say whether the concrete at loop L1 is cracked");
  given = Given();
  given.concrete.kind = "unknown";
  CHECK(why_not(given.cone()) == "the concrete 'unknown' is not in tables/concretes.toml");
  given = Given();
  given.site.planar = false;
  CHECK(why_not(given.cone()) == "loop L1 sits in a curved face; the formulas are for a flat face");
  given = Given();
  given.site.not_concrete.reset();
  CHECK(why_not(given.cone()) == "the concrete below the face of insert L1 was not measured");
  given = Given();
  given.site.outline.outer.clear();
  CHECK(why_not(given.cone()) == "insert L1 does not lie inside the outline of its face");
  given = Given();
  given.insert.loop->diameter = -1.0 * inch;
  CHECK(why_not(given.cone()) == "insert L1 is not described by numbers above zero");
}

TEST_CASE("cone of a loop: it must end inside the concrete") {
  for (const double depth_in :
       {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity(), 10.0, 11.0}) {
    CAPTURE(depth_in);
    Given given;
    given.insert.embedment = depth_in * inch;
    CHECK(why_not(given.cone()) == "loop L1 does not end inside the concrete: see loop-depth");
  }
  Given given;
  given.insert.embedment = 9.99 * inch;
  CHECK(is_assessed(given.cone()));
  given.site.thickness = std::nan("") * inch;
  CHECK(why_not(given.cone()) == "loop L1 does not end inside the concrete: see loop-depth");
}
