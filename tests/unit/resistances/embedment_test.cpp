#include "resistances/embedment.hpp"

#include <cmath>
#include <limits>

#include "support/assessed.hpp"
#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

TEST_CASE("the room for an insert is the concrete behind it, its demand the embedment") {
  plan::Insert insert;
  insert.id = "A1";
  insert.embedment = 6.0 * inch;
  piece::InsertSite site;
  site.thickness = 8.0 * inch;
  Trace trace = Trace::recording();
  CHECK(in(inch, assessed(embedment_room(insert, site, hand_made_headed_model(), trace)).value) == Approx(8.0));
  CHECK(in(inch, assessed(embedment(insert)).value) == Approx(6.0));
  CHECK(step_named(trace, "t").result.unit == "in");
}

TEST_CASE("an insert without embedment is not assessed, with the line to write") {
  plan::Insert insert;
  insert.id = "A1";
  CHECK(why_not(embedment(insert)) == "insert A1 has no embedment");
  CHECK(remedy_for(embedment(insert)) == "[[insert]] embedment = \"... in\"");
}

TEST_CASE("a thickness or an embedment that is no number above zero is named") {
  plan::Insert insert;
  insert.id = "A1";
  piece::InsertSite site;
  Trace trace;
  for (const double bad : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    site.thickness = bad * inch;
    CHECK(why_not(embedment_room(insert, site, hand_made_headed_model(), trace)) ==
          "the concrete behind insert A1 has no usable thickness");
    insert.embedment = bad * inch;
    CHECK(why_not(embedment(insert)) == "the embedment of insert A1 is not a number above zero");
  }
}

TEST_CASE("concrete below a face that was not measured, is no number or is not whole is named, up to 1 % passes") {
  piece::InsertSite site;
  site.insert = "A1";
  const auto why = [&] {
    const auto gap = not_whole_below(site);
    return gap ? gap->why : std::string();
  };
  CHECK(why() == "the concrete below the face of insert A1 was not measured");
  for (const double whole : {0.0, 0.0099, 0.01}) {
    site.not_concrete = Ratio::from_value(whole);
    CHECK(why() == "");
  }
  site.not_concrete = Ratio::from_value(0.0101);
  CHECK(why() == "the concrete below the face of insert A1 is not whole: 2 % of the body that would break out is void, or lies "
                 "beyond sides that draw in");
  site.not_concrete = Ratio::from_value(std::nan(""));
  CHECK(why() != "");
}
