#include "resistances/projected_area.hpp"

#include <algorithm>
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

// Half side 9 in, slot from x = 3 to 4 in and down to y = -5. To the left of it 12 x 18. Below it 1 x 4 less
// what a straight line meets the slot for, above y = -5 x / 3: (5/6)(16 - 9) - 5. Beyond it what lies below
// that line: x from 4 to 5.4.
TEST_CASE("a slot from the edge hides what lies behind it, and not what is seen below its end") {
  HeadedFace slotted({{-50.0 * inch, -50.0 * inch},
                      {50.0 * inch, -50.0 * inch},
                      {50.0 * inch, 10.0 * inch},
                      {4.0 * inch, 10.0 * inch},
                      {4.0 * inch, -5.0 * inch},
                      {3.0 * inch, -5.0 * inch},
                      {3.0 * inch, 10.0 * inch},
                      {-50.0 * inch, 10.0 * inch}});
  slotted.add("A", 0.0 * inch, 0.0 * inch);
  ProjectedAreas areas;
  const double below = 4.0 - ((5.0 / 6.0) * (16.0 - 9.0) - 5.0);
  const double beyond = 9.0 * 1.4 - (5.0 / 6.0) * (5.4 * 5.4 - 16.0);
  CHECK(in(in2, assessed(areas.area(slotted.group(), 9.0 * inch))) ==
        Approx(12.0 * 18.0 + below + beyond).epsilon(1e-9));
}

TEST_CASE("an outline of no area, or run the wrong way round, has no breakout area") {
  for (const bool clockwise : {true, false}) {
    HeadedFace face = wide_face();
    face.add("A", 0.0 * inch, 0.0 * inch);
    auto& outer = face.sites[0].outline.outer;
    if (clockwise)
      std::reverse(outer.begin(), outer.end());
    else
      outer.clear();
    ProjectedAreas areas;
    CHECK(why_not(areas.area(face.group(), 9.0 * inch)) ==
          "the breakout area about insert A cannot be found on its face");
    CHECK(areas.found().empty());
  }
}

TEST_CASE("what was found is told with its inserts, its size and its area, what was not is left out") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 60.0 * inch, 30.0 * inch));
  face.add("A", 5.0 * inch, 15.0 * inch);
  ProjectedAreas areas;
  areas.area(face.group(), 9.0 * inch);
  areas.area(Group{}, 9.0 * inch);  // no insert, no area
  const auto found = areas.found();
  REQUIRE(found.size() == 1);
  CHECK(in(in2, found[0].area) == Approx(14.0 * 18.0));
  CHECK(in(inch, found[0].half_side) == Approx(9.0));
  CHECK(found[0].inserts == std::vector<const piece::InsertSite*>{&face.sites[0]});
}
