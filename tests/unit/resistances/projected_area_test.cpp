#include "resistances/projected_area.hpp"

#include <limits>

#include "support/headed_face.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

TEST_CASE("the projected area of a group is clipped by the face and counted once") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 60.0 * inch, 30.0 * inch), 10.0 * inch,
                  {opening(40.0 * inch, 10.0 * inch, 10.0 * inch, 10.0 * inch)});
  face.add("A", 5.0 * inch, 15.0 * inch);
  face.add("B", 15.0 * inch, 15.0 * inch);
  face.add("C", 34.0 * inch, 15.0 * inch);
  const auto all = face.group();
  ProjectedAreas areas;
  const Length reach = 9.0 * inch;
  CHECK(in(in2, assessed(areas.area(Group(all).first(1), reach))) == Approx(14.0 * 18.0));
  CHECK(in(in2, assessed(areas.area(Group(all).first(2), reach))) == Approx(24.0 * 18.0));
  // Beside the 3 in of the opening what lies behind it: seen from C, 6 in away, its 10 in are 15 in at the end of the square.
  const double behind = 3.0 * (10.0 + 15.0) / 2.0 - 3.0 * 10.0;
  CHECK(in(in2, assessed(areas.area(Group(all).last(1), reach))) == Approx(18.0 * 18.0 - 3.0 * 10.0 - behind));
  CHECK(in(in2, assessed(areas.area(all, reach))) == Approx(24.0 * 18.0 + 18.0 * 18.0 - 3.0 * 10.0 - behind));
}

TEST_CASE("an area asked for twice is the same area, and each depth has its own") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 60.0 * inch, 30.0 * inch));
  face.add("A", 5.0 * inch, 15.0 * inch);
  ProjectedAreas areas;
  const auto group = face.group();
  const Outcome<Area>* first = &areas.area(group, 9.0 * inch);
  CHECK(in(in2, assessed(areas.area(group, 3.0 * inch))) == Approx(36.0));
  CHECK(&areas.area(group, 9.0 * inch) == first);
  CHECK(in(in2, assessed(*first)) == Approx(14.0 * 18.0));
}

TEST_CASE("inserts whose axes are turned against each other share one face") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 60.0 * inch, 30.0 * inch));
  face.add("A", 5.0 * inch, 15.0 * inch, 6.0 * inch, 180.0 * deg);
  face.add("B", 15.0 * inch, 15.0 * inch, 6.0 * inch, -90.0 * deg);
  ProjectedAreas areas;
  CHECK(in(in2, assessed(areas.area(face.group(), 9.0 * inch))) == Approx(24.0 * 18.0));
}

TEST_CASE("a size that is no number above zero, no insert, or two faces have no area") {
  HeadedFace face = wide_face();
  face.add("A", 5.0 * inch, 15.0 * inch);
  face.add("B", 15.0 * inch, 15.0 * inch);
  const auto group = face.group();
  ProjectedAreas areas;
  for (const double bad :
       {0.0, -1.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    CAPTURE(bad);
    CHECK_FALSE(is_assessed(areas.area(group, bad * inch)));
  }
  CHECK(in(in2, assessed(areas.area(group, 9.0 * inch))) ==
        Approx(28.0 * 18.0));  // none of these was remembered
  CHECK_FALSE(is_assessed(areas.area(Group{}, 9.0 * inch)));
  face.sites[1].face = 7;
  ProjectedAreas fresh;
  CHECK(why_not(fresh.area(group, 9.0 * inch)) == "inserts A and B are not in one face");
}

TEST_CASE("a slot cuts the breakout area off like a free edge, what lies beyond it does not count") {
  HeadedFace slotted(rectangle(0.0 * inch, 0.0 * inch, 60.0 * inch, 30.0 * inch), 10.0 * inch,
                     {opening(34.0 * inch, 0.5 * inch, 1.0 * inch, 29.0 * inch)});
  HeadedFace ends_there(rectangle(0.0 * inch, 0.0 * inch, 34.0 * inch, 30.0 * inch), 10.0 * inch);
  slotted.add("A", 30.0 * inch, 15.0 * inch);
  ends_there.add("A", 30.0 * inch, 15.0 * inch);
  const auto one = slotted.group(), other = ends_there.group();
  ProjectedAreas areas, areas_at_edge;
  const double cut = in(in2, assessed(areas.area(one, 9.0 * inch)));
  CHECK(cut == Approx(13.0 * 18.0));
  CHECK(cut == Approx(in(in2, assessed(areas_at_edge.area(other, 9.0 * inch)))));
}
