// Limits of insert-embedment, and of every key a headed insert needs.

#include "checks/compare.hpp"
#include "resistances/embedment.hpp"
#include "resistances/headed_insert.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"
#include "support/no_number.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

struct Case {
  plan::Insert insert;
  piece::InsertSite site = HeadedFace(rectangle(0.0 * inch, 0.0 * inch, 40.0 * inch, 40.0 * inch), 8.0 * inch)
                               .site_at("A1", 20.0 * inch, 10.0 * inch, Angle{});
  plan::Concrete concrete;
  tables::RuleSet rules = hand_made_rules();
  tables::Tables tables;

  Case() {
    insert.id = "A1";
    insert.kind = "headed";
    insert.embedment = 6.0 * inch;
    insert.shank = 0.75 * inch;
    insert.threaded = false;
    insert.head_bearing_area = 0.911 * in2;
    insert.steel = "mild";
    concrete.kind = "normalweight";
    concrete.cracked = true;
    tables.steels.emplace(
        "mild", tables::Steel{"mild", made("futa", Stress{58.0 * ksi}), made("fya", Stress{36.0 * ksi})});
    tables.concretes.emplace("normalweight", tables::ConcreteKind{"normalweight", made_ratio("lambda_a", 1.0),
                                                                  made("low", Density{135.0 * lb_per_ft3}),
                                                                  made("high", Density{160.0 * lb_per_ft3})});
  }
  bool stands() const {
    Trace trace;
    return is_assessed(headed_insert(insert, site, concrete, rules, tables, trace));
  }
};

}  // namespace

TEST_CASE("insert-embedment: as deep as the concrete is thick, one step less and more") {
  Case given;
  Trace trace;
  const auto judged = [&] {
    return checks::compare(embedment(given.insert), embedment_room(given.insert, given.site, hand_made_headed_model(), trace)).result;
  };
  given.insert.embedment = one_step_below(Length{8.0 * inch});
  CHECK(judged() == checks::Result::pass);
  CHECK(given.stands());
  given.insert.embedment = 8.0 * inch;
  CHECK(judged() == checks::Result::pass);
  CHECK_FALSE(given.stands());  // no other rule takes it: the lift is on hold
  given.insert.embedment = one_step_above(Length{8.0 * inch});
  CHECK(judged() == checks::Result::fail);
  CHECK_FALSE(given.stands());
}

TEST_CASE("insert-embedment: embedment and thickness must be numbers above zero") {
  Trace trace;
  for (const double bad : not_above_zero) {
    CAPTURE(bad);
    Case given;
    given.site.thickness = bad * inch;
    CHECK_FALSE(is_assessed(embedment_room(given.insert, given.site, hand_made_headed_model(), trace)));
    CHECK_FALSE(given.stands());
    given.insert.embedment = bad * inch;
    CHECK_FALSE(is_assessed(embedment(given.insert)));
  }
}

TEST_CASE("a headed insert needs numbers above zero in every key") {
  CHECK(Case().stands());
  for (const double bad : not_above_zero) {
    CAPTURE(bad);
    for (const auto& spoil :
         {+[](Case&c, double b) { c.insert.embedment = b * inch; },
          +[](Case&c, double b) { c.insert.shank = b * inch; },
          +[](Case&c, double b) { c.insert.head_bearing_area = b * in2; },
          +[](Case&c, double b) { c.insert.threaded.reset(), c.insert.thread_pitch = b * inch; },
          +[](Case&c, double b) { c.tables.steels.at("mild").futa.value = b * ksi; },
          +[](Case&c, double b) { c.tables.steels.at("mild").fya.value = b * ksi; },
          +[](Case&c, double b) { c.tables.concretes.at("normalweight").lambda_a.value = b; }}) {
      Case given;
      spoil(given, bad);
      CHECK_FALSE(given.stands());
    }
  }
}
