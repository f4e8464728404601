#include "resistances/clipped_area.hpp"

#include <random>

#include "support/headed_face.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

Square square(double x_in, double y_in, double half_side_in, Angle turned = Angle{}) {
  return {.centre = {x_in * inch, y_in * inch},
          .u_x = cosine(turned),
          .u_y = sine(turned),
          .half_side = half_side_in * inch};
}
double covered_in2(const piece::Outline& outline, const std::vector<Square>& squares) {
  return in(in2, covered_area(outline, squares));
}
const piece::Outline slab{rectangle(0.0 * inch, 0.0 * inch, 40.0 * inch, 30.0 * inch), {}};

}  // namespace

TEST_CASE("a square inside the outline counts whole, once however often it is there") {
  CHECK(covered_in2(slab, {square(20, 15, 5)}) == Approx(100.0));
  CHECK(covered_in2(slab, {square(20, 15, 5), square(20, 15, 5), square(20, 15, 5)}) == Approx(100.0));
  CHECK(covered_in2(slab, {square(20, 15, 5, 30.0 * deg)}) == Approx(100.0));
}

TEST_CASE("no square, or one outside, covers nothing") {
  CHECK(covered_in2(slab, {}) == Approx(0.0));
  CHECK(covered_in2(slab, {square(-20, 15, 5)}) == Approx(0.0).margin(1e-9));
  CHECK(covered_in2(slab, {square(45, 15, 5)}) == Approx(0.0).margin(1e-9));
}

TEST_CASE("overlapping squares with sides on one line, ends on the edge") {
  CHECK(covered_in2(slab, {square(10, 10, 10), square(20, 10, 10), square(20, 20, 10)}) == Approx(800.0));
  CHECK(covered_in2(slab, {square(10, 10, 10), square(30, 10, 10)}) == Approx(800.0));
  CHECK(covered_in2(slab, {square(5, 5, 10), square(35, 25, 10)}) == Approx(450.0));
}

TEST_CASE("a cut corner and an opening are not covered") {
  const piece::Outline cut{{{0.0 * inch, 0.0 * inch},
                            {40.0 * inch, 0.0 * inch},
                            {40.0 * inch, 20.0 * inch},
                            {30.0 * inch, 30.0 * inch},
                            {0.0 * inch, 30.0 * inch}},
                           {}};
  CHECK(covered_in2(cut, {square(30, 20, 10)}) == Approx(350.0));
  const piece::Outline window{slab.outer, {opening(15.0 * inch, 10.0 * inch, 4.0 * inch, 5.0 * inch)}};
  CHECK(covered_in2(window, {square(15, 12, 6)}) == Approx(144.0 - 20.0));
  CHECK(covered_in2(window, {square(15, 12, 6), square(17, 12, 6)}) == Approx(168.0 - 20.0));
  CHECK(covered_in2(window, {square(17, 12, 1)}) == Approx(0.0).margin(1e-9));
}

TEST_CASE("an outline that is not convex may cut a square in two") {
  const piece::Outline notch{{{0.0 * inch, 0.0 * inch},
                              {40.0 * inch, 0.0 * inch},
                              {40.0 * inch, 30.0 * inch},
                              {22.0 * inch, 30.0 * inch},
                              {22.0 * inch, 5.0 * inch},
                              {18.0 * inch, 5.0 * inch},
                              {18.0 * inch, 30.0 * inch},
                              {0.0 * inch, 30.0 * inch}},
                             {}};
  CHECK(covered_in2(notch, {square(20, 20, 5)}) == Approx(60.0));
}

TEST_CASE("squares turned against each other: a square and itself turned by 45 deg") {
  // Union of two unit squares turned by 45 deg: 8 (sqrt(2) - 1) is the common octagon of half side 1.
  const double octagon = 8.0 * (std::sqrt(2.0) - 1.0);
  CHECK(covered_in2(slab, {square(20, 15, 1), square(20, 15, 1, 45.0 * deg)}) == Approx(8.0 - octagon));
}

// On a lattice of whole inches every area is a number of cells, which can be counted one by one.
TEST_CASE(
    "covered area is the number of cells, over random outlines, openings and squares with shared sides") {
  std::mt19937 random(20260302);
  const auto between = [&](int low, int high) {
    return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
  };
  for (int trial = 0; trial < 3000; ++trial) {
    const int width = between(10, 24), height = between(10, 24);
    const int notch_x = between(1, 6), notch_y = between(1, 6);
    const int hole_x = between(1, 3), hole_y = between(1, 3), hole_w = between(1, 3), hole_h = between(1, 2);
    piece::Outline outline;
    outline.outer = {{0.0 * inch, 0.0 * inch},
                     {1.0 * width * inch, 0.0 * inch},
                     {1.0 * width * inch, 1.0 * (height - notch_y) * inch},
                     {1.0 * (width - notch_x) * inch, 1.0 * (height - notch_y) * inch},
                     {1.0 * (width - notch_x) * inch, 1.0 * height * inch},
                     {0.0 * inch, 1.0 * height * inch}};
    outline.holes = {
        opening(1.0 * hole_x * inch, 1.0 * hole_y * inch, 1.0 * hole_w * inch, 1.0 * hole_h * inch)};
    std::vector<Square> squares;
    std::vector<std::array<int, 3>> made;
    for (int i = between(1, 6); i > 0; --i) {
      made.push_back({between(0, width), between(0, height), between(1, 6)});
      squares.push_back(square(made.back()[0], made.back()[1], made.back()[2]));
    }
    int cells = 0;
    for (int x = 0; x < width; ++x)
      for (int y = 0; y < height; ++y) {
        const bool notched = x >= width - notch_x && y >= height - notch_y;
        const bool open = x >= hole_x && x < hole_x + hole_w && y >= hole_y && y < hole_y + hole_h;
        const bool covered = std::any_of(made.begin(), made.end(), [&](const std::array<int, 3>& s) {
          return x >= s[0] - s[2] && x < s[0] + s[2] && y >= s[1] - s[2] && y < s[1] + s[2];
        });
        if (covered && !notched && !open) ++cells;
      }
    CAPTURE(trial, width, height, notch_x, notch_y, made);
    CHECK(covered_in2(outline, squares) == Approx(cells).margin(1e-9));
  }
}

namespace {

double area_in2(const std::vector<plan::PlanarPoint>& ring) {
  double twice = 0.0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const auto &a = ring[i], &b = ring[(i + 1) % ring.size()];
    twice += in(inch, a.x) * in(inch, b.y) - in(inch, b.x) * in(inch, a.y);
  }
  return 0.5 * twice;
}

}  // namespace

TEST_CASE("the part of an outline under one square has the area that it covers") {
  const piece::Outline window{slab.outer, {opening(15.0 * inch, 10.0 * inch, 4.0 * inch, 5.0 * inch)}};
  for (const Square& one : {square(20, 15, 5), square(15, 12, 6), square(38, 2, 8), square(20, 15, 9, 30.0 * deg),
                            square(-20, 15, 5), square(17, 12, 1)}) {
    const piece::Outline part = covered_part(window, one);
    double sum = area_in2(part.outer);
    for (const auto& hole : part.holes) sum += area_in2(hole);
    CHECK(sum == Approx(covered_in2(window, {one})).margin(1e-9));
  }
}

TEST_CASE("the parts that are drawn as reached have the area that counts: without what lies behind an opening or a notch") {
  const piece::Outline window{slab.outer, {opening(15.0 * inch, 10.0 * inch, 4.0 * inch, 5.0 * inch)}};
  const piece::Outline notched{{{0.0 * inch, 0.0 * inch},
                                {40.0 * inch, 0.0 * inch},
                                {40.0 * inch, 30.0 * inch},
                                {22.0 * inch, 30.0 * inch},
                                {22.0 * inch, 12.0 * inch},
                                {20.0 * inch, 12.0 * inch},
                                {20.0 * inch, 30.0 * inch},
                                {0.0 * inch, 30.0 * inch}},
                               {}};
  std::size_t hidden = 0;
  for (const piece::Outline* outline : {&slab, &window, &notched})
    for (const Square& one : {square(12, 12, 8), square(12, 15, 10), square(24, 12, 9, 30.0 * deg), square(25, 20, 9),
                              square(17, 22, 12), square(38, 2, 8), square(5, 5, 3), square(17, 6, 14)}) {
      double sum = 0.0;
      for (const auto& part : reached_parts(*outline, one)) sum += area_in2(part);
      const double counts = in(in2, reached_area(*outline, {one}));
      CAPTURE(in(inch, one.centre.x), in(inch, one.centre.y), outline->outer.size(), outline->holes.size());
      CHECK(sum == Approx(counts).margin(1e-6));
      if (counts < covered_in2(*outline, {one}) - 1.0) ++hidden;
    }
  CHECK(hidden >= 6);
}
