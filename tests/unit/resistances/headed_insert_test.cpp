#include "resistances/headed_insert.hpp"

#include <cmath>
#include <limits>

#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

struct Case {
  plan::Insert insert;
  piece::InsertSite site;
  plan::Concrete concrete;
  tables::RuleSet rules;
  tables::Tables tables;

  Case() : rules(hand_made_rules()) {
    insert.id = "A1";
    insert.kind = "headed";
    insert.at = {20.0 * inch, 10.0 * inch, 8.0 * inch};
    insert.embedment = 6.0 * inch;
    insert.shank = 0.75 * inch;
    insert.threaded = false;
    insert.head_bearing_area = 0.911 * in2;
    insert.steel = "mild";
    site = HeadedFace(rectangle(0.0 * inch, 0.0 * inch, 40.0 * inch, 40.0 * inch), 8.0 * inch)
               .site_at("A1", 20.0 * inch, 10.0 * inch, -90.0 * deg);
    concrete.kind = "normalweight";
    concrete.cracked = true;
    tables.steels.emplace(
        "mild", tables::Steel{"mild", made("futa", Stress{58.0 * ksi}), made("fya", Stress{36.0 * ksi})});
    tables.concretes.emplace("normalweight", tables::ConcreteKind{"normalweight", made_ratio("lambda_a", 1.0),
                                                                  made("low", Density{135.0 * lb_per_ft3}),
                                                                  made("high", Density{160.0 * lb_per_ft3})});
  }
  Outcome<HeadedInsert> made_of(Trace& trace) const {
    return headed_insert(insert, site, concrete, rules, tables, trace);
  }
  Outcome<HeadedInsert> outcome() const {
    Trace trace;
    return made_of(trace);
  }
};

}  // namespace

TEST_CASE("a whole headed insert carries the plan's numbers and the tables'") {
  const Case given;
  const HeadedInsert insert = assessed(given.outcome());
  CHECK(insert.id == "A1");
  CHECK(in(inch, insert.h_ef) == Approx(6.0));
  CHECK(in(in2, insert.A_se) == Approx(3.14159265358979 / 4.0 * 0.75 * 0.75));
  CHECK(in(ksi, insert.f_uta) == Approx(58.0));
  CHECK(insert.lambda_a.value() == 1.0);
  CHECK(insert.cracked);
  CHECK_FALSE(insert.stud);
  CHECK(insert.site == &given.site);
  CHECK(in(inch, insert.edges.nearest) == Approx(10.0));
  CHECK(in(inch, insert.edges.c[0]) == Approx(10.0));  // u points to -y
  CHECK(in(inch, insert.at.z) == Approx(8.0));
}

TEST_CASE("the thread of pitch p takes 0.9743 p off the diameter") {
  Case given;
  given.insert.threaded.reset();
  given.insert.thread_pitch = 0.1 * inch;
  const double core_in = 0.75 - 0.9743 * 0.1;
  CHECK(in(in2, assessed(given.outcome()).A_se) ==
        Approx(3.14159265358979 / 4.0 * core_in * core_in).epsilon(1e-4));
  given.insert.thread_pitch = 0.77 * inch;  // leaves nothing
  CHECK(why_not(given.outcome()) ==
        "what the thread_pitch leaves of the shank of insert A1 is not a number above zero");
}

TEST_CASE("3/4 in with ten threads to the inch: a stress area of 0.334 in2") {
  // 3/4-10 UNC of ASME B1.1, A_s = 0.7854 (D - 0.9743 / n)^2 = 0.334 in2 (from memory); half a unit of the last digit
  Case given;
  given.insert.threaded = true;
  given.insert.thread_pitch = 0.1 * inch;
  CHECK(in(in2, assessed(given.outcome()).A_se) == Approx(0.334).margin(0.0005));
}

TEST_CASE("a bolt is not assessed unless the plan gives its pitch or says that it has no thread") {
  Case given;
  given.insert.threaded.reset();
  CHECK(why_not(given.outcome()) ==
        "the plan does not say whether a thread lies in the stressed shank of insert A1");
  CHECK(remedy_for(given.outcome()) ==
        "[[insert]] thread_pitch = \"... in\", or threaded = false where there is no thread");
  given.insert.threaded = true;
  CHECK(why_not(given.outcome()) == "insert A1 is threaded and has no thread_pitch");
  CHECK(remedy_for(given.outcome()) == "[[insert]] thread_pitch = \"... in\"");
  given.insert.threaded = false;
  CHECK(is_assessed(given.outcome()));
  given.insert.thread_pitch = 0.1 * inch;
  CHECK(why_not(given.outcome()) == "insert A1 is said to have no thread, and a thread_pitch");
}

TEST_CASE("a welded stud has no thread unless the plan says so") {
  Case given;
  given.insert.welded_stud = true;
  const Area plain = assessed(given.outcome()).A_se;
  given.insert.threaded.reset();
  CHECK(assessed(given.outcome()).A_se == plain);
  given.insert.threaded = true;
  CHECK(why_not(given.outcome()) == "insert A1 is threaded and has no thread_pitch");
  given.insert.threaded.reset();
  given.insert.thread_pitch = 0.1 * inch;
  CHECK(assessed(given.outcome()).A_se < plain);
}

TEST_CASE("steel strength is credited up to 1.9 fya and up to 125 ksi") {
  Case given;
  given.tables.steels.at("mild").fya.value = 25.0 * ksi;
  CHECK(in(ksi, assessed(given.outcome()).f_uta) == Approx(47.5));
  given.tables.steels.at("mild").fya.value = 130.0 * ksi;
  given.tables.steels.at("mild").futa.value = 150.0 * ksi;
  CHECK(in(ksi, assessed(given.outcome()).f_uta) == Approx(125.0));
}

TEST_CASE("every absent key is named, with the line to write") {
  Case given;
  given.insert.head_bearing_area.reset();
  CHECK(why_not(given.outcome()) == "insert A1 has no head_bearing_area");
  CHECK(remedy_for(given.outcome()) == "[[insert]] head_bearing_area = \"... in2\"");
  given.insert.embedment.reset();
  given.insert.shank.reset();
  given.insert.steel.clear();
  CHECK(why_not(given.outcome()) == "insert A1 has no embedment, no shank, no head_bearing_area, no steel");
}

TEST_CASE("concrete that is not said to be cracked or not is not assessed") {
  Case given;
  given.concrete.cracked.reset();
  CHECK(why_not(given.outcome()) == "the plan does not say whether the concrete at insert A1 is cracked");
  CHECK(remedy_for(given.outcome()).starts_with("[concrete] cracked = true"));
}

TEST_CASE("steel and concrete must be in the tables") {
  Case given;
  given.insert.steel = "miild";
  CHECK(why_not(given.outcome()) == "the steel 'miild' of insert A1 is not in tables/steels.toml");
  given = Case();
  given.concrete.kind = "unknown";
  CHECK(why_not(given.outcome()) == "the concrete 'unknown' is not in tables/concretes.toml");
}

TEST_CASE(
    "another kind of insert, a curved face and a head that is not inside the concrete are not assessed") {
  Case given;
  given.insert.kind = "loop-strand";
  CHECK(why_not(given.outcome()) ==
        "insert A1 is of kind 'loop-strand'; these formulas are for headed inserts");
  given = Case();
  given.site.planar = false;
  CHECK(why_not(given.outcome()) ==
        "insert A1 sits in a curved face; the formulas are for a flat face, and inside the concrete there is "
        "none above its head "
        "that is large enough and apart from other inserts");
  given = Case();
  given.site.not_concrete.reset();
  CHECK(why_not(given.outcome()) == "the concrete below the face of insert A1 was not measured");
  given = Case();
  given.site.thickness = 6.0 * inch;
  CHECK(why_not(given.outcome()) == "the head of insert A1 is not inside the concrete: see insert-embedment");
}

TEST_CASE(
    "the trace shows the steel area, the credited strength and the factor of the concrete, with their "
    "sources") {
  const Case given;
  Trace trace = Trace::recording();
  assessed(given.made_of(trace));
  CHECK(step_named(trace, "A_se").formula == "pi / 4 * d_a^2");
  CHECK(source_ids(step_named(trace, "f_uta")) == std::vector<std::string>{"hand-made.futa", "hand-made.fya",
                                                                           "hand-made.futa_of_yield",
                                                                           "hand-made.futa_cap"});
  CHECK(source_ids(step_named(trace, "lambda_a")) == std::vector<std::string>{"hand-made.lambda_a"});
}

TEST_CASE(
    "by EN 1992-4 the steel counts with f_uk, whatever its yield strength, and never one that yields above "
    "it") {
  Case given;
  given.rules.headed = eu_rules().headed;
  given.tables.steels.at("mild").futa.value = 150.0 * ksi;
  given.tables.steels.at("mild").fya.value = 25.0 * ksi;  // 1.9 x 25 and 125 ksi are ACI 318
  CHECK(in(ksi, assessed(given.outcome()).f_uta) == Approx(150.0));
  CHECK(in(ksi, assessed(given.outcome()).f_ya) == Approx(25.0));
  given.tables.steels.at("mild").fya.value = 150.0 * ksi;
  CHECK(is_assessed(given.outcome()));
  given.tables.steels.at("mild").fya.value = 150.1 * ksi;
  CHECK(why_not(given.outcome()) == "the steel strength of insert A1 is not a number above zero");
  given.rules = hand_made_rules();  // by ACI 318 the least of three counts, here the cap
  CHECK(in(ksi, assessed(given.outcome()).f_uta) == Approx(125.0));
}

TEST_CASE("EN 1992-4 is not taken for lightweight concrete") {
  Case given;
  given.tables.concretes.at("normalweight").lambda_a.value = 0.85;
  CHECK(assessed(given.outcome()).lambda_a.value() == 0.85);
  given.rules.headed = eu_rules().headed;
  CHECK(why_not(given.outcome()) ==
        "EN 1992-4 is for normal concrete, and that at insert A1 is normalweight");
}

TEST_CASE("by EN 1992-4 the steps show f_uk and no factor of the concrete") {
  Case given;
  given.rules.headed = eu_rules().headed;
  Trace trace = Trace::recording();
  assessed(given.made_of(trace));
  CHECK(step_named(trace, "f_uk").result.number == Approx(in(MPa, 58.0 * ksi)));
  CHECK_FALSE(has_step(trace, "lambda_a"));
}

TEST_CASE("of a headed insert each number that is none is named") {
  for (const double bad : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    CAPTURE(bad);
    Case given;
    given.insert.embedment = bad * inch;
    CHECK(why_not(given.outcome()) == "the embedment of insert A1 is not a number above zero");
    given = Case();
    given.insert.shank = bad * inch;
    CHECK(why_not(given.outcome()) == "the shank of insert A1 is not a number above zero");
    given = Case();
    given.insert.head_bearing_area = bad * in2;
    CHECK(why_not(given.outcome()) == "the head_bearing_area of insert A1 is not a number above zero");
    given = Case();
    given.site.thickness = bad * inch;
    CHECK(why_not(given.outcome()) ==
          "the thickness of the concrete of insert A1 is not a number above zero");
    given = Case();
    given.tables.steels.at("mild").futa.value = bad * ksi;
    CHECK(why_not(given.outcome()) == "the steel strength of insert A1 is not a number above zero");
    given = Case();
    given.tables.steels.at("mild").fya.value = bad * ksi;
    CHECK(why_not(given.outcome()) == "the steel strength of insert A1 is not a number above zero");
    given = Case();
    given.tables.concretes.at("normalweight").lambda_a.value = bad;
    CHECK(why_not(given.outcome()) == "lambda_a of the concrete of insert A1 is not a number above zero");
  }
  Case given;
  given.site.outline.outer.clear();
  CHECK(why_not(given.outcome()) == "insert A1 does not lie inside the outline of its face");
}

TEST_CASE("of the keys of a headed insert each absent one alone is named") {
  Case given;
  given.insert.embedment.reset();
  CHECK(why_not(given.outcome()) == "insert A1 has no embedment");
  given = Case();
  given.insert.shank.reset();
  CHECK(why_not(given.outcome()) == "insert A1 has no shank");
  given = Case();
  given.insert.steel.clear();
  CHECK(why_not(given.outcome()) == "insert A1 has no steel");
}

TEST_CASE("a rule set that credits no strength of steel leaves none") {
  Case given;
  for (const double bad : {0.0, -1.0}) {
    given.rules.headed.futa_cap.value = bad * ksi;
    CHECK(why_not(given.outcome()) == "the steel strength of insert A1 is not a number above zero");
  }
}

TEST_CASE("a pitch that is no number above zero leaves no area") {
  Case given;
  for (const double bad : {0.0, -0.1, std::nan("")}) {
    given.insert.thread_pitch = bad * inch;
    given.insert.threaded.reset();
    CHECK(why_not(given.outcome()) ==
          "what the thread_pitch leaves of the shank of insert A1 is not a number above zero");
  }
}
