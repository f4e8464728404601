#include "resistances/group_layout.hpp"

#include "support/headed_face.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

TEST_CASE("places are from the centroid, distances the least over the inserts") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 100.0 * inch, 40.0 * inch));
  face.add("A", 10.0 * inch, 12.0 * inch);
  face.add("B", 22.0 * inch, 12.0 * inch, 6.0 * inch, 180.0 * deg);
  face.add("C", 22.0 * inch, 18.0 * inch, 6.0 * inch, 90.0 * deg);
  const GroupLayout layout = assessed(group_layout(face.group()));
  REQUIRE(layout.from_centroid.size() == 3);
  CHECK(in(inch, layout.from_centroid[0].x) == Approx(-8.0));
  CHECK(in(inch, layout.from_centroid[0].y) == Approx(-2.0));
  CHECK(in(inch, layout.from_centroid[2].x) == Approx(4.0));
  CHECK(in(inch, layout.from_centroid[2].y) == Approx(4.0));
  CHECK(in(inch, layout.edges.c[0]) == Approx(78.0));
  CHECK(in(inch, layout.edges.c[1]) == Approx(10.0));
  CHECK(in(inch, layout.edges.c[2]) == Approx(22.0));
  CHECK(in(inch, layout.edges.c[3]) == Approx(12.0));
  CHECK(in(inch, layout.edges.nearest) == Approx(10.0));
}

TEST_CASE("the axes of a group are those of its first insert") {
  HeadedFace face(rectangle(0.0 * inch, 0.0 * inch, 100.0 * inch, 40.0 * inch));
  face.add("A", 10.0 * inch, 12.0 * inch, 6.0 * inch, 180.0 * deg);
  face.add("B", 22.0 * inch, 12.0 * inch);
  const GroupLayout layout = assessed(group_layout(face.group()));
  CHECK(layout.u.x == Approx(-1.0));
  CHECK(in(inch, layout.from_centroid[0].x) == Approx(6.0));
  CHECK(in(inch, layout.edges.c[0]) == Approx(10.0));
  CHECK(in(inch, layout.edges.c[1]) == Approx(78.0));
}

TEST_CASE("s_max is the longer spacing of a rectangle and the largest gap of a row") {
  HeadedFace four = wide_face();
  for (const double x : {0.0, 9.0})
    for (const double y : {0.0, 4.0}) four.add("A", x * inch, y * inch);
  CHECK(in(inch, assessed(group_layout(four.group())).s_max) == Approx(9.0));
  CHECK(in(inch, assessed(group_layout(four.group())).s_min) == Approx(4.0));

  HeadedFace row = wide_face();
  for (const double x : {20.0, 0.0, 5.0, 12.0}) row.add("A", x * inch, 0.0 * inch);
  CHECK(in(inch, assessed(group_layout(row.group())).s_max) == Approx(8.0));
  CHECK(in(inch, assessed(group_layout(row.group())).s_min) == Approx(5.0));
}

TEST_CASE("one insert has no spacing") {
  HeadedFace face = wide_face();
  face.add("A", 0.0 * inch, 0.0 * inch);
  const GroupLayout layout = assessed(group_layout(face.group()));
  CHECK(in(inch, layout.s_max) == 0.0);
  CHECK_FALSE(is_finite(layout.s_min));
  CHECK(in(inch, layout.from_centroid.at(0).x) == 0.0);
}

TEST_CASE("no insert, two faces, or two inserts at one place are not assessed") {
  CHECK_FALSE(is_assessed(group_layout(Group{})));
  HeadedFace face = wide_face();
  face.add("A", 0.0 * inch, 0.0 * inch);
  face.add("B", 0.0 * inch, 0.0 * inch);
  CHECK(why_not(group_layout(face.group())) == "two inserts of the group of A are at one place");
  face.sites[1].face = 3;
  CHECK(why_not(group_layout(face.group())) == "inserts A and B are not in one face");
}

TEST_CASE("where the edges of one insert are not known in the axes of the first, nor is the layout") {
  HeadedFace face = wide_face();
  face.add("A", 0.0 * inch, 0.0 * inch, 6.0 * inch, 30.0 * deg);
  face.add("B", 12.0 * inch, 0.0 * inch);
  CHECK(is_assessed(group_layout(face.group())));
  face.sites[1].outline.outer.clear();
  CHECK(why_not(group_layout(face.group())) == "insert B does not lie inside the outline of its face");
}
